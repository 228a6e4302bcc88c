// SPDX-License-Identifier: Apache-2.0
#include "solver/results/write_file.h"

#include "solver/results/result_check.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <random>

namespace solemech::solver
{
namespace
{
std::string cure_of(int reason)
{
  switch (reason)
  {
  case ENOSPC:
  case EDQUOT:
  case EFBIG:
    return "Make room there and try again";
  case EMFILE:
  case ENFILE:
    return "Allow more with `ulimit -n 1024`, or close other programs";
  case ELOOP:
    return "A link stands there, and nothing is written through it: remove the link";
  default:
    return "Check the permissions of the folder, or choose another place";
  }
}

/// 0, or the system's reason.
int write_all(int descriptor, std::string_view bytes)
{
  while (!bytes.empty())
  {
    const ssize_t n = ::write(descriptor, bytes.data(), bytes.size());
    if (n < 0 && errno != EINTR)
      return errno;
    if (n > 0)
      bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return 0;
}
} // namespace

std::string cannot_write(const std::filesystem::path &path, int reason)
{
  return fmt::format("cannot write {}: {}. {}", path.string(), std::strerror(reason), cure_of(reason));
}

void write_file(const std::filesystem::path &path, std::string_view bytes)
{
  const int descriptor = open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_NOFOLLOW | O_CLOEXEC, 0666);
  if (descriptor < 0)
    throw ResultsError(cannot_write(path, errno));
  int reason = write_all(descriptor, bytes);
  if (close(descriptor) != 0 && reason == 0)
    reason = errno;
  if (reason == 0)
    return;
  std::error_code ignored;
  std::filesystem::remove(path, ignored);
  throw ResultsError(cannot_write(path, reason));
}

std::string chance_name()
{
  std::random_device chance;
  return fmt::format("{:08x}{:08x}", chance(), chance());
}
} // namespace solemech::solver
