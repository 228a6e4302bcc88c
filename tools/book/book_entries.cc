// SPDX-License-Identifier: Apache-2.0
#include "tools/book/book_entries.h"

#include "materials/sheet.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <fstream>
#include <map>
#include <sstream>

namespace solemech::book
{
namespace fs = std::filesystem;

namespace
{
std::string text_of(const fs::path &path)
{
  std::ifstream      file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

/// Fields of a CSV row with quoted text.
std::vector<std::string> fields_of(const std::string &row)
{
  std::vector<std::string> fields(1);
  bool                     quoted = false;
  for (const char c : row)
    if (c == '"')
      quoted = !quoted;
    else if (c == ',' && !quoted)
      fields.emplace_back();
    else if (c != '\r')
      fields.back() += c;
  return fields;
}

/// readings.csv: name, value, unit, error.
std::vector<Computed> computed_in(const fs::path &file)
{
  std::vector<Computed> readings;
  std::istringstream    lines(text_of(file));
  std::string           row;
  std::getline(lines, row);
  while (std::getline(lines, row))
  {
    const auto fields = fields_of(row);
    if (fields.size() < 4)
      continue;
    Computed   reading{fields[0], 0, 0, fields[2]};
    const auto number = [](const std::string &text, double &value) {
      return std::from_chars(text.data(), text.data() + text.size(), value).ec == std::errc();
    };
    if (number(fields[1], reading.value))
    {
      number(fields[3], reading.error);
      readings.push_back(reading);
    }
  }
  return readings;
}

/// settled.json beside it: {"parameters": [{name, value, low, high, doubt_left}, ...]}.
std::vector<SettledNumber> settled_in(const fs::path &file)
{
  std::vector<SettledNumber> numbers;
  const auto                 json = nlohmann::json::parse(text_of(file), nullptr, false);
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

std::optional<Result> newest_result(const fs::path &root, const Sheet &sheet, const std::string &sheet_text)
{
  const fs::path runs = root / "results" / sheet.label;
  int            newest = 0;
  if (fs::is_symlink(root / "results") || fs::is_symlink(runs) || !fs::is_directory(runs))
    return std::nullopt;
  for (const auto &entry : fs::directory_iterator(runs))
    if (!entry.is_symlink() && entry.is_directory() && fs::exists(entry.path() / "manifest.json"))
      newest = std::max(newest, run_number(entry.path()));
  if (newest == 0)
    return std::nullopt;
  const fs::path folder = runs / std::to_string(newest);
  Result         result;
  result.folder = fs::path("results") / sheet.label / std::to_string(newest);
  result.made = time_of(folder / "manifest.json");
  result.readings = computed_in(folder / "data" / "readings.csv");
  result.settled = settled_in(folder / "data" / "settled.json");
  result.same_sheet = text_of(folder / "data" / "case.toml") == sheet_text;
  return result;
}

/// *.toml files below the folder, without results, hidden folders and links.
std::vector<fs::path> toml_files(const fs::path &root)
{
  std::vector<fs::path> files;
  for (auto entry = fs::recursive_directory_iterator(root, fs::directory_options::skip_permission_denied);
       entry != fs::recursive_directory_iterator(); ++entry)
  {
    const auto name = entry->path().filename().string();
    if (entry->is_directory() && (name.starts_with('.') || name == "results" || entry->is_symlink()))
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
  Book                       book;
  std::map<std::string, int> labels;
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
      sheet->label = relative.stem().string();
    }
    if (!sheet)
      continue;
    if (!problems.empty())
      sheet->problem = materials::problem_text(problems.list().front());
    sheet->result = newest_result(folder, *sheet, text);
    ++labels[sheet->label];
    book.sheets.push_back(std::move(*sheet));
  }
  for (const auto &[label, n] : labels)
    if (n > 1)
      book.remarks.push_back(std::to_string(n) + " sheets are called " + label +
                             ": their results share a folder. Give them different names.");
  return book;
}
} // namespace solemech::book
