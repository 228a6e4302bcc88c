// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/trial/trial_text.h"

#include "solver/results/csv_text.h"
#include "tools/output/results/energy_text.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
constexpr std::size_t indent = 2, least_note = 24;

struct Columns
{
  std::size_t name = 0, now = 0, then = 0;
};

std::size_t page(const SummaryOptions &options)
{
  return static_cast<std::size_t>(std::max(options.width, 60));
}

std::string lines(const std::string &text, const std::string &after, const SummaryOptions &options)
{
  // Leading blanks are kept; the wrapping takes them for a gap between words.
  const auto first = std::min(text.find_first_not_of(' '), text.size());
  return text.substr(0, first) + wrapped(text.substr(first), page(options) - first, after) + "\n";
}

Columns columns_of(const std::vector<TrialRow> &rows, const std::string &then_heading)
{
  Columns widths{0, 3, columns(then_heading)};
  for (const auto &row : rows)
  {
    widths.name = std::max(widths.name, columns(row.name));
    widths.now = std::max(widths.now, columns(row.now));
    widths.then = std::max(widths.then, columns(row.then));
  }
  return widths;
}

/// A row whose last cell may go on below, in its own column.
std::string row_text(const std::string &left, const std::string &note, const SummaryOptions &options)
{
  if (note.empty())
    return left.substr(0, left.find_last_not_of(' ') + 1) + "\n";
  const std::size_t at = columns(left);
  if (at + least_note > page(options)) // too narrow: the note gets lines of its own
    return left.substr(0, left.find_last_not_of(' ') + 1) + "\n" + std::string(indent + 2, ' ') +
           wrapped(note, page(options) - indent - 2, std::string(indent + 2, ' ')) + "\n";
  std::string       text = wrapped(note, page(options) - at, "");
  const std::string break_and_blanks = "\n" + std::string(at, ' ');
  for (std::size_t line = text.find('\n'); line != std::string::npos; line = text.find('\n', line + 1))
    text.replace(line, 1, break_and_blanks);
  return left + text + "\n";
}

std::string rows_text(const TrialAnswer &answer, const SummaryOptions &options)
{
  const bool        compares = !answer.swaps.empty();
  const std::string heading = compares ? after_change : "";
  const auto        widths = columns_of(answer.rows, heading);
  const auto        left = [&](const std::string &name, const std::string &now, const std::string &then) {
    return std::string(indent, ' ') + pad_right(name, widths.name + 2) + pad_left(now, widths.now) + "  " +
           (compares ? pad_left(then, widths.then) + "   " : "");
  };
  std::string text =
    bold(left("", compares ? before_change : as_it_is, heading) + (compares ? "what to know" : ""), options) +
    "\n";
  for (const auto &row : answer.rows)
    text += row_text(left(row.name, row.now, row.then), row.note, options);
  return text;
}

std::string geometry_text(const TrialAnswer &answer, const SummaryOptions &options)
{
  if (answer.geometry.empty())
    return "";
  std::size_t name = 0, value = 0;
  for (const auto &line : answer.geometry)
    name = std::max(name, columns(line.name)), value = std::max(value, columns(line.value));
  std::string text = "\n" + bold("what it costs in height and room", options) + "\n";
  for (const auto &line : answer.geometry)
    text += row_text(std::string(indent, ' ') + pad_right(line.name, name + 2) + pad_left(line.value, value) +
                       "   ",
                     line.note, options);
  return text;
}

std::string cell(std::optional<double> value, double factor, int digits)
{
  return value ? fmt::format("{:.{}f}", factor * *value, digits) : std::string("-");
}

std::string columns_text(const RangeAnswer &range)
{
  std::string text = fmt::format("  {:>10}", range.unit.empty() ? "value" : range.unit);
  const auto  width = [](const RangeColumn &column) {
    return std::max<std::size_t>(columns(column.heading), 8);
  };
  for (const auto &column : range.columns)
    text += "  " + pad_left(column.heading, width(column));
  text += "\n";
  for (std::size_t i = 0; i < range.points.size(); ++i)
  {
    text += fmt::format("  {:>10.4g}", range.points[i].value);
    if (!range.points[i].stopped.empty())
      text += "  stopped early: " + range.points[i].stopped;
    else
      for (const auto &column : range.columns)
        text += "  " + pad_left(column.cells[i].empty() ? "-" : column.cells[i], width(column));
    text += "\n";
  }
  return text;
}

