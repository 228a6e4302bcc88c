// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/book/book_entries.h"

#include "tools/language/csv_rows.h"
#include "tools/language/file_text.h"
#include "tools/language/sheet.h"
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
std::vector<SettledNumber> settled_in(const std::string &text)
{
  std::vector<SettledNumber> numbers;
  const auto                 json = nlohmann::json::parse(text, nullptr, false);
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
      if (const auto run = newest_run(results / (label + mark), name);
          run && (!newest || run->made > newest->made))
        newest = run;
    if (above.empty())
      return newest;
  }
}

/// Says whether a run was made from the sheet as it is now, and what the command line changed beside.
void compare_with(const std::string &sheet_text, const fs::path &folder, Result &result)
{
  constexpr std::string_view mark = "# changed: ";
  const auto                 sheet = text_in(folder, "data/sheet.toml"); // of a bench sheet that was settled
  const auto                 text = sheet.empty() ? text_in(folder, "data/case.toml") : sheet;
  const auto                 made_from = text.substr(0, text.find(mark));
  result.same_sheet = made_from == sheet_text || made_from == sheet_text + "\n";
  std::istringstream lines(text.substr(made_from.size()));
  for (std::string line; std::getline(lines, line);)
    if (line.starts_with(mark))
      result.changes += (result.changes.empty() ? "" : ", ") + line.substr(mark.size());
}

std::optional<Result> newest_result(const fs::path &root, const fs::path &sheet,
                                    const std::string &sheet_text)
{
  auto run = newest_run_of(root, sheet, "");
  if (!run) // one that the command line changed says so, and is better than none
    run = newest_run_of(root, sheet, tools::changed_mark);
  if (!run)
    return std::nullopt;
  Result result;
  result.folder = fs::relative(run->folder, root);
  result.made = run->made;
  result.readings = computed_in(text_in(run->folder, "data/readings.csv"));
  result.settled = settled_in(text_in(run->folder, "settled.json"));
  compare_with(sheet_text, run->folder, result);
  return result;
}

/// *.toml files below the folder, without results wherever they lie, hidden folders and links.
std::vector<fs::path> toml_files(const fs::path &root)
{
  std::vector<fs::path> files;
  for (auto entry = fs::recursive_directory_iterator(root, fs::directory_options::skip_permission_denied);
       entry != fs::recursive_directory_iterator(); ++entry)
  {
    const auto name = entry->path().filename().string();
    if (entry->is_directory() && (name.starts_with('.') || name == tools::results_root ||
                                  entry->is_symlink() || fs::exists(entry->path() / "manifest.json")))
      entry.disable_recursion_pending();
    else if (entry->is_regular_file() && !entry->is_symlink() && !name.starts_with('.') &&
             entry->path().extension() == ".toml")
      files.push_back(entry->path());
  }
  std::sort(files.begin(), files.end());
  return files;
}
} // namespace

Book read_book(const fs::path &folder)
{
  Book book;
  for (const auto &file : toml_files(folder))
  {
    materials::Problems problems;
    const auto          text = materials::read_sheet_text(file, problems);
    const auto          table = materials::parse_sheet(text, fs::relative(file, folder).string(), problems);
    const auto          relative = fs::relative(file, folder);
    auto                sheet = sheet_entry(table, relative);
    // A file that is no sane TOML may be meant as a sheet; one without our first line is another program's.
    const bool broken = std::any_of(problems.list().begin(), problems.list().end(),
                                    [](const auto &problem) { return problem.entry != "format"; });
    if (!sheet && broken)
    {
      sheet = Sheet{};
      sheet->file = relative;
    }
    if (!sheet)
      continue;
    if (!problems.empty())
      sheet->problem = materials::problem_text(problems.list().front());
    sheet->result = newest_result(folder, relative, text);
    book.sheets.push_back(std::move(*sheet));
  }
  return book;
}
} // namespace solemech::book
