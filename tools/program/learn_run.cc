// SPDX-License-Identifier: Apache-2.0
#include "tools/program/learn_run.h"

#include "tools/answers/learn/lesson_page.h"
#include "tools/answers/learn/lesson_text.h"
#include "tools/answers/learn/worksheet.h"
#include "tools/language/checksum.h"
#include "tools/output/report/report_page.h"
#include "tools/output/results/summary.h"
#include "tools/output/write_run.h"
#include "tools/program/answers.h"
#include "tools/program/failures.h"
#include "tools/program/guess.h"
#include "tools/program/lessons.h"
#include "tools/program/print_options.h"
#include "tools/program/read_back.h"
#include "tools/program/record.h"
#include "tools/program/terminal.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace fs = std::filesystem;

namespace
{
/// The record of a lesson: its fingerprint also covers the texts and the guess, which the files show.
RunRecord lesson_record(const Input &input, std::optional<std::size_t> guess)
{
  RunRecord record = planned_record(input);
  record.label = "learn-" + input.file.label;
  record.folder = "learn-" + record.folder;
  record.hash = sha256_of_text(fmt::format("{}\n# lesson\n{}\n# guess {}\n", record.hash, input.file.text,
                                           guess ? std::to_string(*guess + 1) : "none"));
  return record;
}

std::optional<fs::path> finished_folder(const LearnRequest &request, const RunRecord &record)
{
  if (!request.output)
    return find_finished(results_root, record.folder, record.hash, answering_version());
  return is_finished(*request.output, record.hash, answering_version()) ? request.output : std::nullopt;
}

/// Fills in the results. False when a run stopped early.
bool run_all(RunRecord &record, Job &job)
{
  std::vector<solver::Case> cases;
  for (const Run &run : record.runs)
    cases.push_back(run.setup);
  auto results = job.run(cases, {});
  bool complete = true;
  for (std::size_t i = 0; i < record.runs.size(); ++i)
  {
    record.runs[i].result = std::move(results[i]);
    complete = complete && record.runs[i].result.complete;
  }
  return complete;
}

std::string readings_text(const RunRecord &record, const SummaryOptions &options)
{
  return "The readings\n\n" + summary_text(record.runs, options, record.series ? &*record.series : nullptr);
}

fs::path write_lesson(RunFolder &folder, const Input &input, const learn::LessonAnswer &answer,
                      const RunRecord &record, bool complete)
{
  tell_remark(write_run(folder, record, [&] {
    const int width = SummaryOptions().width;
    folder.write("summary.txt", learn::question_text(input.file, width) + "\n" +
                                  learn::answer_text(answer, width) + "\n" + readings_text(record, {}));
    folder.write("report.html", report::report_html(learn::lesson_page(answer, record)));
    folder.write("worksheet.html", learn::worksheet_html(input.file, answer, record));
  }));
  return folder.commit(manifest_facts(record, complete));
}

void tell_files(const fs::path &folder, bool was_there, const LearnRequest &request)
{
  if (request.quiet || request.json)
    return;
  tell_place(folder, was_there, false);
  fmt::print(stderr,
             "  worksheet.html is for printing: questions on the first page, answers on the second\n");
}

void report_stopped_runs(const RunRecord &record)
{
  for (const Run &run : record.runs)
    if (!run.result.complete)
      fmt::print(stderr, "solemech: {} stopped early, so the lesson has no answer: {}\n", run.label,
                 run.result.stop_reason);
}
} // namespace

Exit answer_lesson_request(const LearnRequest &request, Job &job)
{
  const Input                input = lesson_input(request);
  const bool                 talks = !request.json;
  std::optional<std::size_t> guess;
  if (request.guess)
    guess = static_cast<std::size_t>(*request.guess - 1);
  if (talks)
    fmt::print("{}\n", learn::question_text(input.file, print_options().width));
  if (talks && !guess && !request.quiet && is_terminal(stdin) && is_terminal(stdout))
    guess = guess_from_terminal(input.file.lesson->choices.size(), job.interrupted());
  if (job.interrupted())
    throw Interrupted();

  RunRecord                record = lesson_record(input, guess);
  const auto               finished = finished_folder(request, record);
  std::optional<RunFolder> folder;
  if (finished)
    read_back(record, *finished);
  else
  {
    // Made before the work begins: a folder that cannot be written should not cost the wait.
    folder.emplace(request.output ? RunFolder::create_at(*request.output)
                                  : RunFolder::create(results_root, record.folder));
    if (!run_all(record, job))
    {
      report_stopped_runs(record);
      return Exit::run_failed;
    }
  }

  const auto answer = learn::answer_lesson(input.file, record.runs, guess);
  const auto options = print_options();
  print_now(request.json ? learn::lesson_json(answer, record)
                         : learn::answer_text(answer, options.width) + "\n" + readings_text(record, options));
  const auto place = finished ? *finished : write_lesson(*folder, input, answer, record, !job.failure());
  tell_files(place, finished.has_value(), request);
  return Exit::ok;
}
} // namespace solemech::tools
