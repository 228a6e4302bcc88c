// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/air_story.h"

#include "solver/layer_parts.h"
#include "tools/output/report/energy_flow.h"
#include "tools/output/report/plain_text.h"
#include "tools/rigs/facts.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools::report
{
namespace
{
double row_at(const Run &run, const std::string &part, const char *kind, std::size_t at)
{
  for (const auto &row : run.result.ledger)
    if (row.part == part && row.kind == kind && at < row.values.size())
      return row.values[at];
  return 0;
}

/// "the unit" for a layer of that name, "the air unit in LAYER" for any other.
std::string unit_name(const solver::Layer &layer)
{
  return layer.name.find("unit") != std::string::npos ? "the " + layer.name : "the air unit in " + layer.name;
}

std::string gas_words(const Run &run, const solver::Layer &layer, std::size_t peak, std::size_t end)
{
  const auto *pressure = rigs::curve_of(run, layer.name + ".gauge_pressure");
  if (layer.unit->state == solver::ChamberState::open || !pressure)
    return capital(unit_name(layer)) + " is open: its air escapes freely and carries nothing. Only the ring "
                                       "round it, the film, and the layers above and below push back.";
  std::string text = fmt::format(
    "The gas in {} is squeezed from {:.0f} kPa to {:.0f} kPa above the atmosphere", unit_name(layer),
    1e-3 * pressure->front(), 1e-3 * *std::max_element(pressure->begin(), pressure->end()));
  const double held = row_at(run, layer.name, "gas", peak), input = run.result.supplied_energy();
  const double heat = row_at(run, layer.name, "gas heat", end);
  if (input > 0 && held > 0.005 * input)
  {
    text += fmt::format(" and holds {} of the energy at the peak", share_words(held / input));
    text += heat >= 0.001 * held
              ? fmt::format("; it loses {} of that as heat to film and fibres, the rest comes back",
                            share_words(heat / held))
              : "; hardly any of that is lost";
  }
  text += ".";
  if (const double leak = row_at(run, layer.name, "leak", end); input > 0 && leak > 0.001 * input)
    text += fmt::format(" The leak takes {}.", share_words(leak / input));
  return text;
}

std::string fibre_words(const Run &run, const solver::Layer &layer)
{
  const auto chamber = std::find_if(run.result.chambers.begin(), run.result.chambers.end(),
                                    [&](const auto &facts) { return facts.layer == layer.name; });
  if (!layer.unit->has_fibres || chamber == run.result.chambers.end())
    return "";
  if (chamber->fibre_tension <= 0)
    return " The fibres hang slack; they hold the faces back only when the unit is inflated.";
  return fmt::format(" The fibres hold the faces flat, each with {:.2g} N at rest. Where the unit is "
                     "squeezed they go slack and carry nothing.",
                     chamber->fibre_tension);
}

std::string film_words(const solver::Layer &layer, const EnergyFlow &flow, std::size_t peak, std::size_t end)
{
  const auto *film = flow.find(solver::film_part(layer.name));
  if (!film || flow.input <= 0)
    return "";
  const double held = (film->stored[peak] + film->lost[peak]) / flow.input,
               lost = film->lost[end] / flow.input;
  if (held < 0.005)
    return " The film takes hardly any energy.";
  return fmt::format(" The film takes {} at the peak and turns {} into heat.", share_words(held),
                     share_words(lost));
}
} // namespace

std::vector<std::string> air_story(const Run &run)
{
  std::vector<std::string> story;
  if (run.result.time.empty())
    return story;
  const auto        flow = energy_flow(run);
  const std::size_t peak = recorded_at(run.result, run.result.time_of_peak), end = recorded_end(run.result);
  for (const auto &layer : run.setup.layers)
    if (layer.unit)
      story.push_back(gas_words(run, layer, peak, end) + fibre_words(run, layer) +
                      (flow.input > 0 ? film_words(layer, flow, peak, end) : ""));
  return story;
}
} // namespace solemech::tools::report
