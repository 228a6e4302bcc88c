// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/readings_table.h"

#include "solver/results/catalogue.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
using Options = SummaryOptions;

using Cell = std::function<std::string(const Run &, const Options &)>;
using solver::LineForm;
using solver::ReadingKind;

/// A cell that shows one reading, or nothing when the run has none.
template <typename Print>
Cell shows(const ReadingKind &kind, Print print)
{
  return [&kind, print](const Run &run, const Options &options) {
    const auto *reading = run.result.find(kind);
    return reading ? print(reading->value, run, options) : std::string();
  };
}

/// The reading that stands on the same line, or nullptr.
const solver::Reading *beside(const ReadingKind &kind, const Run &run)
{
  return run.result.find(std::string(kind.beside));
}

std::string with_unit(const std::string &number, std::string_view unit_text)
{
  return unit_text.empty() ? number : fmt::format("{} {}", number, unit_text);
}

std::string rebound(const ReadingKind &kind, double value, const Run &run, const Options &options)
{
  const auto *height = beside(kind, run);
  return (height ? length_text(height->value, options.lengths) + "  " : std::string()) +
         percent_text(value, options.details);
}

std::string of_the_stack(const ReadingKind &kind, double value, const Run &run, const Options &options)
{
  const auto *part = beside(kind, run);
  return length_text(value, options.lengths, false) + " of " +
         length_text(stack_height(run.setup.layers), options.lengths) +
         (part ? "  " + percent_text(part->value, options.details) : std::string());
}

/// Steps are counted, not measured.
bool is_count(const ReadingKind &kind)
{
  return kind.shown.unit == "thousand";
}

/// "1.20, 1.94 mm": the reading and the one beside it.
std::string range(const ReadingKind &kind, double value, const Run &run, const Options &options)
{
  const double highest = beside(kind, run)->value;
  if (kind.unit == "m")
    return fmt::format("{}, {} {}", digits_text(length_factor(options.lengths) * value),
                       digits_text(length_factor(options.lengths) * highest), length_unit(options.lengths));
  return is_count(kind) ? rounded_count(value) + ", " + rounded_count(highest)
                        : digits_text(value) + ", " + digits_text(highest);
}

std::string cell_text(const ReadingKind &kind, double value, const Run &run, const Options &options)
{
  const double shown = value * kind.shown.factor;
  const auto   unit_text = kind.line.unit.empty() ? kind.shown.unit : kind.line.unit;
  switch (kind.line.form)
  {
  case LineForm::none:
    break;
  case LineForm::digits:
    return with_unit(digits_text(shown), unit_text);
  case LineForm::two_digits:
    return with_unit(fmt::format("{:.2g}", shown), unit_text);
  case LineForm::share:
    return percent_text(value, options.details);
  case LineForm::length:
    return length_text(value, options.lengths);
  case LineForm::fine_length:
    return with_unit(digits_text(value * length_factor(options.lengths)), length_unit(options.lengths));
  case LineForm::force:
    return force_text(value);
  case LineForm::points:
    return hardness_text(value, run.setup);
  case LineForm::count:
    return rounded_count(value);
  case LineForm::range:
    return range(kind, value, run, options);
  case LineForm::rebound:
    return rebound(kind, value, run, options);
  case LineForm::of_the_stack:
    return of_the_stack(kind, value, run, options);
  case LineForm::travel_left:
    return value <= 0 ? "bottomed" : fmt::format("{:.0f} % of travel left", 100 * value);
  }
  return "";
}

/// The same as one bare number.
std::string column_text(const ReadingKind &kind, double value, const Options &options)
{
  switch (kind.line.form)
  {
  case LineForm::length:
  case LineForm::of_the_stack:
    return length_text(value, options.lengths, false);
  case LineForm::fine_length:
    return digits_text(value * length_factor(options.lengths));
  case LineForm::force:
    return fmt::format("{:.2f}", value / 1e3);
  case LineForm::count:
    return rounded_count(value);
  case LineForm::travel_left:
    if (value <= 0)
      return "bottomed";
    [[fallthrough]];
  case LineForm::share:
  case LineForm::rebound:
  case LineForm::points:
    return fmt::format("{:.{}f}", value * kind.shown.factor, kind.shown.digits);
  default:
    return digits_text(value * kind.shown.factor);
  }
}

/// True for a reading that stands on the line of another: warnings on it stand there too.
bool is_beside_another(const ReadingKind &kind)
{
  const auto all = solver::all_readings();
  return std::any_of(all.begin(), all.end(), [&](const auto &other) { return other.beside == kind.name; });
}

ReadingRow row_of(const ReadingKind &kind)
{
  ReadingRow row{std::string(kind.line.heading),
                 std::string(kind.line.column),
                 {},
                 kind.line.only_details,
                 nullptr,
                 nullptr};
  if (!is_beside_another(kind))
    row.readings = {kind};
  if (!kind.beside.empty())
    row.readings.emplace_back(kind.beside);
  row.cell = shows(kind, [&kind](double value, const Run &run, const Options &options) {
    return cell_text(kind, value, run, options);
  });
  if (!kind.line.column.empty())
    row.short_cell = shows(kind, [&kind](double value, const Run &, const Options &options) {
      return column_text(kind, value, options);
    });
  return row;
}

std::vector<ReadingRow> make_rows()
{
  std::vector<ReadingRow> rows;
  for (const auto &kind : solver::all_readings())
  {
    // With --details the three returns stand together, the one of the first line too.
    if (kind.name == solver::catalogue.return_by_speed)
      rows.push_back({"energy return, by height",
                      "",
                      {},
                      true,
                      shows(solver::catalogue.rebound_by_height,
                            [](double value, const Run &, const Options &options) {
                              return percent_text(value, options.details);
                            }),
                      nullptr});
    if (kind.line.form != LineForm::none)
      rows.push_back(row_of(kind));
  }
  return rows;
}

} // namespace

std::string hardness_text(double points, const solver::Case &setup)
{
  const std::string scale = rigs::kind_of(setup).scale(setup);
  return fmt::format("{:.1f}{}{}", points, scale.empty() ? "" : " ", scale);
}

std::string rig_text(const solver::Case &setup, Lengths lengths)
{
  return rigs::kind_of(setup).text(setup, lengths) + fmt::format("; {:.0f} °C", setup.temperature - 273.15);
}

const std::vector<ReadingRow> &reading_rows()
{
  static const std::vector<ReadingRow> rows = make_rows();
  return rows;
}
} // namespace solemech::tools
