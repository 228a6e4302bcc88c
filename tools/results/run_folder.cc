// SPDX-License-Identifier: Apache-2.0
#include "tools/results/run_folder.h"

#include "tools/results/checksum.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>
#include <unistd.h>

#include <algorithm>
#include <cctype>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <future>
#include <vector>

namespace solemech::tools
{
namespace
{
namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;
using solver::ResultsError;

constexpr int manifest_schema = 1;

void make_folder(const fs::path &folder)
{
  std::error_code error;
  fs::create_directories(folder, error);
  if (error)
    throw ResultsError(fmt::format("cannot make the folder {}: {}. Choose another place with -o FOLDER",
                                   folder.string(), error.message()));
}

/// Pushes a file, or the entries of a folder, down to the disk.
void flush(const fs::path &path)
{
  const int  descriptor = open(path.c_str(), O_RDONLY | O_CLOEXEC);
  const bool good = descriptor >= 0 && fsync(descriptor) == 0;
  const int  reason = errno;
  if (descriptor >= 0)
    close(descriptor);
  if (!good)
    throw ResultsError(fmt::format("cannot flush {} to the disk: {}", path.string(), std::strerror(reason)));
}

/// Many at once: a disk waits for each flush alone, but serves sixteen in the time of one.
void flush_all(const std::vector<fs::path> &paths)
{
  constexpr std::size_t          n_at_once = 16;
  std::vector<std::future<void>> workers;
  for (std::size_t first = 0; first < std::min(n_at_once, paths.size()); ++first)
    workers.push_back(std::async(std::launch::async, [&paths, first] {
      for (std::size_t i = first; i < paths.size(); i += n_at_once)
        flush(paths[i]);
    }));
  for (auto &worker : workers)
    worker.get();
}

void write_text(const fs::path &path, std::string_view text)
{
  std::ofstream stream(path, std::ios::binary);
  stream.write(text.data(), static_cast<std::streamsize>(text.size()));
  stream.close();
  if (!stream)
    throw ResultsError(fmt::format("cannot write {}: {}", path.string(), std::strerror(errno)));
}

/// 0 when the name is not a plain number.
unsigned long number_of(const std::string &name)
{
  const bool plain = !name.empty() && name.size() < 10 &&
                     std::all_of(name.begin(), name.end(), [](unsigned char c) { return std::isdigit(c); });
  return plain ? std::stoul(name) : 0;
}

/// Numbers in use below a folder, greatest first.
std::vector<unsigned long> numbers_in(const fs::path &folder)
{
  std::vector<unsigned long> numbers;
  std::error_code            error;
  for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error))
    if (const auto number = number_of(entry->path().filename().string()))
      numbers.push_back(number);
  if (error && error != std::errc::no_such_file_or_directory)
    throw ResultsError(fmt::format("cannot read the folder {}: {}. Choose another place with -o FOLDER",
                                   folder.string(), error.message()));
  std::sort(numbers.rbegin(), numbers.rend());
  return numbers;
}

fs::path hidden_name(const fs::path &folder)
{
  return folder.parent_path() / fmt::format(".{}.unfinished-{}", folder.filename().string(), getpid());
}

fs::path make_hidden(const fs::path &target)
{
  make_folder(target.has_parent_path() ? target.parent_path() : fs::path("."));
  const fs::path  hidden = hidden_name(target);
  std::error_code error;
  fs::remove_all(hidden, error);
  if (!error)
    fs::create_directory(hidden, error);
  if (error)
    throw ResultsError(fmt::format("cannot write into the folder {}: {}. Choose another place with -o FOLDER",
                                   target.parent_path().string(), error.message()));
  return hidden;
}

std::vector<fs::path> files_below(const fs::path &folder)
{
  std::vector<fs::path> files;
  for (const auto &entry : fs::recursive_directory_iterator(folder))
    if (entry.is_regular_file())
      files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}
} // namespace

RunFolder::RunFolder(fs::path working, fs::path target, bool numbered)
  : working_(std::move(working)), target_(std::move(target)), numbered_(numbered)
{
}

RunFolder::RunFolder(RunFolder &&other) noexcept
  : working_(std::move(other.working_)), target_(std::move(other.target_)), numbered_(other.numbered_)
{
  other.working_.clear();
}

RunFolder::~RunFolder()
{
  std::error_code ignored;
  if (!working_.empty())
    fs::remove_all(working_, ignored);
}

