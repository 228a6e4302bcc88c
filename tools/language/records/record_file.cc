// SPDX-License-Identifier: Apache-2.0
#include "tools/language/records/record_file.h"

#include "tools/language/quantity.h"
#include "tools/language/shown_text.h"
#include "tools/language/records/csv_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <optional>
#include <string_view>

namespace solemech::records
{
namespace
{
constexpr double standard_gravity = 9.80665; // [m/s2], BIPM
constexpr int    fewest_rows = 10;
constexpr double gap_in_intervals = 3;
constexpr int    greatest_problems =
  5; // of the rows: a file of another kind would repeat one slip a million times

struct Column
{
  std::vector<double> Record::*target = nullptr; ///< nothing: skipped
  double                       factor = 1;
};

struct Reader
{
  std::string          file;
  materials::Problems &problems;
  std::string          first_comma = {}; ///< first number that was written with a decimal comma

  void slip(int line, std::size_t column, const std::string &entry, const std::string &reason,
            const std::string &cure)
  {
    problems.add({file, line, int(column), entry, reason, cure});
  }

  /// "force [kN]" or "force (kN)".
  Column column(std::string_view title, int line, std::size_t at, Record &record)
  {
    const auto  open = title.find_first_of("[("), close = title.find_last_of("])");
    const auto  name = std::string(trimmed(title.substr(0, open)));
    std::string lower = name;
    std::transform(lower.begin(), lower.end(), lower.begin(),
                   [](unsigned char c) { return std::tolower(c); });

    using D = materials::Dimension;
    Column column;
    D      dimension = D::time;
    if (lower == "time")
      column.target = &Record::time;
    else if (lower == "force")
      column.target = &Record::force, dimension = D::force;
    else if (lower == "acceleration" || lower == "deceleration")
      column.target = &Record::acceleration, dimension = D::acceleration;
    else if (lower == "compression")
      column.target = &Record::compression, dimension = D::length;
    else
    {
      record.notes.push_back(fmt::format("column \"{}\" is not used", materials::shown_text(name)));
      return column;
    }
    if (open == title.npos || close == title.npos || close <= open + 1)
    {
      slip(line, at, name, "this column has no unit",
           fmt::format("Write it behind the name, for example \"{} [{}]\"", name, example(dimension)));
      return column;
    }
    const auto unit = trimmed(title.substr(open + 1, close - open - 1));
    if (dimension == D::acceleration && unit == "g")
      column.factor = standard_gravity;
    else if (const auto factor = factor_of(unit, dimension))
      column.factor = *factor;
    else
      slip(line, at, name, fmt::format("\"{}\" is no unit of {}", unit, materials::dimension_name(dimension)),
           "Use one of " + unit_words(dimension));
    return column;
  }

  static std::string unit_words(materials::Dimension dimension)
  {
    return (dimension == materials::Dimension::acceleration ? "g, " : "") + materials::unit_list(dimension);
  }

  static std::string example(materials::Dimension dimension)
  {
    using D = materials::Dimension;
    return dimension == D::time ? "ms" : dimension == D::force ? "N" : dimension == D::length ? "mm" : "g";
  }

  static std::optional<double> factor_of(std::string_view unit, materials::Dimension dimension)
  {
    for (const auto &known : materials::units())
      if (known.name == unit && known.dimension == dimension)
        return known.factor;
    return std::nullopt;
  }

  std::vector<Column> header(std::string_view row, int line, char separator, Record &record)
  {
    std::vector<Column> columns;
    for (const auto title : split(row, separator))
    {
      auto next = column(title, line, title.empty() ? 1 : std::size_t(title.data() - row.data()) + 1, record);
      for (const auto &other : columns)
        if (next.target && next.target == other.target)
          slip(line, std::size_t(title.data() - row.data()) + 1, std::string(title),
               "this column is there twice", "Keep one of them");
      columns.push_back(next);
    }
    return columns;
  }

