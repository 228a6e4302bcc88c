// SPDX-License-Identifier: Apache-2.0
#include "tools/program/compare_answer.h"

#include "tools/program/answers.h"
#include "tools/program/record.h"

namespace solemech::tools
{
namespace fs = std::filesystem;

std::optional<fs::path> finished_comparison(const CompareRequest &request, const RunRecord &record)
{
  if (!request.output)
    return find_finished(results_root, record.folder, record.hash, answering_version());
  return is_finished(*request.output, record.hash, answering_version()) ? request.output : std::nullopt;
}

RunFolder fresh_comparison(const CompareRequest &request, const RunRecord &record)
{
  return request.output ? RunFolder::create_at(*request.output)
                        : RunFolder::create(results_root, record.folder);
}

void print_finished_comparison(const fs::path &folder, const CompareRequest &request)
{
  tell_place(folder, true, request.quiet);
  print_stored(folder, request.json      ? comparison_values
                       : request.details ? comparison_details
                                         : comparison_summary);
}
} // namespace solemech::tools
