// SPDX-License-Identifier: Apache-2.0
#include "tools/program/read_back.h"

#include "solver/results/result_file.h"

#include <fmt/format.h>

namespace solemech::tools
{
void read_back(RunRecord &record, const std::filesystem::path &finished)
{
  auto stored = solver::read_result_file(finished / "data" / "results.h5");
  if (stored.runs.size() != record.runs.size())
    throw solver::ResultsError(
      fmt::format("'{}' holds {} runs where {} are expected. Remove the folder and run "
                  "the case again.",
                  finished.string(), stored.runs.size(), record.runs.size()));
  for (std::size_t i = 0; i < stored.runs.size(); ++i)
    record.runs[i].result = std::move(stored.runs[i].result);
}
} // namespace solemech::tools
