// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/pair/read_pair.h"

#include "tools/answers/pair/rod_of_pair.h"
#include "tools/answers/sheet/pair_file.h"
#include "tools/language/case_errors.h"
#include "tools/language/sheet.h"
#include "tools/language/small_letters.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
using namespace materials;
namespace fs = std::filesystem;

namespace
{
/// Heel or forefoot as a sheet, its title or its file says; empty: neither, or both.
std::string part_said(const Sheet &sheet)
{
  if (!sheet.part.empty())
    return sheet.part;
  const auto words = in_small_letters(sheet.file.title + " " + sheet.path.stem().string());
  const bool heel = words.find("heel") != std::string::npos,
             forefoot = words.find("forefoot") != std::string::npos;
  return heel == forefoot ? "" : heel ? "heel" : "forefoot";
}

std::string name_of(const Sheet &sheet)
{
  return sheet.path.filename().string();
}

/// Heel first. What no sheet says follows from the other one, else from the order.
void put_in_order(Pair &pair)
{
  auto       &parts = pair.parts;
  std::string said[] = {part_said(parts[0]), part_said(parts[1])};
  if (!said[0].empty() && said[0] == said[1])
    refuse_pair(
      parts[1], {"pair.part", "title"},
      fmt::format("both sheets are of a {}: {} and {}", said[0], name_of(parts[0]), name_of(parts[1])),
      fmt::format("A pair is a heel and a forefoot: correct `part` in one of them. To set two {0} against "
                  "each other, use `solemech compare {1} {2}`",
                  said[0] == "heel" ? "heels" : "forefeet", parts[0].path.string(), parts[1].path.string()));
  const bool is_turned = said[0] == "forefoot" || said[1] == "heel";
  if (is_turned)
  {
    std::swap(parts[0], parts[1]);
    std::swap(said[0], said[1]);
    if (!said[0].empty() && !said[1].empty())
      pair.notes.push_back(fmt::format("{} is the heel and {} the forefoot, as the sheets say: taken in that "
                                       "order.",
                                       name_of(parts[0]), name_of(parts[1])));
  }
  for (const std::size_t i : {0, 1})
  {
    if (said[i].empty())
      pair.notes.push_back(
        fmt::format("{} does not say which part it is; taken as the {}. Write part = \"{}\" "
                    "below [pair].",
                    name_of(parts[i]), parts_of_pair[i], parts_of_pair[i]));
    parts[i].part = parts_of_pair[i];
  }
}

void check_labels(Pair &pair)
{
  const auto &heel = pair.heel().pair, &forefoot = pair.forefoot().pair;
  if (!heel.empty() && !forefoot.empty() && in_small_letters(heel) != in_small_letters(forefoot))
    refuse_pair(
      pair.forefoot(), {"pair.label"},
      fmt::format("the forefoot is of \"{}\", the heel of \"{}\"", forefoot, heel),
      fmt::format("Give both the same label, or use `solemech compare {} {}` for parts of two pairs",
                  pair.heel().path.string(), pair.forefoot().path.string()));
  const auto &sheet = pair.heel();
  pair.label = !heel.empty() ? heel : !forefoot.empty() ? forefoot : sheet.file.label;
}

void note_changes(Pair &pair)
{
  for (const auto &sheet : pair.parts)
    for (const auto &change : sheet.file.changes)
      pair.notes.push_back(fmt::format("{}: changed from what the sheet says: {}", sheet.part, change));
}

void note_predictions(Pair &pair)
{
  for (const auto &sheet : pair.parts)
    if (std::ranges::all_of(sheet.readings, [](const SheetReading &one) { return one.observation.held_out; }))
      pair.notes.push_back(
        fmt::format("The {} has no reading to fit to: it is predicted from assumed values, "
                    "so its bands are wide.",
                    sheet.part));
}

/// Changes that begin with a part, as "heel.core.thickness = 18 mm" does, are of that part, others of both.
ReadOptions options_of(const std::string &part, const ReadOptions &options)
{
  auto own = options;
  own.overrides.clear();
  for (const auto &change : options.overrides)
  {
    const auto *named = std::ranges::find_if(
      parts_of_pair, [&](const std::string &one) { return change.starts_with(one + "."); });
    if (named == std::end(parts_of_pair))
      own.overrides.push_back(change);
    else if (*named == part)
      own.overrides.push_back(change.substr(part.size() + 1));
  }
  return own;
}

/// Heel and forefoot by `read`, which takes the number of a part; a mistake in what both share is told once.
/// @param files  one, or two in the order of the parts
template <typename ReadPart>
std::vector<Sheet> both_parts(const std::vector<fs::path> &files, const ReadPart &read)
{
  std::vector<Sheet> parts;
  Problems           problems;
  for (const auto &file : files)
    problems.add_source(file.string(), read_sheet_text(file, problems));
  for (const std::size_t part : {0, 1})
    try
    {
      parts.push_back(read(part));
    }
    catch (const CaseError &error)
    {
      for (const auto &problem : error.problems())
        if (problem.line == 0 || !problems.has_line(problem.file, problem.line))
          problems.add(problem);
    }
  problems.throw_if_any();
  return parts;
}

std::vector<Sheet> parts_in(const fs::path &file, const ReadOptions &options)
{
  return both_parts({file}, [&](std::size_t part) {
    return read_part(file, parts_of_pair[part], options_of(parts_of_pair[part], options));
  });
}

/// Two sheets, heel first. Which of them that is they say themselves, so changes come after.
void read_sheets(const std::vector<fs::path> &files, const ReadOptions &options, Pair &pair)
{
  auto unchanged = options;
  unchanged.overrides.clear();
  pair.parts = both_parts(files, [&](std::size_t part) { return read_sheet(files[part], unchanged); });
  put_in_order(pair);
  if (options.overrides.empty())
    return;
  const std::vector<fs::path> ordered{pair.heel().path, pair.forefoot().path};
  pair.parts = both_parts(ordered, [&](std::size_t part) {
    auto sheet = read_sheet(ordered[part], options_of(parts_of_pair[part], options));
    sheet.part = parts_of_pair[part];
    return sheet;
  });
}
} // namespace

Pair read_pair(const std::vector<fs::path> &files, const ReadOptions &options)
{
  Pair pair;
  if (Problems told_later; files.size() == 1) // by whoever reads the file next
    pair.text = read_sheet_text(files.front(), told_later);
  if (files.size() == 1 && !is_pair_file(pair.text))
  {
    const auto sheet = read_sheet(files.front(), options);
    refuse_pair(
      sheet, {},
      fmt::format("the file holds one part{} only",
                  part_said(sheet).empty() ? "" : ", the " + part_said(sheet) + ","),
      "Give the sheet of the other part as well, or write both into one file: `solemech sheet --pair "
      "my-pair.toml` writes one to fill in");
  }
  if (pair.is_one_file())
    pair.parts = parts_in(files.front(), options);
  else
    read_sheets(files, options, pair);
  check_labels(pair);
  put_under_one_rod(pair.parts, pair.notes);
  note_changes(pair);
  note_predictions(pair);
  return pair;
}
} // namespace solemech::tools
