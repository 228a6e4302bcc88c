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

std::string band_text(const settle::Band &band, D dimension, const std::string &unit = {})
{
  const auto how = printed(dimension, band.value);
  const auto half = 0.5 * (band.high - band.low) * how.factor;
  const auto shown = !unit.empty() ? unit : how.unit;
  return fmt::format("{:.{}f}{}{} +-{:.{}f}", band.value * how.factor, how.decimals, shown.empty() ? "" : " ",
                     shown, half, how.decimals == 0 && half < 1 ? 1 : how.decimals);
}
} // namespace

std::string settled_text(const Sheet &sheet, const SettledSheet &answer)
{
  const auto &settled = answer.settled;
  std::string text =
    fmt::format("bench sheet {}{}{}; +- holds nine cases of ten\n\n", sheet.file.label,
                sheet.pair.empty() ? "" : ", " + sheet.pair, sheet.part.empty() ? "" : ", " + sheet.part);
  text += fmt::format("  {:<30}{:<20}{:<20}{}\n", "your readings", "predicted", "measured", "");
  for (std::size_t i = 0; i < answer.n_readings; ++i)
  {
    const auto &seen = settled.observations[i];
    const auto &probe = answer.probes[i];
    text += fmt::format(
      "  {:<30}{:<20}{:<20}{}{}{}\n", seen.name, band_text(seen.predicted, probe.dimension, probe.unit),
      band_text(seen.measured, probe.dimension, probe.unit), settle::verdict_words(seen.verdict),
      seen.held_out ? " (held out)" : "", seen.weight < 0.99 ? " (wild: counts less)" : "");
  }
  text += "\n  settled with your readings\n";
  for (std::size_t i = answer.n_readings; i < answer.probes.size(); ++i)
  {
    const auto &seen = settled.observations[i];
    const auto &probe = answer.probes[i];
    text += fmt::format("  {:<30}{} (was {})\n", probe.part.empty() ? probe.name : probe.part + " returns",
                        band_text(seen.predicted, probe.dimension), band_text(seen.before, probe.dimension));
  }
  for (std::size_t k = 0; k < settled.parameters.size(); ++k)
  {
    const auto &parameter = settled.parameters[k];
    text += fmt::format(
      "  {:<30}{} (was {}){}{}\n", parameter.name, band_text(parameter.band, sheet.unknowns[k].dimension),
      band_text(parameter.before, sheet.unknowns[k].dimension), parameter.settled ? "" : "  stays open",
      parameter.at_limit ? "  at the end of what is allowed" : "");
  }
  if (!answer.fits.empty())
    text += "\n  library materials in its place (misfit in widths of the readings' +-; up to 1 fits)\n";
  std::string layer;
  int         shown = 0;
  for (const auto &fit : answer.fits)
  {
    shown = fit.layer == layer ? shown + 1 : 1;
    layer = fit.layer;
    if (shown <= 3)
      text += fmt::format("  {:<12}{:<22}{:>5.1f}  {}{}\n", fit.layer, fit.name, fit.misfit,
                          fit.misfit <= 1   ? "fits"
                          : fit.misfit <= 2 ? "poor"
                                            : "does not fit",
                          fit.misfit > 1 ? "; misses most: " + fit.worst : "");
  }
  text += "\n";
  for (const auto &open : settled.open)
    text += "  " + open.words + "\n";
  for (const auto &remark : settled.remarks)
    text += "  " + remark + "\n";
  if (!settled.converged)
    text += "  not settled to the end: " + settled.why_not + "\n";
  for (const auto &kept : sheet.kept)
    text += "  " + kept + "\n";
  for (const auto &assumed : sheet.assumptions)
    text += "  taken: " + assumed + "\n";
  return text;
}
} // namespace solemech::tools
