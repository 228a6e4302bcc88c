// SPDX-License-Identifier: Apache-2.0
#include "tools/program/pair_input.h"

#include "tools/answers/sheet/pair_file.h"
#include "tools/language/checksum.h"
#include "tools/language/library.h"
#include "tools/language/sheet.h"
#include "tools/output/results/run_folder.h"
#include "tools/program/places.h"
#include "tools/program/record.h"
#include "tools/program/sheet_input.h"

namespace solemech::tools
{
Pair pair_named(const std::vector<std::string> &files, const std::vector<std::string> &settings)
{
  const auto library = materials::Library::load(library_folder());
  return read_pair({files.begin(), files.end()}, {settings, {case_folder()}, library.source()});
}

std::vector<Sheet> planned_sheets(const PlanRequest &request)
{
  materials::Problems told_later; // whoever reads the file next
  const auto         &files = request.sheets;
  if (files.size() > 1 || is_pair_file(materials::read_sheet_text(files.front(), told_later)))
    return pair_named(files).parts;
  return {settleable_sheet(files.front(), {})};
}

RunRecord pair_record(const Pair &pair)
{
  RunRecord record;
  record.versions = program_versions();
  record.label =
    pair.is_one_file() ? pair.heel().file.label : pair.heel().file.label + "-" + pair.forefoot().file.label;
  const auto name = results_name(pair.heel().path, record.label);
  record.sheet = pair.is_one_file() ? name.sheet : "";
  record.folder = pair.is_one_file() ? name.folder : "pair-" + record.label;
  std::string texts = "pair\n";
  for (const auto &sheet : pair.parts)
    texts += sheet.part + " " + sheet_fingerprint(sheet) + "\n";
  if (!pair.heel().file.changes.empty() || !pair.forefoot().file.changes.empty())
    record.folder += changed_mark;
  record.hash = sha256_of_text(texts);
  return record;
}

std::optional<std::filesystem::path> finished_pair(const RunRecord &record, const PairRequest &request)
{
  if (!request.output)
    return find_finished(results_root, record.folder, record.hash, answering_version());
  return is_finished(*request.output, record.hash, answering_version()) ? request.output : std::nullopt;
}
} // namespace solemech::tools
