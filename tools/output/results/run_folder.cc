// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/run_folder.h"

#include "solver/results/write_file.h"
#include "tools/language/checksum.h"
#include "tools/language/file_text.h"
#include "tools/language/small_letters.h"
#include "tools/output/results/block_json.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cctype>
#include <cerrno>
#include <future>
#include <stdexcept>
#include <vector>

namespace solemech::tools
{
namespace
{
namespace fs = std::filesystem;
using solver::ResultsError;

constexpr int manifest_schema = 1;

/// A folder without one of these is not finished, whatever its manifest says.
constexpr const char *files_of_every_run[] = {"summary.txt", "report.html", "data/results.h5",
                                              "data/resolved.txt"};

[[noreturn]] void refuse_folder(const char *what, const fs::path &folder, const std::error_code &error)
{
  throw ResultsError(fmt::format("cannot {} the folder {}: {}. {}", what, folder.string(), error.message(),
                                 error == std::errc::too_many_files_open
                                   ? "Allow more open files with `ulimit -n 1024`"
                                   : "Choose another place with -o FOLDER"));
}

void make_folder(const fs::path &folder)
{
  std::error_code error;
  fs::create_directories(folder, error);
  if (error)
    refuse_folder("make", folder, error);
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
    throw ResultsError(solver::cannot_write(path, reason));
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
    refuse_folder("read", folder, error);
  std::sort(numbers.rbegin(), numbers.rend());
  return numbers;
}

/// The folder in which an unfinished one is to be made.
fs::path parent_of(const fs::path &target)
{
  const fs::path parent = target.has_parent_path() ? target.parent_path() : fs::path(".");
  make_folder(parent);
  return parent;
}

/// A link may lead anywhere, and somebody else may have laid it.
void refuse_link(const fs::path &path)
{
  std::error_code ignored;
  if (fs::is_symlink(fs::symlink_status(path, ignored)))
    throw ResultsError(
      fmt::format("{} is a link, and nothing is written through it. Remove it, or choose the "
                  "folder that it leads to with -o FOLDER",
                  path.string()));
}

/// What no earlier process holds any more, in the folders of all labels.
void sweep_root(const fs::path &root)
{
  std::error_code error;
  for (fs::directory_iterator entry(root, error), end; !error && entry != end; entry.increment(error))
    if (!entry->is_symlink(error) && entry->is_directory(error))
      sweep_unfinished(entry->path());
}

constexpr std::size_t largest_file = 2'000'000'000; ///< [bytes]

/// Text of a file in the folder of a run, "" when it is not there or not to be read.
std::string text_in(const fs::path &folder, const std::string &name)
{
  return materials::file_text_below(folder, name, largest_file).text;
}

bool is_whole(const fs::path &folder, const std::string &name, const std::string &checksum)
{
  const auto file = materials::file_text_below(folder, name, largest_file);
  return file.state == materials::FileText::State::read && sha256_of_text(file.text) == checksum;
}

Json manifest_of(const fs::path &folder)
{
  return Json::parse(text_in(folder, "manifest.json"), nullptr, false);
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

RunFolder::RunFolder(fs::path target, bool numbered)
  : working_(parent_of(target)), target_(std::move(target)), numbered_(numbered)
{
}

RunFolder RunFolder::create(const fs::path &root, const std::string &label)
{
  const fs::path parent = root / folder_name(label);
  refuse_link(root);
  refuse_link(parent);
  sweep_root(root);
  const auto numbers = numbers_in(parent);
  return RunFolder(parent / std::to_string(numbers.empty() ? 1 : numbers.front() + 1), true);
}

RunFolder RunFolder::create_at(const fs::path &folder)
{
  fs::path target = fs::absolute(folder).lexically_normal();
  if (!target.has_filename())
    target = target.parent_path();

  refuse_link(target);
  std::error_code error;
  const auto      status = fs::status(target, error);
  if (fs::exists(status))
  {
    if (!fs::is_directory(status))
      throw ResultsError(
        fmt::format("{} is a file, not a folder. Choose another name with -o FOLDER", folder.string()));
    const bool empty = fs::is_empty(target, error);
    if (error)
      refuse_folder("read", folder, error);
    if (!empty)
      throw ResultsError(
        fs::exists(target / "manifest.json")
          ? fmt::format("the folder {} holds another finished run; nothing was overwritten. Choose a new "
                        "name with -o FOLDER, or leave -o out to have the runs numbered",
                        folder.string())
          : fmt::format(
              "the folder {} holds something else; nothing was written there. Choose a new or an empty "
              "folder with -o FOLDER",
              folder.string()));
  }
  sweep_unfinished(parent_of(target));
  return RunFolder(target, false);
}

fs::path RunFolder::file(const fs::path &relative) const
{
  if (relative.is_absolute() || std::find(relative.begin(), relative.end(), "..") != relative.end())
    throw std::logic_error(fmt::format("a file of results is to lie at '{}'", relative.string()));
  const fs::path path = working_.folder() / relative;
  make_folder(path.parent_path());
  return path;
}

void RunFolder::write(const fs::path &relative, std::string_view text) const
{
  solver::write_file(file(relative), text);
}

void RunFolder::keep_input(const NamedFile &file)
{
  write(copy_name(file, inputs_.size()), file.text);
  inputs_.push_back({file.kind, file.name, "", file.is_prepared});
}

fs::path RunFolder::commit(const ManifestFacts &facts)
{
  Json                  checksums = Json::object();
  std::vector<fs::path> folders = {working_.folder()};
  const auto            files = files_below(working_.folder());
  flush_all(files);
  for (const auto &path : files)
  {
    checksums[path.lexically_relative(working_.folder()).generic_string()] = sha256_of_file(path);
    if (std::find(folders.begin(), folders.end(), path.parent_path()) == folders.end())
      folders.push_back(path.parent_path());
  }
  Json inputs = Json::array();
  for (std::size_t i = 0; i < inputs_.size(); ++i)
    inputs.push_back({{"file", copy_name(inputs_[i], i)},
                      {"kind", inputs_[i].kind},
                      {"named", inputs_[i].name},
                      {"prepared", inputs_[i].is_prepared}});
  const Json manifest = {{"program", "solemech"},      {"schema", manifest_schema},
                         {"label", facts.label},       {"case_hash", facts.case_hash},
                         {"versions", facts.versions}, {"sheet", sheet_},
                         {"inputs", inputs},           {"files", checksums}};
  write("manifest.json", text_of(manifest, 2) + "\n");
  flush(working_.folder() / "manifest.json");
  flush_all(folders);

  std::error_code error;
  fs::rename(working_.folder(), target_, error);
  // Whatever has the number meanwhile, also a file or a link: it stays.
  while (numbered_ && (error == std::errc::directory_not_empty || error == std::errc::file_exists ||
                       error == std::errc::not_a_directory))
  {
    target_ = target_.parent_path() / std::to_string(number_of(target_.filename().string()) + 1);
    fs::rename(working_.folder(), target_, error);
  }
  if (error)
    throw ResultsError(solver::cannot_write(target_, error.value()));
  flush(target_.parent_path());
  return target_;
}

namespace
{
constexpr std::size_t longest_name = 80;

/// Names that some systems keep for devices, whatever ending follows.
bool is_reserved(const std::string &name)
{
  const auto begin = in_small_letters(name.substr(0, name.find('.')));
  if (begin.size() == 4 && (begin.starts_with("com") || begin.starts_with("lpt")))
    return std::isdigit(static_cast<unsigned char>(begin[3])) != 0;
  return begin == "con" || begin == "prn" || begin == "aux" || begin == "nul";
}

bool is_plain(unsigned char c)
{
  return c < 0x80 && (std::isalnum(c) || c == '.' || c == '-' || c == '_');
}

/// Plain characters of a text with single dashes between, for people, and the beginning of a checksum.
std::string marked_name(const std::string &text, const std::string &summed)
{
  std::string name;
  for (const unsigned char c : text)
    if (is_plain(c) && (c != '.' || !name.empty()))
      name += static_cast<char>(c);
    else if (!name.empty() && name.back() != '-')
      name += '-';
  name.resize(std::min(name.size(), longest_name / 2));
  if (name.empty() || is_reserved(name))
    name = "run";
  return name + (name.back() == '-' ? "" : "-") + sha256_of_text(summed).substr(0, 8);
}
} // namespace

std::string folder_name(const std::string &label)
{
  const bool is_own = !label.empty() && label.size() <= longest_name && label.front() != '.' &&
                      label.back() != '.' && std::all_of(label.begin(), label.end(), is_plain) &&
                      !is_reserved(label);
  return is_own ? label : marked_name(label, label);
}

std::string sheet_folder_name(const std::string &sheet)
{
  const std::string label = fs::path(sheet).stem().string();
  // Trials, lessons, comparisons and changed runs have folders of these names beside those of sheets.
  const bool is_taken = label.starts_with("trial-") || label.starts_with("learn-") ||
                        label.starts_with("compare") || label.ends_with(changed_mark);
  return sheet == label + ".toml" && !is_taken ? folder_name(label) : marked_name(label, sheet);
}

std::optional<RunOrigin> run_origin(const fs::path &folder)
{
  const Json manifest = manifest_of(folder);
  if (!manifest.is_object() || manifest.value("program", Json()) != "solemech" || !manifest.contains("files"))
    return std::nullopt;
  for (const char *name : files_of_every_run)
    if (!manifest["files"].contains(name))
      return std::nullopt;
  RunOrigin origin;
  if (const auto sheet = manifest.find("sheet"); sheet != manifest.end() && sheet->is_string())
    origin.sheet = sheet->get<std::string>();
  return origin;
}

std::optional<std::vector<NamedFile>> kept_inputs(const fs::path &folder)
try
{
  const Json manifest = manifest_of(folder);
  if (!manifest.contains("inputs"))
    return std::nullopt;
  std::vector<NamedFile> files;
  for (const auto &input : manifest.at("inputs"))
    files.push_back({input.at("kind").get<std::string>(), input.at("named").get<std::string>(),
                     text_in(folder, input.at("file").get<std::string>()), input.value("prepared", false)});
  return files;
}
catch (const Json::exception &)
{
  throw ResultsError(fmt::format("'{}' is not the manifest of a run. Run the case again.",
                                 (folder / "manifest.json").string()));
}

bool is_finished(const fs::path &folder, const std::string &case_hash, const std::string &program_version)
try
{
  std::error_code ignored;
  const Json      manifest = manifest_of(folder);
  if (fs::is_symlink(fs::symlink_status(folder, ignored)) || !run_origin(folder) ||
      manifest.at("schema") != manifest_schema || manifest.at("case_hash") != case_hash ||
      manifest.at("versions").at("solemech") != program_version)
    return false;
  for (const auto &[name, checksum] : manifest.at("files").items())
    if (!is_whole(folder, name, checksum.get<std::string>()))
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
  const fs::path  parent = root / folder_name(label);
  std::error_code ignored;
  if (fs::is_symlink(fs::symlink_status(root, ignored)) ||
      fs::is_symlink(fs::symlink_status(parent, ignored)))
    return std::nullopt;
  for (const auto number : numbers_in(parent))
    if (const fs::path folder = parent / std::to_string(number);
        is_finished(folder, case_hash, program_version))
      return folder;
  return std::nullopt;
}
} // namespace solemech::tools
