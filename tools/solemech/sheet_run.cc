// SPDX-License-Identifier: Apache-2.0
#include "tools/solemech/sheet_run.h"

#include "materials/library.h"
#include "tools/explore/run_many.h"
#include "tools/results/checksum.h"
#include "tools/results/run_folder.h"
#include "tools/sheet/settled_case.h"
#include "tools/sheet/sheet_words.h"
#include "tools/solemech/answers.h"
#include "tools/solemech/places.h"
#include "tools/solemech/progress.h"
#include "tools/solemech/record.h"
#include "tools/solemech/sheet_input.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace
{
void need_unknowns_and_readings(const Sheet &sheet)
{
  materials::Problems problems;
  if (sheet.readings.empty())
    problems.add({sheet.path.string(), 0, 0, "reading", "there is none that the model of this rig can use",
                  "Add a block [[reading]] with kind = \"rebound\" and values = [...]"});
  if (sheet.unknowns.empty())
    problems.add({sheet.path.string(), 0, 0, "layer", "nothing is unknown, so there is nothing to settle",
                  "Write material = \"unknown foam\", or a +- behind a thickness"});
  problems.throw_if_any();
}
} // namespace

std::optional<Exit> answer_sheet(const RunRequest &request, const Solve &solve,
                                 const std::atomic<bool> &interrupted)
{
  const auto path = sheet_among(request.cases);
  if (!path)
    return std::nullopt;
  const auto        library = materials::Library::load(library_folder());
  const ReadOptions options{request.settings, {case_folder()}, library.source()};
  const Sheet       sheet = read_sheet(*path, options);
  need_unknowns_and_readings(sheet);

  const RunStore store(RunStore::default_folder, answering_version());
  Progress       progress(progress_on_standard_error(), request.quiet);
  const RunCases run = [&](const std::vector<solver::Case> &cases) {
    SolveWish wish;
    wish.pictures = wish.estimate_error = false;
    auto many = run_many(
      cases, wish, solve, &store,
      [&](double fraction, const std::string &what) { progress.update(fraction, "settling: " + what); },
      interrupted);
    if (interrupted)
      throw settle::Interrupted();
    return std::move(many.results);
  };
  try
  {
    const auto answer = settle_sheet(sheet, questions(sheet), run, library.materials(), interrupted);
    progress.clear();
    auto       folder = request.output ? RunFolder::create_at(*request.output)
                                       : RunFolder::create(results_root, sheet.file.label);
    const auto text = settled_text(sheet, answer), json = settled_json(sheet, answer);
    folder.write("summary.txt", text);
    folder.write("settled.toml", settled_case_text(sheet, answer));
    folder.write("settled.json", json);
    folder.write("data/sheet.toml", sheet.text);
    const auto place =
      folder.commit({sheet.file.label, sha256_of_text(sheet.text + sheet.data), program_versions()});
    tell_place(place, false, request);
    fmt::print("{}", request.json ? json : text);
    return Exit::ok;
  }
  catch (const settle::Interrupted &)
  {
    fmt::print(stderr,
               "solemech: interrupted, nothing was written; finished runs are kept for the next time.\n");
    return Exit::interrupted;
  }
  catch (const settle::ImpossibleInput &error)
  {
    fmt::print(stderr, "solemech: {}\n", error.what());
    return Exit::usage;
  }
  catch (const settle::PredictionFailed &error)
  {
    fmt::print(stderr, "solemech: {}\n", error.what());
    return Exit::run_failed;
  }
}
} // namespace solemech::tools
