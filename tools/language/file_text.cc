// SPDX-License-Identifier: Apache-2.0
#include "tools/language/file_text.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <utility>
#include <vector>

namespace solemech::materials
{
namespace fs = std::filesystem;
using State = FileText::State;

namespace
{
constexpr std::size_t longest_name = 1000; ///< [bytes]

/// An open file that closes itself.
class Descriptor
{
public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(Descriptor &&other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor &operator=(Descriptor &&other) noexcept
  {
    std::swap(number_, other.number_);
    return *this;
  }
  ~Descriptor()
  {
    if (number_ >= 0)
      close(number_);
  }
  int  number() const { return number_; }
  bool is_open() const { return number_ >= 0; }

private:
  int number_;
};

FileText refused(std::string reason, std::string cure)
{
  return {State::refused, "", std::move(reason), std::move(cure)};
}

FileText missing()
{
  return {State::missing, "", "there is no such file", "Check the name and the folder"};
}

FileText unreadable(int reason)
{
  const bool used_up = reason == EMFILE || reason == ENFILE;
  return refused(fmt::format("cannot be read: {}", std::strerror(reason)),
                 used_up ? "Allow more with `ulimit -n 1024`, or close other programs"
                         : "Check its permissions");
}

FileText not_opened(int reason)
{
  return reason == ENOENT || reason == ENOTDIR || reason == ENAMETOOLONG ? missing() : unreadable(reason);
}

/// The text behind an open descriptor. It was opened without waiting, so that a pipe cannot hold the program.
FileText read_all(const Descriptor &file, std::size_t largest)
{
  struct stat status
  {
  };
  if (fstat(file.number(), &status) != 0)
    return unreadable(errno);
  if (!S_ISREG(status.st_mode))
    return refused("this is not a file", "Give a text file such as my-pair.toml");
  FileText answer;
  char     buffer[65536];
  for (ssize_t n = 1; n != 0;)
  {
    n = ::read(file.number(), buffer, sizeof buffer);
    if (n < 0 && errno == EINTR)
      continue;
    if (n < 0)
      return unreadable(errno);
    answer.text.append(buffer, static_cast<std::size_t>(n));
    if (answer.text.size() > largest)
    {
      const auto size =
        std::max(static_cast<double>(status.st_size), static_cast<double>(answer.text.size()));
      return refused(fmt::format("{:.1f} MB is too large", size / 1e6),
                     fmt::format("At most {:g} MB is allowed; is this the right file?",
                                 static_cast<double>(largest) / 1e6));
    }
  }
  answer.state = State::read;
  return answer;
}

FileText outside(const std::string &why)
{
  return refused(why, "A file must be in the folder of the sheet or below it, as in "
                      "\"my-rod.toml\" or \"rods/my-rod.toml\": copy it there");
}

/// The parts of a name; empty when it leaves the folder.
std::vector<std::string> parts_of(const std::string &name)
{
  std::vector<std::string> parts;
  const fs::path           path(name);
  if (path.is_absolute())
    return {};
  for (const auto &part : path)
    if (part == "..")
      return {};
    else if (!part.empty() && part != ".")
      parts.push_back(part.string());
  return parts;
}

bool is_link(int folder, const std::string &part)
{
  struct stat status
  {
  };
  return fstatat(folder, part.c_str(), &status, AT_SYMLINK_NOFOLLOW) == 0 && S_ISLNK(status.st_mode);
}
} // namespace

FileText file_text(const fs::path &path, std::size_t largest)
{
  const Descriptor file(open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC));
  return file.is_open() ? read_all(file, largest) : not_opened(errno);
}

FileText file_text_below(const fs::path &folder, const std::string &name, std::size_t largest)
{
  if (name.empty() || name.size() > longest_name || name.find('\0') != std::string::npos ||
      name.back() == '/')
    return missing();
  const auto parts = parts_of(name);
  if (parts.empty())
    return outside("is not in the folder of this sheet");
  Descriptor here(open(folder.empty() ? "." : folder.c_str(), O_PATH | O_DIRECTORY | O_CLOEXEC));
  for (std::size_t i = 0; here.is_open() && i < parts.size(); ++i)
  {
    if (is_link(here.number(), parts[i]))
      return outside("is reached through a link, which is not followed");
    const int  kind = i + 1 < parts.size() ? O_PATH | O_DIRECTORY : O_RDONLY | O_NONBLOCK;
    Descriptor next(openat(here.number(), parts[i].c_str(), kind | O_NOFOLLOW | O_CLOEXEC));
    if (!next.is_open() && errno == ELOOP)
      return outside("is reached through a link, which is not followed");
    here = std::move(next);
  }
  return here.is_open() ? read_all(here, largest) : not_opened(errno);
}
} // namespace solemech::materials
