// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/book/newest_result.h"

#include "tools/language/csv_rows.h"
#include "tools/language/file_text.h"
#include "tools/language/shown_text.h"
#include "tools/output/results/run_folder.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <sstream>

namespace solemech::book
{
namespace fs = std::filesystem;

namespace
{
/// Text of a file of a run, "" when there is none or it is not to be read.
std::string text_in(const fs::path &folder, const std::string &name)
{
  constexpr std::size_t largest = 10'000'000; // bytes
  return materials::file_text_below(folder, name, largest).text;
}

/// readings.csv: name, value, unit, error.
std::vector<Computed> computed_in(const std::string &text)
{
  std::vector<Computed> readings;
  tools::CsvRows        rows(text);
  rows.next(); // headings
  while (const auto row = rows.next())
  {
    const auto fields = tools::csv_fields(row->text);
    if (fields.size() < 4)
      continue;
    if (const auto value = tools::number_in(fields[1].text))
      readings.push_back(
        {fields[0].text, *value, tools::number_in(fields[3].text).value_or(0), fields[2].text});
  }
  return readings;
}

/// settled.json: {"parameters": [{name, value, low, high, doubt_left}, ...]}.
std::vector<SettledNumber> settled_in(const nlohmann::json &json)
{
  std::vector<SettledNumber> numbers;
  if (!json.is_object() || !json.contains("parameters") || !json["parameters"].is_array())
    return numbers;
  for (const auto &each : json["parameters"])
    if (each.is_object() && each.contains("name") && each["name"].is_string())
    {
      const auto number = [&](const char *key, double otherwise) {
        return each.contains(key) && each[key].is_number() ? each[key].get<double>() : otherwise;
      };
      numbers.push_back({each["name"].get<std::string>(), number("value", 0), number("low", 0),
                         number("high", 0), number("doubt_left", 1)});
    }
  return numbers;
}

std::chrono::system_clock::time_point time_of(const fs::path &file)
{
  const auto age = fs::file_time_type::clock::now() - fs::last_write_time(file);
  return std::chrono::system_clock::now() -
         std::chrono::duration_cast<std::chrono::system_clock::duration>(age);
}

/// A number as the name of a folder; 0: none.
int run_number(const fs::path &folder)
{
  const auto name = folder.filename().string();
  int        number = 0;
  const auto end = std::from_chars(name.data(), name.data() + name.size(), number);
  return end.ec == std::errc() && end.ptr == name.data() + name.size() ? number : 0;
}

/// A finished run of a sheet.
struct FoundRun
{
  fs::path                              folder;
  std::chrono::system_clock::time_point made;
  std::string                           part = {}; ///< that the sheet is of a settled pair; else empty
};

/// The one with the greatest number in a folder of runs. Those of another sheet do not count; one of an
/// earlier version, which says nothing of its sheet, does.
std::optional<FoundRun> newest_run(const fs::path &runs, const std::string &sheet)
{
  std::error_code         error;
  std::optional<FoundRun> newest;
  const std::string       shown = materials::shown_text(sheet); // a manifest holds no broken bytes
  int                     number = 0;
  if (fs::is_symlink(runs, error) || fs::is_symlink(runs.parent_path(), error))
    return newest;
  for (fs::directory_iterator entry(runs, error), end; !error && entry != end; entry.increment(error))
  {
    const auto origin = entry->is_symlink() ? std::nullopt : tools::run_origin(entry->path());
    if (!origin || origin->sheet.value_or(shown) != shown || run_number(entry->path()) <= number)
      continue;
    number = run_number(entry->path());
    newest = FoundRun{entry->path(), time_of(entry->path() / "manifest.json")};
  }
  return newest;
}

void take_newer(std::optional<FoundRun> &newest, const std::optional<FoundRun> &run)
{
  if (run && (!newest || run->made > newest->made))
    newest = run;
}

/// The part that a sheet has in the pair of two sheets that a folder answers; "" when it has none.
std::string part_in(const fs::path &folder, const std::string &sheet)
{
  const auto pair = nlohmann::json::parse(text_in(folder, "pair.json"), nullptr, false);
  if (pair.is_object() && pair.contains("sheets") && pair["sheets"].is_object())
    for (const auto &[part, name] : pair["sheets"].items())
      if (name == sheet)
        return part;
  return "";
}

/// The newest of the pairs of two sheets of which this sheet is one.
std::optional<FoundRun> newest_pair_with(const fs::path &results, const std::string &sheet)
{
  std::error_code         error;
  std::optional<FoundRun> newest;
  for (fs::directory_iterator entry(results, error), end; !error && entry != end; entry.increment(error))
  {
    if (!entry->path().filename().string().starts_with("pair-") ||
        entry->path().filename().string().ends_with(tools::changed_mark))
      continue;
    auto run = newest_run(entry->path(), "");
    if (!run || (newest && run->made <= newest->made))
      continue;
    run->part = part_in(run->folder, materials::shown_text(sheet));
    if (!run->part.empty())
      newest = run;
  }
  return newest;
}

/// Folder of earlier versions: the file's name without what they could not bear.
std::string earlier_folder_name(const std::string &label)
{
  std::string name;
  for (const unsigned char c : label)
    if (std::isalnum(c) || c == '-' || c == '_' || c == '.' || c == '+')
      name += c == '+' ? '-' : static_cast<char>(c);
  return name;
}

/// The newest finished run of a sheet, made in its own folder or in one above, up to that of the book.
/// @param mark  what stands behind the name of its folder of runs
std::optional<FoundRun> newest_run_of(const fs::path &root, const fs::path &sheet, const std::string &mark)
{
  std::optional<FoundRun> newest;
  for (fs::path above = sheet.parent_path();; above = above.parent_path())
  {
    const fs::path    results = root / above / tools::results_root;
    const std::string name = (above.empty() ? sheet : sheet.lexically_relative(above)).generic_string();
    for (const auto &label : {tools::sheet_folder_name(name), earlier_folder_name(sheet.stem().string())})
      take_newer(newest, newest_run(results / (label + mark), name));
    if (mark.empty())
      take_newer(newest, newest_pair_with(results, name));
    if (above.empty())
      return newest;
  }
}

/// Says whether a run was made from the sheet as it is now, and what the command line changed beside.
/// @param kept  the copy of a bench sheet that was settled
void compare_with(const std::string &sheet_text, const fs::path &folder, const std::string &kept,
                  Result &result)
{
  constexpr std::string_view mark = "# changed: ";
  const auto                 sheet = text_in(folder, kept);
  const auto                 text = sheet.empty() ? text_in(folder, "data/case.toml") : sheet;
  const auto                 made_from = text.substr(0, text.find(mark));
  result.same_sheet = made_from == sheet_text || made_from == sheet_text + "\n";
  std::istringstream lines(text.substr(made_from.size()));
  for (std::string line; std::getline(lines, line);)
    if (line.starts_with(mark))
      result.changes += (result.changes.empty() ? "" : ", ") + line.substr(mark.size());
}

} // namespace

std::optional<Result> newest_result(const fs::path &root, const fs::path &sheet,
                                    const std::string &sheet_text, const std::string &part)
{
  auto run = newest_run_of(root, sheet, "");
  if (!run) // one that the command line changed says so, and is better than none
    run = newest_run_of(root, sheet, tools::changed_mark);
  if (!run)
    return std::nullopt;
  Result result;
  result.folder = fs::relative(run->folder, root);
  result.made = run->made;
  const auto of_pair = part.empty() ? run->part : part;
  const auto inner = of_pair.empty() ? std::string("data/") : "data/" + of_pair + "/";
  result.readings = computed_in(text_in(run->folder, inner + "readings.csv"));
  const auto json = nlohmann::json::parse(
    text_in(run->folder, of_pair.empty() ? "settled.json" : "pair.json"), nullptr, false);
  result.settled =
    settled_in(of_pair.empty() || !json.is_object() ? json : json.value(of_pair, nlohmann::json()));
  compare_with(sheet_text, run->folder,
               run->part.empty() ? "data/sheet.toml" : "data/" + run->part + "-sheet.toml", result);
  return result;
}
} // namespace solemech::book
