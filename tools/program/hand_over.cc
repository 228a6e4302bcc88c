// SPDX-License-Identifier: Apache-2.0
#include "tools/program/hand_over.h"

#include "tools/program/places.h"

#include <fmt/format.h>
#include <sys/resource.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <new>

namespace solemech::tools
{
namespace
{
/// Address space that the solver program with its libraries takes before it does anything [bytes]: with less
/// the system's loader ends it in words of its own.
constexpr rlim_t least_memory = 600'000'000;

void require_memory()
{
  rlimit limit{};
  if (getrlimit(RLIMIT_AS, &limit) == 0 && limit.rlim_cur < least_memory)
    throw std::bad_alloc();
}
} // namespace

void hand_over(const std::vector<std::string> &arguments)
{
  require_memory();
  const std::string   program = solver_program().string();
  std::vector<char *> pointers{const_cast<char *>(program.c_str())};
  for (const std::string &argument : arguments)
    pointers.push_back(const_cast<char *>(argument.c_str()));
  pointers.push_back(nullptr);
  execv(program.c_str(), pointers.data());
  throw MissingPart(fmt::format("cannot start '{}': {}.", program, std::strerror(errno)));
}
} // namespace solemech::tools
