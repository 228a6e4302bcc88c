// SPDX-License-Identifier: Apache-2.0
// solemech: the thin program. Answers everything that needs no calculation and starts the solver program
// for the rest. Links neither the finite-element library nor the file library, so it starts at once.
#include "tools/program/commands.h"
#include "tools/program/failures.h"

#include <unistd.h>

#include <csignal>

namespace
{
using namespace solemech::tools;

// Nothing is under way that would need an orderly end; only the exit code matters.
extern "C" void leave(int)
{
  _exit(static_cast<int>(Exit::interrupted));
}

Exit answer(const std::vector<std::string> &arguments)
{
  struct Dispatch
  {
    const std::vector<std::string> &arguments;
    Exit operator()(const HelpRequest &request) const { return print_help(request); }
    Exit operator()(const VersionRequest &request) const { return print_version(request); }
    Exit operator()(const CasesRequest &request) const { return list_cases(request); }
    Exit operator()(const MaterialsRequest &request) const { return list_materials(request); }
    Exit operator()(const CheckRequest &request) const { return check_files(request); }
    Exit operator()(const DrawRequest &request) const { return draw_sole(request); }
    Exit operator()(const RunRequest &request) const { return run(request, arguments); }
    Exit operator()(const PairRequest &request) const { return settle_pair_of_sheets(request, arguments); }
    Exit operator()(const CompareRequest &request) const { return compare(request, arguments); }
    Exit operator()(const LearnRequest &request) const { return learn(request, arguments); }
    Exit operator()(const TrialRequest &request) const { return try_change(request, arguments); }
    Exit operator()(const SheetRequest &request) const { return write_sheet(request); }
    Exit operator()(const PlanRequest &request) const { return plan_sheet(request, arguments); }
    Exit operator()(const BookRequest &request) const { return write_book(request); }
  };
  return std::visit(Dispatch{arguments}, read_command_line(arguments));
}
} // namespace

int main(int argc, char **argv)
{
  std::signal(SIGINT, leave);
  return guarded([&] { return answer({argv + 1, argv + argc}); });
}
