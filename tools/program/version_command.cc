// SPDX-License-Identifier: Apache-2.0
#include "tools/program/build_facts.h"
#include "tools/program/commands.h"

#include <fmt/format.h>

namespace solemech::tools
{
Exit print_help(const HelpRequest &request)
{
  fmt::print("{}", request.text);
  return Exit::ok;
}

Exit print_version(const VersionRequest &request)
{
  fmt::print("solemech {}\n", build_facts.version);
  if (request.verbose)
    fmt::print("  source      {}\n"
               "  build       {}, {}\n"
               "  deal.II     {}\n"
               "  HDF5        {}\n"
               "  BLAS        {}\n",
               build_facts.revision, build_facts.build_type, build_facts.compiler, build_facts.deal_ii,
               build_facts.hdf5, blas_in_use());
  return Exit::ok;
}
} // namespace solemech::tools
