// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/finished_case.h"

#include "solver/results/result_check.h"
#include "tools/language/case_text.h"
#include "tools/language/file_text.h"
#include "tools/language/problem.h"
#include "tools/output/results/run_folder.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <sstream>
#include <vector>

namespace solemech::tools
{
namespace fs = std::filesystem;

namespace
{
/// Text of a file of the run.
std::string text_in(const fs::path &folder, const std::string &name)
{
  constexpr std::size_t largest = 100'000'000; // bytes
  auto                  file = materials::file_text_below(folder, name, largest);
  if (file.state != materials::FileText::State::read)
    throw solver::ResultsError(
      fmt::format("cannot read '{}': {}. Run the case again.", (folder / name).string(), file.reason));
  return std::move(file.text);
}

std::string label_in(const fs::path &folder)
{
  const auto manifest = nlohmann::json::parse(text_in(folder, "manifest.json"), nullptr, false);
  if (!manifest.is_object() || !manifest.contains("label") || !manifest["label"].is_string())
    throw solver::ResultsError(fmt::format("'{}' is not the manifest of a run. Run the case again.",
                                           (folder / "manifest.json").string()));
  return manifest["label"].get<std::string>();
}

/// The changes at the end of a stored case file, as --set takes them.
std::vector<std::string> changes_in(const std::string &text)
{
  constexpr std::string_view mark = "# changed: ";
  std::vector<std::string>   changes;
  std::istringstream         lines(text);
  for (std::string line; std::getline(lines, line);)
    if (line.starts_with(mark))
      if (const auto equals = line.find(" = "); equals != std::string::npos)
        changes.push_back(line.substr(mark.size(), equals - mark.size()) + "=" + line.substr(equals + 3));
  return changes;
}

/// Lines in the order of their names, those of one name as they stand: the program may list the same numbers
/// in another order than an earlier version did.
std::vector<std::string> sorted_lines(const std::string &text)
{
  std::vector<std::string> lines;
  std::istringstream       in(text);
  for (std::string line; std::getline(in, line);)
    lines.push_back(line);
  std::ranges::stable_sort(lines, {},
                           [](const std::string &line) { return line.substr(0, line.find(" = ")); });
  return lines;
}
} // namespace

bool is_run_folder(const fs::path &path)
{
  std::error_code ignored;
  return fs::is_directory(path, ignored) && fs::is_regular_file(path / "manifest.json", ignored);
}

CaseFile finished_case(const fs::path &folder, ReadOptions options)
{
  if (fs::is_regular_file(folder / "settled.toml")) // a bench sheet settled: its stack is a case of its own
    return read_case_file(folder / "settled.toml", options);
  const std::string label = label_in(folder);
  if (!fs::is_regular_file(folder / "data" / "case.toml"))
    throw solver::ResultsError(
      fmt::format("'{}' is not the folder of a single run: it has no data/case.toml.", folder.string()));
  const std::string text = text_in(folder, "data/case.toml");
  options.overrides = changes_in(text);
  options.copies = kept_inputs(folder);
  try
  {
    // Named as the case was. Earlier versions kept the sheets that it names in this folder, under their
    // names.
    CaseFile file = read_case_text(text, (folder / "data" / "sheets" / (label + ".toml")).string(), options);
    if (sorted_lines(labelled_text(file.cases, canonical_text)) ==
        sorted_lines(text_in(folder, "data/resolved.txt")))
      return file;
  }
  catch (const materials::CaseError &)
  {
    // Told below: the person has no file of this name to mend.
  }
  throw solver::ResultsError(
    fmt::format("the run in '{}' cannot be reused: the materials or the program have changed since then, or "
                "one of its files was damaged. Run the case again, or compare its case file.",
                folder.string()));
}
} // namespace solemech::tools
