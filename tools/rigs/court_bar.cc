// SPDX-License-Identifier: Apache-2.0
#include "tools/rigs/court_bar.h"

#include "solver/results/catalogue.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/numbers.h"

#include <fmt/format.h>

#include <numbers>

namespace solemech::tools::rigs
{
namespace
{
using solver::SlideRig;
} // namespace

void CourtBar::follow_layers(solver::Case &setup) const
{
  numbers_of<SlideRig>(setup).lug_heat.density = setup.layers.back().material.density;
}

std::string CourtBar::text(const solver::Case &setup, Lengths lengths) const
{
  const auto &rig = numbers_of<SlideRig>(setup);
  std::string text = fmt::format("slide over {} {}, friction {:.2g}", rig.court_state, rig.court,
                                 rig.friction.mu_ref * rig.friction.state);
  if (rig.friction_highest > rig.friction_lowest)
    text += fmt::format(" ({:.2g} to {:.2g})", rig.friction_lowest, rig.friction_highest);
  text += fmt::format(", {:.0f} kPa, {:.2g} m/s, {:.0f}° from across the bar; bar {} wide, {} high, {} apart",
                      1e-3 * rig.pressure, rig.speed, rig.heading * 180 / std::numbers::pi,
                      length_text(rig.lug.width, lengths), length_text(rig.lug.height, lengths),
                      length_text(rig.lug.spacing, lengths));
  if (rig.pad_length > 0)
    text += fmt::format(", cut into pads {} long", length_text(rig.pad_length, lengths));
  return text;
}

std::vector<std::string> CourtBar::cautions(const solver::Case &) const
{
  return {"Too little grip makes people fall; too much twists knees and ankles. Neither is safe. This number "
          "does not clear a court for play.",
          "Dust and water change grip more than any tread does: clean and dry the court first, and follow "
          "the rules of the hall."};
}

std::optional<InputRange> CourtBar::input_range(const Run &run, const std::string &reading) const
{
  const auto  &rig = numbers_of<SlideRig>(run.setup);
  const auto  *value = run.result.find(reading);
  const double friction = rig.friction.mu_ref * rig.friction.state;
  if (!value || !solver::kind_of(*value).with_friction || !(rig.friction_highest > rig.friction_lowest) ||
      !(friction > 0))
    return std::nullopt;
  return InputRange{value->value * rig.friction_lowest / friction,
                    value->value * rig.friction_highest / friction, "the friction of this court"};
}

Captions CourtBar::captions(const Run &run) const
{
  return {moment(run), "A slide gives no loop.", "No pictures are kept for a slide.",
          "All the energy put in turns into heat between face and floor."};
}
} // namespace solemech::tools::rigs
