// SPDX-License-Identifier: Apache-2.0
// Press: slow cycles and body-like pulses.
#include "tools/language/described_rigs.h"
#include "tools/language/member_differences.h"
#include "tools/rigs/kind.h"
#include "tools/rigs/numbers.h"
#include "tools/rigs/tup_text.h"

#include <fmt/format.h>

namespace solemech::tools::rigs
{
namespace
{
using solver::PressRig;

bool is_led_by_force(const PressRig &rig)
{
  return rig.control == solver::PressControl::force;
}

class Press final : public Kind
{
public:
  solver::RigKind id() const override { return solver::RigKind::press; }
  const char     *family() const override { return "press"; }
  std::string     striker(const solver::Case &) const override { return "press head"; }
  bool            needs_a_plug(const solver::Case &) const override { return true; }
  EnergyBasis     energy_basis() const override { return EnergyBasis::work; }
  const char     *force_title() const override { return "Force on the press plate"; }

  std::string text(const solver::Case &setup, Lengths lengths) const override
  {
    const auto       &rig = numbers_of<PressRig>(setup);
    const std::string peak = is_led_by_force(rig) ? force_text(rig.peak) : length_text(rig.peak, lengths);
    const char       *wave = rig.wave == solver::PressWave::triangle    ? "up and down"
                             : rig.wave == solver::PressWave::half_sine ? "in a half sine"
                                                                        : "along a table";
    return fmt::format("press, {}, to {} {} in {} ms, {} time{}", tup_text(rig.tup, lengths), peak, wave,
                       digits_text(1e3 * rig.duration), rig.cycles, rig.cycles == 1 ? "" : "s");
  }

protected:
  Details detail_rows(const solver::Case &from, const solver::Case &to) const override
  {
    const auto &a = numbers_of<PressRig>(from), &b = numbers_of<PressRig>(to);
    const auto  peak = [](const PressRig &rig) {
      return is_led_by_force(rig) ? quantity(rig.peak, "N") : quantity(rig.peak, "mm", 1e3);
    };
    Details rows;
    add_row(rows, "peak", peak(a), peak(b));
    add_differences(rows, a, b);
    return rows;
  }
};
} // namespace

const Kind &press()
{
  static const Press kind;
  return kind;
}
} // namespace solemech::tools::rigs
