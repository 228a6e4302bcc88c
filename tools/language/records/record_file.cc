// SPDX-License-Identifier: Apache-2.0
#include "tools/language/records/record_file.h"

#include "tools/language/csv_rows.h"
#include "tools/language/quantity.h"
#include "tools/language/shown_text.h"
#include "tools/language/small_letters.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string_view>

namespace solemech::records
{
using tools::number_in;
using tools::number_with_comma;
using tools::trimmed;

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
  std::string          first_comma = {}; ///< first number, above 0 if any, written with a decimal comma
  double               first_value = 0;  ///< as it is read

  void slip(int line, std::size_t column, const std::string &entry, const std::string &reason,
            const std::string &cure)
  {
    problems.add({file, line, int(column), entry, reason, cure});
  }

  /// "force [kN]" or "force (kN)".
  Column column(std::string_view title, int line, std::size_t at, Record &record)
  {
    const auto open = title.find_first_of("[("), close = title.find_last_of("])");
    const auto name = std::string(trimmed(title.substr(0, open)));
    const auto lower = tools::in_small_letters(name);

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
           fmt::format("Write it after the name, for example \"{} [{}]\"", name, example(dimension)));
      return column;
    }
    const auto unit = trimmed(title.substr(open + 1, close - open - 1));
    if (dimension == D::acceleration && unit == "g")
      column.factor = standard_gravity;
    else if (const auto factor = factor_of(unit, dimension))
      column.factor = *factor;
    else
      slip(line, at, name,
           fmt::format("\"{}\" is not a unit of {}", unit, materials::dimension_name(dimension)),
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

  std::vector<Column> header(const tools::CsvRow &row, char separator, Record &record)
  {
    std::vector<Column> columns;
    for (const auto &title : tools::csv_fields(row.text, separator))
    {
      auto next = column(title.text, row.line, title.column, record);
      for (const auto &other : columns)
        if (next.target && next.target == other.target)
          slip(row.line, title.column, title.text, "this column is given twice", "Keep one of them");
      columns.push_back(next);
    }
    return columns;
  }

  void row(const tools::CsvRow &row, char separator, const std::vector<Column> &columns, Record &record)
  {
    auto fields = tools::csv_fields(row.text, separator);
    if (fields.size() == columns.size() + 1 && fields.back().text.empty())
      fields.pop_back(); // a separator at the end of the row
    if (fields.size() != columns.size())
    {
      const bool twice = separator == ',' && fields.size() == 2 * columns.size();
      slip(row.line, 1, "",
           fmt::format("this row has {} fields, the header has {}", fields.size(), columns.size()),
           twice ? "These look like decimal commas: write decimal points, or separate the columns with "
                   "semicolons and write decimal points"
                 : "Give every row one number per column");
      return;
    }
    std::vector<double> values(fields.size());
    for (std::size_t k = 0; k < fields.size(); ++k)
      if (columns[k].target)
      {
        const auto value = number(fields[k].text, separator);
        if (!value)
        {
          slip(row.line, fields[k].column, "", fmt::format("\"{}\" is not a number", fields[k].text),
               "Every row needs a number here");
          return;
        }
        values[k] = *value * columns[k].factor;
      }
    for (std::size_t k = 0; k < fields.size(); ++k)
      if (columns[k].target)
        (record.*columns[k].target).push_back(values[k]);
    record.line.push_back(row.line);
  }

  /// With a decimal comma too where no comma separates.
  std::optional<double> number(const std::string &field, char separator)
  {
    if (const auto value = number_in(field); value || separator == ',')
      return value;
    const auto value = number_with_comma(field);
    if (value && (first_comma.empty() || (first_value == 0 && *value != 0)))
      first_comma = field, first_value = *value;
    return value;
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
      reader.slip(record.line[i], 1, "time",
                  fmt::format("{:.9g} s is not later than {:.9g} s", t[i], t[i - 1]),
                  "Times must increase from row to row. Put each recording in a file of its own");
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
    record.notes.push_back(fmt::format("the sampling has gaps of up to {:.3g} ms; elsewhere it is {:.3g} ms",
                                       1e3 * *greatest, 1e3 * record.interval));
  else if (*greatest - *least > 0.2 * record.interval)
    record.notes.push_back(
      fmt::format("uneven sampling, {:.3g} to {:.3g} ms: used as it is", 1e3 * *least, 1e3 * *greatest));
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
    reader.slip(1, 1, "", "this is not plain text; it looks like UTF-16", "Save it as CSV in UTF-8");
    return record;
  }
  if (const auto valid = materials::valid_utf8(rest); valid < rest.size())
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
  const auto          n_before = problems.n_noted();
  tools::CsvRows      rows(text);
  while (const auto row = rows.next())
  {
    if (columns.empty())
    {
      separator = tools::separator_of(row->text);
      if (number_in(tools::csv_fields(row->text, separator)[0].text))
      {
        reader.slip(row->line, 1, "", "there is no header above the numbers",
                    "Write one line above them that names each column with its unit: time [ms], force [N]");
        return record;
      }
      columns = reader.header(*row, separator, record);
      if (problems.n_noted() > n_before)
        return record;
      continue;
    }
    reader.row(*row, separator, columns, record);
    if (problems.n_noted() >= n_before + greatest_problems)
      return record;
  }
  if (problems.n_noted() > n_before)
    return record;
  if (record.line.size() < fewest_rows)
    reader.slip(
      0, 0, "",
      fmt::format("{} rows of numbers; a record needs at least {}", record.line.size(), fewest_rows),
      "Export the whole recording");
  check_times(record, reader);
  if (!reader.first_comma.empty())
    record.notes.push_back(
      fmt::format("decimal commas: \"{}\" is read as {:.9g}", reader.first_comma, reader.first_value));
  return record;
}
} // namespace solemech::records
