// SPDX-License-Identifier: Apache-2.0
#include "tools/program/sheet_run.h"

#include "tools/answers/sheet/settled_case.h"
#include "tools/answers/sheet/settled_tables.h"
#include "tools/answers/sheet/sheet_text.h"
#include "tools/language/case_text.h"
#include "tools/language/library.h"
#include "tools/language/stack_text.h"
#include "tools/output/report/report_page.h"
#include "tools/output/results/run_folder.h"
#include "tools/output/results/summary.h"
#include "tools/output/write_run.h"
#include "tools/program/answers.h"
#include "tools/program/failures.h"
#include "tools/program/places.h"
#include "tools/program/record.h"
#include "tools/program/sheet_input.h"

#include <fmt/format.h>

#include <functional>

namespace solemech::tools
{
namespace
{
/// The settled stack as a run like any other.
RunRecord settled_record(const Sheet &sheet, const SettledSheet &answer, const std::string &case_text)
{
  RunRecord record;
  record.label = sheet.file.label;
  record.case_text = case_text;
  record.canonical_text = canonical_text(answer.setup);
  record.hash = sheet_fingerprint(sheet);
  record.versions = program_versions();
  record.sheets = sheet.file.sheets;
  const auto name = results_name(sheet.path, record.label);
  record.sheet = name.sheet;
  record.folder = name.folder;
  record.runs.push_back({sheet.file.label, answer.setup, {}, {}});
  return record;
}

/// The page of the settled stack, led by what the readings say of it.
report::Page settled_page(const Sheet &sheet, const SettledSheet &answer, const RunRecord &record)
{
  report::Page page = report::run_page(record);
  page.tables = settled_tables(sheet, answer);
  page.sentence = is_prediction(sheet) ? prediction_words : agreement_sentence(reading_rows_of(answer));
  for (const auto &remark : settled_remarks(sheet, answer))
    page.story.push_back(remark);
  return page;
}

struct SettledAnswer
{
  std::filesystem::path place;
  std::string           text, json;
  bool                  complete = true; ///< the run of the settled stack came to its end
};

/// Settles a sheet and keeps what came out in a folder.
/// @param tell  is handed the answer before its files are written
SettledAnswer settled_into_folder(const Sheet &sheet, const std::optional<std::filesystem::path> &output,
                                  Job &job, const std::function<void(const SettledAnswer &)> &tell)
{
  const auto library = materials::Library::load(library_folder());
  // The settled stack itself, and both ends of each number that stays doubtful.
  job.expect(cost_of(SolveWish()) + 2 * static_cast<double>(sheet.unknowns.size()) * cost_of(coarser_run));
  auto       answer = settle_sheet(sheet, questions(sheet), job, library.materials());
  const auto case_text = settled_case_text(sheet, answer);
  RunRecord  record = settled_record(sheet, answer, naming_copies(case_text, sheet.file.sheets));
  record.runs.front().result = job.run_alone({answer.setup, {}}, "the settled stack");
  const bool complete = all_complete(record.runs);
  if (complete)
    take_from_run(record.runs.front().result, answer);
  auto folder = output ? RunFolder::create_at(*output) : RunFolder::create(results_root, record.folder);
  SettledAnswer told{{},
                     settled_text(sheet, answer) + "\n" + notes_text(record.runs.front(), {}),
                     settled_json(sheet, answer),
                     complete};
  tell(told);
  tell_remark(write_run(folder, record, [&] {
    folder.write("summary.txt", told.text);
    folder.write("report.html", report::report_html(settled_page(sheet, answer, record)));
  }));
  folder.write("settled.toml", record.case_text);
  folder.write("settled-stack.toml",
               "# The stack of settled.toml without its rig. Use it under another rig with: stack = "
               "\"settled-stack.toml\"\n" +
                 stack_text(case_text, sheet.path.string(), {{}, {case_folder()}, library.source()}));
  folder.write("settled.json", told.json);
  folder.write("data/sheet.toml", sheet.text);
  told.place = folder.commit(manifest_facts(record, complete && !job.failure()));
  return told;
}
} // namespace

std::optional<Exit> answer_sheet(const RunRequest &request, Job &job)
{
  const auto path = sheet_among(request.cases);
  if (!path)
    return std::nullopt;
  const auto answer =
    settled_into_folder(settleable_sheet(*path, request.settings), request.output, job,
                        [&](const SettledAnswer &told) { print_now(request.json ? told.json : told.text); });
  tell_place(answer.place, false, request.quiet);
  return answer.complete ? Exit::ok : Exit::run_failed;
}

SettledStack settle_beforehand(const std::filesystem::path &path, bool quiet, Job &job)
{
  const auto    sheet = settleable_sheet(path, {});
  const auto    finished = finished_sheet(sheet, std::nullopt);
  SettledAnswer answer;
  if (finished)
    answer.place = *finished;
  else
    answer = settled_into_folder(sheet, std::nullopt, job, [](const SettledAnswer &) {});
  tell_place(answer.place, finished.has_value(), quiet);
  return {answer.place / "settled.toml", sheet.file.label, answer.complete};
}
} // namespace solemech::tools