RunFolder RunFolder::create(const fs::path &root, const std::string &label)
{
  const fs::path parent = root / folder_name(label);
  const auto     numbers = numbers_in(parent);
  const fs::path target = parent / std::to_string(numbers.empty() ? 1 : numbers.front() + 1);
  return RunFolder(make_hidden(target), target, true);
}

RunFolder RunFolder::create_at(const fs::path &folder)
{
  fs::path target = fs::absolute(folder).lexically_normal();
  if (!target.has_filename())
    target = target.parent_path();

  std::error_code error;
  const auto      status = fs::status(target, error);
  if (fs::exists(status))
  {
    if (!fs::is_directory(status))
      throw ResultsError(
        fmt::format("{} is a file, not a folder. Choose another name with -o FOLDER", folder.string()));
    const bool empty = fs::is_empty(target, error);
    if (error)
      throw ResultsError(fmt::format("cannot read the folder {}: {}. Choose another place with -o FOLDER",
                                     folder.string(), error.message()));
    if (!empty)
      throw ResultsError(
        fs::exists(target / "manifest.json")
          ? fmt::format(
              "the folder {} holds another finished run; nothing was overwritten. Choose a new name with "
              "-o FOLDER, or leave -o out to number the runs",
              folder.string())
          : fmt::format(
              "the folder {} holds something else; nothing was written there. Choose a new or an empty "
              "folder with -o FOLDER",
              folder.string()));
  }
  return RunFolder(make_hidden(target), target, false);
}

fs::path RunFolder::file(const fs::path &relative) const
{
  const fs::path path = working_ / relative;
  make_folder(path.parent_path());
  return path;
}

void RunFolder::write(const fs::path &relative, std::string_view text) const
{
  write_text(file(relative), text);
}

fs::path RunFolder::commit(const ManifestFacts &facts)
{
  Json                  checksums = Json::object();
  std::vector<fs::path> folders = {working_};
  const auto            files = files_below(working_);
  flush_all(files);
  for (const auto &path : files)
  {
    checksums[path.lexically_relative(working_).generic_string()] = sha256_of_file(path);
    if (std::find(folders.begin(), folders.end(), path.parent_path()) == folders.end())
      folders.push_back(path.parent_path());
  }
  const Json manifest = {{"program", "solemech"},        {"schema", manifest_schema},  {"label", facts.label},
                         {"case_hash", facts.case_hash}, {"versions", facts.versions}, {"files", checksums}};
  write("manifest.json", manifest.dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
  flush(working_ / "manifest.json");
  flush_all(folders);

  std::error_code error;
  fs::rename(working_, target_, error);
  while (numbered_ && (error == std::errc::directory_not_empty || error == std::errc::file_exists))
  {
    target_ = target_.parent_path() / std::to_string(number_of(target_.filename().string()) + 1);
    fs::rename(working_, target_, error);
  }
  if (error)
    throw ResultsError(
      fmt::format("cannot put the finished run at {}: {}", target_.string(), error.message()));
  working_.clear();
  flush(target_.parent_path());
  return target_;
}

std::string folder_name(const std::string &label)
{
  std::string name;
  for (const unsigned char c : label)
    name += std::isalnum(c) || c == '.' || c == '-' || c == '_' ? static_cast<char>(c) : '-';
  // A leading dot would hide the folder or leave it.
  return name.empty() || name[0] == '.' ? "run" + name : name;
}

bool is_finished(const fs::path &folder, const std::string &case_hash, const std::string &program_version)
try
{
  std::ifstream stream(folder / "manifest.json");
  const Json    manifest = Json::parse(stream, nullptr, false);
  if (!manifest.is_object() || manifest.at("program") != "solemech" ||
      manifest.at("schema") != manifest_schema || manifest.at("case_hash") != case_hash ||
      manifest.at("versions").at("solemech") != program_version || manifest.at("files").empty())
    return false;
  for (const auto &[name, checksum] : manifest.at("files").items())
    if (!fs::is_regular_file(folder / name) || sha256_of_file(folder / name) != checksum.get<std::string>())
      return false;
  return true;
}
catch (const std::exception &)
{
  // A manifest with missing entries or a file that cannot be read: not a finished run.
  return false;
}

std::optional<fs::path> find_finished(const fs::path &root, const std::string &label,
                                      const std::string &case_hash, const std::string &program_version)
{
  const fs::path parent = root / folder_name(label);
  for (const auto number : numbers_in(parent))
    if (const fs::path folder = parent / std::to_string(number);
        is_finished(folder, case_hash, program_version))
      return folder;
  return std::nullopt;
}
} // namespace solemech::tools