std::string range_text(const RangeAnswer &range, const SummaryOptions &options)
{
  const bool millimetres = options.lengths == Lengths::millimetre;
  const auto length = [&](std::optional<double> value) {
    return value ? length_text(*value, options.lengths, false) : std::string("-");
  };
  std::string heading = range.quantity + (range.unit.empty() ? "" : ", " + range.unit);
  std::string text = "\n" + bold("over " + heading, options) + "\n";
  if (!range.columns.empty())
  {
    text += columns_text(range);
    for (const auto &sentence : range.sentences)
      text += lines("  " + sentence, "    ", options);
    return text;
  }
  text += fmt::format("  {:>10}  {:>13}  {:>13}  {:>14}  {:>13}\n", range.unit.empty() ? "value" : range.unit,
                      range.return_name + " %", "peak force kN",
                      millimetres                              ? "compression mm"
                      : options.lengths == Lengths::centimetre ? "compression cm"
                                                               : "compression in",
                      "travel left %");
  for (const auto &point : range.points)
    text += point.stopped.empty()
              ? fmt::format(
                  "  {:>10.4g}  {:>13}  {:>13}  {:>14}  {:>13}\n", point.value, cell(point.rebound, 100, 1),
                  cell(point.peak_force, 1e-3, 2), length(point.compression),
                  point.travel_left && *point.travel_left <= 0 ? "bottoms" : cell(point.travel_left, 100, 0))
              : fmt::format("  {:>10.4g}  stopped early: {}\n", point.value, point.stopped);
  for (const auto &sentence : range.sentences)
    text += lines("  " + sentence, "    ", options);
  return text + lines("  " + range.bottoms, "    ", options);
}

std::string weighed(const char *what, const std::vector<std::string> &items, const std::string &nothing,
                    const SummaryOptions &options)
{
  return lines(fmt::format("{} {}.", what, items.empty() ? nothing : listed(items)), "  ", options);
}
} // namespace

std::string trial_text(const TrialAnswer &answer, const SummaryOptions &options, const TrialEffort &effort)
{
  std::string text =
    lines(fmt::format("trial of {}{}", answer.label, answer.swaps.empty() ? "" : ": " + listed(answer.swaps)),
          "     ", options) +
    lines("rig: " + answer.rig, "     ", options);
  for (const auto &setting : answer.settings)
    text += lines("changed before and after: " + setting, "     ", options);
  text += "\n" + rows_text(answer, options) +
          (answer.reserve_note.empty() ? "" : lines("  " + answer.reserve_note, "  ", options)) +
          geometry_text(answer, options);
  if (!answer.swaps.empty())
    text += "\n" + weighed("What improves:", answer.improves, answer.nothing, options) +
            weighed("What gets worse:", answer.gets_worse, answer.nothing, options);
  if (answer.range)
    text += range_text(*answer.range, options);
  text += "\n";
  if (!answer.swaps.empty())
    text +=
      lines("\"No real change\" means less than 2 points of a return or of travel, less than 3 % of anything "
            "else, or within the numerical error. Whether higher or softer is better is for you to decide.",
            "  ", options);
  for (const auto &note : answer.notes)
    text += lines("Note: " + note, "  ", options);
  for (const auto &caution : answer.cautions)
    text += lines("Caution: " + caution, "  ", options);
  if (options.details && effort.n_calculated + effort.n_from_store > 0)
    text += lines(
      fmt::format("Runs: {} calculated, {} from before; {:.1f} s. Where it bottoms is found to within {:.0f} "
                  "%. A layer counts as bottomed when its foam is squeezed by 1 - 1.4 R of its height (R: "
                  "density divided by that of its polymer) or when film and fibres of a unit are packed.",
                  effort.n_calculated, effort.n_from_store, effort.seconds, 100 * reserve_tolerance),
      "  ", options);
  return text;
}

namespace
{
using solver::csv_text;

std::string csv_number(std::optional<double> value)
{
  return value ? fmt::format("{}", *value) : std::string();
}

std::string first_heading(const RangeAnswer &range)
{
  return csv_text(fmt::format("{} [{}]", range.quantity, range.unit.empty() ? "1" : range.unit));
}

std::string columns_csv(const RangeAnswer &range)
{
  std::string text = first_heading(range);
  for (const auto &column : range.columns)
    text += "," + csv_text(column.reading + " [SI]");
  text += "\n";
  for (std::size_t i = 0; i < range.points.size(); ++i)
  {
    text += fmt::format("{}", range.points[i].value);
    for (const auto &column : range.columns)
      text += "," + csv_number(column.values[i]);
    text += "\n";
  }
  return text;
}
} // namespace

std::string range_csv(const RangeAnswer &range)
{
  if (!range.columns.empty())
    return columns_csv(range);
  std::string text = fmt::format("{},{},peak force [N],compression [m],travel left [1],layer\n",
                                 first_heading(range), csv_text(range.return_name + " [1]"));
  for (const auto &point : range.points)
    text +=
      fmt::format("{},{},{},{},{},{}\n", point.value, csv_number(point.rebound), csv_number(point.peak_force),
                  csv_number(point.compression), csv_number(point.travel_left), csv_text(point.layer));
  return text;
}

std::string rows_csv(const TrialAnswer &answer)
{
  std::string text = fmt::format("reading,{},{},what to know\n",
                                 answer.swaps.empty() ? as_it_is : before_change, after_change);
  for (const auto &row : answer.rows)
    text += fmt::format("{},{},{},{}\n", csv_text(row.reading), csv_number(row.now_value),
                        csv_number(row.then_value), csv_text(row.note));
  return text;
}
} // namespace solemech::tools
