// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/tables.h"

#include "solver/results/csv_text.h"

#include <fmt/format.h>

#include <iterator>
#include <vector>

namespace solemech::tools
{
namespace
{
using solver::csv_text;

struct Column
{
  std::string                heading;
  const std::vector<double> *values;
};

std::string table_of(const std::vector<Column> &columns)
{
  fmt::memory_buffer text;
  auto               out = std::back_inserter(text);
  for (const auto &column : columns)
    fmt::format_to(out, "{}{}", &column == &columns[0] ? "" : ",", csv_text(column.heading));
  fmt::format_to(out, "\n");
  for (std::size_t i = 0; i < columns[0].values->size(); ++i)
  {
    for (const auto &column : columns)
      fmt::format_to(out, "{}{}", &column == &columns[0] ? "" : ",", column.values->at(i));
    fmt::format_to(out, "\n");
  }
  return fmt::to_string(text);
}
} // namespace

std::string curves_table(const solver::Result &result)
{
  std::vector<Column> columns = {{"time [s]", &result.time}};
  for (const auto &curve : result.curves)
    columns.push_back({curve.name + " [" + curve.unit + "]", &curve.values});
  return table_of(columns);
}

std::string ledger_table(const solver::Result &result)
{
  static const char *const types[] = {"stored", "kinetic", "dissipated", "exchanged", "numerical"};
  std::vector<Column>      columns = {{"time [s]", &result.time}};
  for (const auto &row : result.ledger)
    columns.push_back(
      {fmt::format("{}: {} ({}) [J]", row.part, row.kind, types[static_cast<int>(row.type)]), &row.values});
  return table_of(columns);
}

std::string readings_csv(const solver::Result &result)
{
  std::string text = "name,value,unit,error,band,meaning\n";
  for (const auto &reading : result.readings)
    text += fmt::format("{},{},{},{},{},{}\n", csv_text(reading.name), reading.value, csv_text(reading.unit),
                        reading.error < 0 ? std::string() : fmt::format("{}", reading.error),
                        reading.doubt() < 0 ? std::string() : fmt::format("{}", reading.doubt()),
                        csv_text(reading.meaning));
  return text;
}
} // namespace solemech::tools
