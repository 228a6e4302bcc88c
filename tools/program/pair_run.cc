// SPDX-License-Identifier: Apache-2.0
#include "tools/program/pair_run.h"

#include "tools/answers/compare/compare_files.h"
#include "tools/answers/pair/pair_answer.h"
#include "tools/answers/sheet/settled_case.h"
#include "tools/answers/sheet/sheet_text.h"
#include "tools/language/case_text.h"
#include "tools/language/library.h"
#include "tools/output/report/report_page.h"
#include "tools/output/write_run.h"
#include "tools/program/answers.h"
#include "tools/program/compare_run.h"
#include "tools/program/failures.h"
#include "tools/program/pair_input.h"
#include "tools/program/places.h"
#include "tools/program/print_options.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace
{
/// Both settled stacks with their runs, labelled by their parts.
void fill_record(const PairAnswer &answer, RunRecord &record)
{
  record.runs = {
    {"heel", answer.explanation.plan.a, answer.explanation.a, answer.pair.heel().file.changes},
    {"forefoot", answer.explanation.plan.b, answer.explanation.b, answer.pair.forefoot().file.changes}};
  for (std::size_t part = 0; part < answer.pair.parts.size(); ++part)
  {
    const auto &sheet = answer.pair.parts[part];
    record.case_text +=
      fmt::format("# {}\n{}", sheet.part, settled_case_text(sheet, answer.settled.sheets[part]));
    record.canonical_text += fmt::format("# {}\n{}", sheet.part, canonical_text(record.runs[part].setup));
  }
}

/// As comments below a sheet.
std::string changes_text(const Pair &pair)
{
  std::string text;
  for (const auto &sheet : pair.parts)
    for (const auto &change : sheet.file.changes)
      text += fmt::format("# changed: {}.{}\n", sheet.part, change);
  return text;
}

void write_settled(RunFolder &folder, const PairAnswer &answer)
{
  if (answer.pair.is_one_file())
    folder.write("data/sheet.toml", answer.pair.text + changes_text(answer.pair));
  for (std::size_t part = 0; part < answer.pair.parts.size(); ++part)
  {
    const auto &sheet = answer.pair.parts[part];
    for (const auto &file : sheet.file.sheets)
      folder.keep_input(file);
    folder.write(sheet.part + ".toml", settled_case_text(sheet, answer.settled.sheets[part]));
    folder.write("data/" + sheet.part + "-sheet.toml", sheet.text);
  }
}

void write_answer(RunFolder &folder, const PairAnswer &answer, const RunRecord &record)
{
  tell_remark(write_run(folder, record, [&] {
    SummaryOptions detailed;
    detailed.details = true;
    folder.write(pair_summary, pair_text(answer, record.runs, {}));
    folder.write(pair_details, pair_text(answer, record.runs, detailed));
    folder.write("report.html", report::report_html(pair_page(answer, record)));
  }));
  folder.write(pair_values, pair_json(answer, record.versions));
  folder.write("data/shares.csv", shares_csv({answer.compared()}));
  write_settled(folder, answer);
}
} // namespace

Exit answer_pair(const PairRequest &request, Job &job)
{
  const Pair pair = pair_named(request.files, request.settings);
  RunRecord  record = pair_record(pair);
  // Made before the work begins: a folder that cannot be written should not cost the wait.
  RunFolder folder =
    request.output ? RunFolder::create_at(*request.output) : RunFolder::create(results_root, record.folder);
  const auto library = materials::Library::load(library_folder());
  auto       settled = settle_pair(pair, job, library.materials());
  const auto comparison = heel_against_forefoot(pair, settled);
  job.expect(cost_of(comparison));
  const auto       explanation = explained(comparison, job, "heel and forefoot");
  const PairAnswer answer{pair, settled, explanation};
  fill_record(answer, record);
  if (!keep_complete(record.runs))
  {
    write_finished(folder, record, request);
    return Exit::run_failed;
  }
  take_from_runs(pair, explanation, settled);
  print_now(request.json ? pair_json(answer, record.versions)
                         : pair_text(answer, record.runs, print_options(request.details)));
  write_answer(folder, answer, record);
  tell_place(folder.commit(manifest_facts(record, !job.failure())), false, request.quiet);
  return Exit::ok;
}
} // namespace solemech::tools
