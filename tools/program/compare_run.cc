// SPDX-License-Identifier: Apache-2.0
#include "tools/program/compare_run.h"

#include "solver/results/result_file.h"
#include "tools/answers/compare/compare_files.h"
#include "tools/answers/compare/compare_text.h"
#include "tools/answers/compare/comparison_page.h"
#include "tools/output/picture/pictures.h"
#include "tools/output/report/report_page.h"
#include "tools/output/write_run.h"
#include "tools/program/answers.h"
#include "tools/program/compare_answer.h"
#include "tools/program/compare_inputs.h"
#include "tools/program/failures.h"
#include "tools/program/print_options.h"
#include "tools/program/record.h"
#include "tools/program/sheet_input.h"
#include "tools/program/sheet_run.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace fs = std::filesystem;

namespace
{
/// Every case against the first one.
std::vector<Explanation> explain_all(const CompareInputs &inputs, Job &job)
{
  std::vector<Comparison> comparisons;
  for (std::size_t i = 1; i < inputs.cases.size(); ++i)
  {
    comparisons.push_back(prepared(inputs.cases[0].setup, inputs.cases[i].setup));
    job.expect(cost_of(comparisons.back()));
  }
  std::vector<Explanation> explanations;
  for (std::size_t i = 0; i < comparisons.size(); ++i)
    explanations.push_back(explained(
      comparisons[i], job, fmt::format("{} and {}", inputs.cases[0].label, inputs.cases[i + 1].label)));
  return explanations;
}

/// The cases with their results, in the order they were named.
std::vector<Run> runs_of(const CompareInputs &inputs, const std::vector<Explanation> &explanations)
{
  std::vector<Run> runs{{inputs.cases[0].label, explanations[0].plan.a, explanations[0].a}};
  for (std::size_t i = 0; i < explanations.size(); ++i)
    runs.push_back({inputs.cases[i + 1].label, explanations[i].plan.b, explanations[i].b});
  return runs;
}

/// Writes the folder; answers sentences for people.
std::string write_all(const RunFolder &folder, const RunRecord &record,
                      const std::vector<ComparedPair> &pairs)
{
  for (const Run &run : record.runs)
    solver::require_writable(run.label, run.result);
  folder.write(comparison_summary, comparison_text(pairs, {}));
  SummaryOptions detailed;
  detailed.details = true;
  folder.write(comparison_details, comparison_text(pairs, detailed));
  folder.write(comparison_values, comparison_json(pairs, record.versions));
  folder.write("data/shares.csv", shares_csv(pairs));
  folder.write("data/cases.toml", record.case_text);
  folder.write("data/resolved.txt", record.canonical_text);
  solver::ResultRecord stored{record.label, record.case_text, record.canonical_text,
                              record.hash,  record.versions,  {}};
  for (const Run &run : record.runs)
    stored.runs.push_back({run.label, run.result});
  solver::write_result_file(folder.file("data/results.h5"), stored);
  folder.write("report.html", report::report_html(comparison_page(record, pairs)));
  return draw_pictures(folder.file(comparison_summary).parent_path(), record.runs, nullptr);
}

void print_answer(const std::vector<ComparedPair> &pairs, const RunRecord &record,
                  const CompareRequest &request)
{
  print_now(request.json ? comparison_json(pairs, record.versions)
                         : comparison_text(pairs, print_options(request.details)));
}
} // namespace

bool keep_complete(std::vector<Run> &runs)
{
  const bool complete = all_complete(runs);
  std::erase_if(runs, [](const Run &run) { return !run.result.complete; });
  return complete;
}

void write_finished(RunFolder &folder, const RunRecord &record, const AnswerWish &wish)
{
  if (record.runs.empty())
    return;
  print_answers({record}, wish);
  tell_remark(write_run(folder, record));
  tell_place(folder.commit(manifest_facts(record, false)), false, wish.quiet);
}

Exit calculate_comparison(const CompareRequest &given, Job &job)
{
  CompareRequest request = given;
  for (auto &name : request.cases)
    if (const auto sheet = sheet_among({name})) // what is compared is the stack that it settles on
    {
      const SettledStack settled = settle_beforehand(*sheet, request.quiet, job);
      if (!settled.complete)
        return Exit::run_failed;
      name = settled.file.string();
      request.labels[name] = settled.label;
    }
  CompareInputs inputs = read_compare_inputs(request);
  RunRecord    &record = inputs.record;
  if (const auto folder = finished_comparison(request, record))
  {
    print_finished_comparison(*folder, request);
    return Exit::ok;
  }
  // Made before the work begins: a folder that cannot be written should not cost the wait.
  RunFolder folder = fresh_comparison(request, record);

  const std::vector<Explanation> explanations = explain_all(inputs, job);
  record.runs = runs_of(inputs, explanations);
  const bool complete = keep_complete(record.runs);

  std::vector<ComparedPair> pairs;
  for (std::size_t i = 0; i < explanations.size(); ++i)
    if (explanations[i].a.complete && explanations[i].b.complete)
      pairs.push_back({explanations[i], inputs.cases[0].label, inputs.cases[i + 1].label});
  if (pairs.empty())
  {
    write_finished(folder, record, request);
    return Exit::run_failed;
  }
  print_answer(pairs, record, request);
  tell_remark(write_all(folder, record, pairs));
  const fs::path place = folder.commit(manifest_facts(record, complete && !job.failure()));
  tell_place(place, false, request.quiet);
  return complete ? Exit::ok : Exit::run_failed;
}
} // namespace solemech::tools