  void row(std::string_view text, int line, char separator, const std::vector<Column> &columns,
           Record &record)
  {
    std::size_t begin = 0, k = 0;
    for (; k < columns.size(); ++k)
    {
      if (begin > text.size())
        break;
      const auto end = std::min(text.find(separator, begin), text.size());
      const auto field = trimmed(text.substr(begin, end - begin));
      if (columns[k].target)
      {
        auto value = number_in(field);
        if (!value && separator != ',')
        {
          value = number_with_comma(field);
          if (value && first_comma.empty())
            first_comma = field;
        }
        if (!value)
        {
          slip(line, begin + 1, "", fmt::format("\"{}\" is not a number", field),
               "Every row needs a number here");
          return;
        }
        (record.*columns[k].target).push_back(*value * columns[k].factor);
      }
      begin = end + 1;
    }
    if (k == columns.size() && begin <= text.size() && trimmed(text.substr(begin)).empty())
      begin = text.size() + 1; // a separator at the end of the row
    if (k < columns.size() || begin <= text.size())
    {
      const bool twice = separator == ',' && split(text, ',').size() == 2 * columns.size();
      slip(line, 1, "",
           fmt::format("this row has {} fields, the header has {}", split(text, separator).size(),
                       columns.size()),
           twice ? "These look like decimal commas: write decimal points, or part the columns by semicolons "
                   "and then "
                   "write decimal points"
                 : "Give every row one number a column");
      // Keep the columns of equal length.
      for (std::size_t i = 0; i < k; ++i)
        if (columns[i].target)
          (record.*columns[i].target).pop_back();
      return;
    }
    record.line.push_back(line);
  }
};

void check_times(Record &record, Reader &reader)
{
  const auto &t = record.time;
  if (t.empty() || t.size() != record.line.size())
    return;
  std::vector<double> steps;
  steps.reserve(t.size());
  for (std::size_t i = 1; i < t.size(); ++i)
  {
    if (t[i] <= t[i - 1])
    {
      reader.slip(record.line[i], 1, "time", fmt::format("{:.9g} s does not follow {:.9g} s", t[i], t[i - 1]),
                  "Times must rise from row to row; several recordings go into files of their own");
      return;
    }
    steps.push_back(t[i] - t[i - 1]);
  }
  if (steps.empty())
    return;
  const auto middle = steps.begin() + std::ptrdiff_t(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  record.interval = *middle;
  const auto [least, greatest] = std::minmax_element(steps.begin(), steps.end());
  if (*greatest > gap_in_intervals * record.interval)
    record.notes.push_back(fmt::format("the sampling has gaps up to {:.3g} ms; usual is {:.3g} ms",
                                       1e3 * *greatest, 1e3 * record.interval));
  else if (*greatest - *least > 0.2 * record.interval)
    record.notes.push_back(
      fmt::format("uneven sampling, {:.3g} to {:.3g} ms: taken as it is", 1e3 * *least, 1e3 * *greatest));
}
} // namespace

bool gap_between(const Record &record, std::size_t first, std::size_t last)
{
  for (std::size_t i = first + 1; i <= last && i < record.time.size(); ++i)
    if (record.time[i] - record.time[i - 1] > gap_in_intervals * record.interval)
      return true;
  return false;
}

Record read_record(const std::filesystem::path &path, const std::string &text, materials::Problems &problems)
{
  Reader           reader{path.string(), problems};
  Record           record;
  std::string_view rest = text;
  if (rest.starts_with("\xEF\xBB\xBF"))
    rest.remove_prefix(3);
  if (rest.substr(0, 200).find('\0') != rest.npos)
  {
    reader.slip(1, 1, "", "this is no plain text; it looks like UTF-16", "Save it as CSV in UTF-8");
    return record;
  }
  if (const auto valid = valid_utf8(rest); valid < rest.size())
  {
    const auto line = 1 + std::count(rest.begin(), rest.begin() + std::ptrdiff_t(valid), '\n');
    const auto begin = rest.rfind('\n', valid);
    reader.slip(int(line), valid - (begin == rest.npos ? 0 : begin + 1) + 1, "",
                "a character here is not UTF-8",
                "Save the file as CSV in UTF-8, or write the unit with plain letters (us, m/s2)");
    return record;
  }
  if (rest.size() < 100'000)
    problems.add_source(reader.file, text);

  std::vector<Column> columns;
  char                separator = ',';
  const auto          n_before = problems.list().size();
  for (int line = 1; !rest.empty(); ++line)
  {
    const auto end = rest.find('\n');
    const auto row = trimmed(rest.substr(0, end));
    rest = end == rest.npos ? std::string_view() : rest.substr(end + 1);
    if (row.empty() || row.front() == '#')
      continue;
    if (columns.empty())
    {
      separator = separator_of(row);
      if (number_in(split(row, separator)[0]))
      {
        reader.slip(line, 1, "", "there is no header over the numbers",
                    "Write one line above them that names each column with its unit: time [ms], force [N]");
        return record;
      }
      columns = reader.header(row, line, separator, record);
      if (problems.list().size() > n_before)
        return record;
      continue;
    }
    reader.row(row, line, separator, columns, record);
    if (problems.list().size() >= n_before + greatest_problems)
      return record;
  }
  if (problems.list().size() > n_before)
    return record;
  if (record.line.size() < fewest_rows)
    reader.slip(
      0, 0, "",
      fmt::format("{} rows of numbers; a record needs at least {}", record.line.size(), fewest_rows),
      "Export the whole recording");
  check_times(record, reader);
  if (!reader.first_comma.empty())
    record.notes.push_back(fmt::format("decimal commas: \"{}\" is read as {:.9g}", reader.first_comma,
                                       *number_with_comma(reader.first_comma)));
  return record;
}
} // namespace solemech::records
