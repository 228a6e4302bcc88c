// SPDX-License-Identifier: Apache-2.0
#include "tools/sheet/sheet_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
using D = materials::Dimension;

struct Printed
{
  double      factor;
  const char *unit;
  int         decimals;
};

Printed printed(D dimension, double value)
{
  switch (dimension)
  {
  case D::length:
    return {1e3, "mm", std::abs(value) < 0.05 ? 1 : 0};
  case D::time:
    return {1e3, "ms", 1};
  case D::force:
    return {1, "N", 0};
  case D::share:
    return {100, "%", 0};
  case D::pressure:
    return {1e-3, "kPa", 0};
  case D::density:
    return {1, "kg/m3", 0};
  case D::mass:
    return {1, "kg", 3};
  default:
    return {1, "", std::abs(value) < 10 ? 2 : 1};
  }
}

} // namespace

std::string band_text(const settle::Band &band, D dimension, const std::string &unit)
{
  const auto how = printed(dimension, band.value);
  const auto half = 0.5 * (band.high - band.low) * how.factor;
  const auto shown = !unit.empty() ? unit : how.unit;
  return fmt::format("{:.{}f}{}{} +-{:.{}f}", band.value * how.factor, how.decimals, shown.empty() ? "" : " ",
                     shown, half, how.decimals == 0 && half < 1 ? 1 : how.decimals);
}

std::string fine_text(double value, D dimension)
{
  const auto how = printed(dimension, value);
  return fmt::format("{:.{}f} {}", value * how.factor, dimension == D::force ? 0 : how.decimals + 1,
                     how.unit);
}

namespace
{
std::string fit_word(const MaterialFit &fit)
{
  return fit.misfit <= 1 ? "fits" : fit.misfit <= 2 ? "poor" : "does not fit";
}

constexpr int most_fits = 3; ///< shown for a layer
} // namespace

std::vector<ComparedRow> reading_rows_of(const SettledSheet &answer)
{
  std::vector<ComparedRow> rows;
  for (std::size_t i = 0; i < answer.n_readings; ++i)
  {
    const auto &seen = answer.settled.observations[i];
    const auto &probe = answer.probes[i];
    rows.push_back({seen.name, band_text(seen.predicted, probe.dimension, probe.unit), band_text(seen.measured, probe.dimension, probe.unit),
                    std::string(settle::verdict_words(seen.verdict)) + (seen.held_out ? " (held out)" : "") +
                      (seen.weight < 0.99 ? " (wild: counts less)" : "")});
  }
  return rows;
}

std::vector<SettledRow> settled_rows(const Sheet &sheet, const SettledSheet &answer)
{
  const auto             &settled = answer.settled;
  std::vector<SettledRow> rows;
  for (std::size_t i = answer.n_readings; i < answer.probes.size(); ++i)
  {
    const auto &seen = settled.observations[i];
    const auto &probe = answer.probes[i];
    rows.push_back({probe.part.empty() ? probe.name : probe.part + " returns", band_text(seen.predicted, probe.dimension),
                    band_text(seen.before, probe.dimension), ""});
  }
  for (std::size_t k = 0; k < settled.parameters.size(); ++k)
  {
    const auto &parameter = settled.parameters[k];
    rows.push_back({parameter.name, band_text(parameter.band, sheet.unknowns[k].dimension), band_text(parameter.before, sheet.unknowns[k].dimension),
                    std::string(parameter.settled ? "" : "  stays open") + (parameter.at_limit ? "  at the end of what is allowed" : "")});
  }
  return rows;
}

std::vector<FitRow> fit_rows(const SettledSheet &answer)
{
  std::vector<FitRow> rows;
  int                 shown = 0;
  for (const auto &fit : answer.fits)
  {
    shown = !rows.empty() && rows.back().layer == fit.layer ? shown + 1 : 1;
    if (shown <= most_fits)
      rows.push_back({fit.layer, fit.name, fmt::format("{:.1f}", fit.misfit), fit_word(fit) + (fit.misfit > 1 ? "; misses most: " + fit.worst : "")});
  }
  return rows;
}

std::vector<std::string> settled_remarks(const Sheet &sheet, const SettledSheet &answer)
{
  std::vector<std::string> remarks;
  for (const auto &open : answer.settled.open)
    remarks.push_back(open.words);
  for (const auto &remark : answer.settled.remarks)
    remarks.push_back(remark);
  if (!answer.settled.converged)
    remarks.push_back("not settled to the end: " + answer.settled.why_not);
  for (const auto &kept : sheet.kept)
    remarks.push_back(kept);
  for (const auto &assumed : sheet.assumptions)
    remarks.push_back("taken: " + assumed);
  return remarks;
}

std::string settled_text(const Sheet &sheet, const SettledSheet &answer)
{
  std::string text =
    fmt::format("bench sheet {}{}{}; +- holds nine cases of ten\n\n", sheet.file.label,
                sheet.pair.empty() ? "" : ", " + sheet.pair, sheet.part.empty() ? "" : ", " + sheet.part);
  text += fmt::format("  {:<30}{:<20}{:<20}\n", "your readings", "predicted", "measured");
  for (const auto &row : reading_rows_of(answer))
    text += fmt::format("  {:<30}{:<20}{:<20}{}\n", row.name, row.predicted, row.measured, row.verdict);
  text += "  The verdict compares a reading with what all the others say of it.\n";
  text += "\n  settled with your readings\n";
  for (const auto &row : settled_rows(sheet, answer))
    text += fmt::format("  {:<30}{} (was {}){}\n", row.name, row.now, row.before, row.remark);
  const auto fits = fit_rows(answer);
  if (!fits.empty())
    text += "\n  library materials in its place (misfit in widths of the readings' +-; up to 1 fits)\n";
  for (const auto &fit : fits)
    text += fmt::format("  {:<12}{:<22}{:>5}  {}\n", fit.layer, fit.material, fit.misfit, fit.word);
  text += "\n";
  for (const auto &remark : settled_remarks(sheet, answer))
    text += "  " + remark + "\n";
  return text;
}
} // namespace solemech::tools
