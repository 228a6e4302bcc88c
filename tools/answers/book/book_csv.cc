// SPDX-License-Identifier: Apache-2.0
#include "solver/results/csv_text.h"
#include "tools/answers/book/book_pages.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace solemech::book
{
namespace
{
using solver::csv_text;

std::string result_cells(const Result &result, std::chrono::system_clock::time_point now)
{
  const auto days = days_old(result, now);
  const auto made = result.same_sheet ? (result.changes.empty() ? "yes" : "with " + result.changes) : "no";
  return fmt::format(",{},{},{}", csv_text(result.folder.string()), days ? std::to_string(*days) : "",
                     csv_text(made));
}
} // namespace

std::optional<int> days_old(const Result &result, std::chrono::system_clock::time_point now)
{
  // A minute is the difference of two clocks, not a date.
  const double days = std::chrono::duration<double, std::ratio<86400>>(now - result.made).count();
  if (days < -1. / 1440)
    return std::nullopt;
  return std::max(0, int(std::floor(days)));
}

std::string book_csv(const Book &book, const Yardstick *yardstick, std::chrono::system_clock::time_point now)
{
  std::set<std::string> measured, computed, settled;
  for (const auto &sheet : book.sheets)
  {
    for (const auto &reading : sheet.readings)
      measured.insert(reading.name);
    if (!sheet.result)
      continue;
    for (const auto &reading : sheet.result->readings)
      computed.insert(reading.name + " [" + reading.unit + "]");
    for (const auto &number : sheet.result->settled)
      settled.insert(number.name);
  }
  std::string text = csv_mark + std::string("result,days old,made from this sheet,problem");
  const auto  heading = [&](const std::string &name) { text += "," + csv_text(name); };
  for (const auto &name : measured)
    heading("measured " + name);
  for (const auto &name : computed)
    heading("model " + name);
  for (const auto &name : settled)
    for (const char *what : {"", " low", " high"})
      heading("settled " + name + what);
  if (yardstick)
  {
    for (const auto &category : yardstick->categories)
      heading("points " + category.name);
    heading("points in all");
  }
  text += "\r\n";

  for (const auto &sheet : book.sheets)
  {
    text += fmt::format("{},{},{},{},{}", csv_text(sheet.file.string()), csv_text(sheet.pair),
                        csv_text(sheet.part), csv_text(sheet.title), csv_text(sheet.stack));
    const auto *result = sheet.result ? &*sheet.result : nullptr;
    text += result ? result_cells(*result, now) : ",,,";
    text += "," + csv_text(sheet.problem);
    for (const auto &name : measured)
    {
      std::vector<std::string> values;
      for (const auto &reading : sheet.readings)
        if (reading.name == name)
          values.insert(values.end(), reading.values.begin(), reading.values.end());
      text += "," + csv_text(fmt::format("{}", fmt::join(values, "; ")));
    }
    for (const auto &name : computed)
    {
      text += ",";
      if (result)
        for (const auto &reading : result->readings)
          if (reading.name + " [" + reading.unit + "]" == name)
            text += fmt::format("{:.6g}", reading.value);
    }
    for (const auto &name : settled)
    {
      const auto *number = static_cast<const SettledNumber *>(nullptr);
      if (result)
        for (const auto &each : result->settled)
          if (each.name == name)
            number = &each;
      text += number ? fmt::format(",{:.6g},{:.6g},{:.6g}", number->value, number->low, number->high) : ",,,";
    }
    if (yardstick)
    {
      const auto judged = judge(*yardstick, sheet);
      for (const auto &points : judged.categories)
        text += points.known ? fmt::format(",{:.2f}", points.points) : ",";
      text += judged.total ? fmt::format(",{:.2f}", *judged.total) : ",";
    }
    text += "\r\n";
  }
  return text;
}
} // namespace solemech::book
