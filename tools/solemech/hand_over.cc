// SPDX-License-Identifier: Apache-2.0
#include "tools/solemech/hand_over.h"

#include "tools/solemech/places.h"

#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

namespace solemech::tools
{
void hand_over(const std::vector<std::string> &arguments)
{
  const std::string   program = solver_program().string();
  std::vector<char *> pointers{const_cast<char *>(program.c_str())};
  for (const std::string &argument : arguments)
    pointers.push_back(const_cast<char *>(argument.c_str()));
  pointers.push_back(nullptr);
  execv(program.c_str(), pointers.data());
  throw MissingPart(fmt::format("cannot start '{}': {}.", program, std::strerror(errno)));
}
} // namespace solemech::tools
