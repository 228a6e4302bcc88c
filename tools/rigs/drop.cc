// SPDX-License-Identifier: Apache-2.0
// Drop weight and ball rebound.
#include "tools/rigs/kind.h"
#include "tools/rigs/numbers.h"
#include "tools/rigs/tup_text.h"

#include <fmt/format.h>

namespace solemech::tools::rigs
{
namespace
{
using solver::DropRig;

bool is_ball(const solver::Case &setup)
{
  return tup_of(setup.rig).shape == solver::TupShape::sphere;
}

class Drop final : public Kind
{
public:
  solver::RigKind id() const override { return solver::RigKind::drop; }
  const char     *family() const override { return "drop"; }
  std::string     striker(const solver::Case &setup) const override
  {
    return is_ball(setup) ? "ball" : "drop weight";
  }
  /// A ball falls on a sheet of foam.
  bool           needs_a_plug(const solver::Case &setup) const override { return !is_ball(setup); }
  EnergyBasis    energy_basis() const override { return EnergyBasis::blow; }
  const DropRig *fall(const solver::Case &setup) const override { return &numbers_of<DropRig>(setup); }
  const char *force_title() const override { return "Force on the drop weight while it touches the stack"; }

  std::string text(const solver::Case &setup, Lengths lengths) const override
  {
    const auto &rig = numbers_of<DropRig>(setup);
    std::string text =
      fmt::format("drop weight {:.3g} kg, {}, falls {} ({:.3g} J)", rig.mass, tup_text(rig.tup, lengths),
                  length_text(rig.height, lengths), rig.mass * setup.gravity * rig.height);
    if (rig.guide_loss > 0)
      text += fmt::format("; the guide takes {:.2g} % each way", 100 * rig.guide_loss);
    if (rig.discarded > 0 || rig.hits > 1)
      text += fmt::format("; {} hit{} counted after {} that are not", rig.hits, rig.hits == 1 ? "" : "s",
                          rig.discarded);
    if (rig.base_mass > 0)
      text += fmt::format("; base {:.3g} kg", rig.base_mass);
    return text;
  }
};
} // namespace

const Kind &drop()
{
  static const Drop kind;
  return kind;
}
} // namespace solemech::tools::rigs
