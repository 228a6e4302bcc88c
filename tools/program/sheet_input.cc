// SPDX-License-Identifier: Apache-2.0
#include "tools/program/sheet_input.h"

#include "tools/language/case_text.h"
#include "tools/language/checksum.h"
#include "tools/language/library.h"
#include "tools/language/sheet.h"
#include "tools/output/results/run_folder.h"
#include "tools/program/command_line.h"
#include "tools/program/places.h"
#include "tools/program/record.h"

#include <fmt/format.h>

namespace solemech::tools
{
std::optional<std::filesystem::path> sheet_among(const std::vector<std::string> &names)
{
  for (const auto &name : names)
  {
    std::error_code error;
    if (!name.ends_with(".toml") || !std::filesystem::is_regular_file(name, error))
      continue;
    materials::Problems told_later; // whoever reads the file next
    if (!is_sheet(materials::read_sheet_text(name, told_later)))
      continue;
    if (names.size() > 1)
      throw UsageError(
        fmt::format("'{}' is a bench sheet, which `run` takes alone. Use `solemech pair` for heel "
                    "and forefoot, or `solemech compare`, which fits each sheet first.",
                    name));
    return name;
  }
  return std::nullopt;
}

Sheet settleable_sheet(const std::filesystem::path &path, const std::vector<std::string> &settings)
{
  const auto library = materials::Library::load(library_folder());
  return read_sheet(path, {settings, {case_folder()}, library.source()});
}

std::string sheet_fingerprint(const Sheet &sheet)
{
  auto text = sheet.text + sheet.data + answer_text(sheet.setup);
  for (const auto &unknown : sheet.unknowns)
    text += fmt::format("{} {:.12g} {:.12g} {}\n", unknown.parameter.name, unknown.parameter.median,
                        unknown.parameter.spread, unknown.parameter.minor);
  return sha256_of_text(text);
}

std::optional<std::filesystem::path> finished_sheet(const Sheet                                &sheet,
                                                    const std::optional<std::filesystem::path> &output)
{
  const auto hash = sheet_fingerprint(sheet);
  if (!output)
    return find_finished(results_root, results_name(sheet.path, sheet.file.label).folder, hash,
                         answering_version());
  return is_finished(*output, hash, answering_version()) ? output : std::nullopt;
}
} // namespace solemech::tools
