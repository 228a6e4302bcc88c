// SPDX-License-Identifier: Apache-2.0
// solemech run, the part before any calculation: all inputs are read and checked, a single case that was
// computed before is answered from its folder, and everything else goes to the solver program, which replaces
// this process.
#include "tools/solemech/answers.h"
#include "tools/solemech/commands.h"
#include "tools/solemech/inputs.h"
#include "tools/solemech/places.h"
#include "tools/solemech/record.h"

#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>

namespace solemech::tools
{
namespace
{
std::string text_of(const std::filesystem::path &path)
{
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return text.str();
}

[[noreturn]] void become(const std::filesystem::path &program, const std::vector<std::string> &arguments)
{
  std::vector<char *> pointers{const_cast<char *>(program.c_str())};
  for (const std::string &argument : arguments)
    pointers.push_back(const_cast<char *>(argument.c_str()));
  pointers.push_back(nullptr);
  execv(program.c_str(), pointers.data());
  throw MissingPart(fmt::format("cannot start '{}': {}.", program.string(), std::strerror(errno)));
}
} // namespace

Exit run(const RunRequest &request, const std::vector<std::string> &arguments)
{
  const std::vector<Input> inputs = read_inputs(request.cases, request.settings);
  if (stored_summary_answers(request))
  {
    const RunRecord record = planned_record(inputs.front());
    if (const auto folder = ResultPlaces(request, 1).finished(record))
    {
      tell_place(*folder, true, request);
      fmt::print("{}", text_of(*folder / "summary.txt"));
      return Exit::ok;
    }
  }
  become(solver_program(), arguments);
}
} // namespace solemech::tools
