// SPDX-License-Identifier: Apache-2.0
// Hold: a squeeze or a load kept up for minutes to days, and the rest after it.
#include "solver/results/catalogue.h"
#include "tools/language/number_text.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/kind.h"
#include "tools/rigs/numbers.h"
#include "tools/rigs/tup_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools::rigs
{
namespace
{
using solver::catalogue;
using solver::HoldRig;

std::string held_text(const HoldRig &rig)
{
  return rig.is_under_load() ? force_text(rig.load)
                             : fmt::format("{:.3g} % of its height", 100 * rig.squeeze);
}

/// A curve over the time since the load or squeeze was there, in decades, up to where it goes again.
ChartLine over_decades(const Run &run, const std::vector<double> &values, double factor)
{
  const auto  &rig = numbers_of<HoldRig>(run.setup);
  const auto  &time = run.result.time;
  const double end = rig.ramp + rig.duration * (1 + 1e-9);
  ChartLine    line{run.label, {}, {}};
  for (std::size_t i = 0; i < time.size() && i < values.size() && time[i] <= end; ++i)
    if (const double since = time[i] - rig.ramp; since > 1e-3 * rig.ramp)
    {
      line.x.push_back(std::log10(since));
      line.y.push_back(factor * values[i]);
    }
  return line;
}

class Hold final : public Kind
{
public:
  solver::RigKind id() const override { return solver::RigKind::hold; }
  const char     *family() const override { return "hold"; }
  std::string     striker(const solver::Case &) const override { return "plate"; }
  bool            needs_a_plug(const solver::Case &) const override { return true; }
  EnergyBasis     energy_basis() const override { return EnergyBasis::work; }
  const char     *force_title() const override { return "Force on the plate"; }

  std::string text(const solver::Case &setup, Lengths lengths) const override
  {
    const auto &rig = numbers_of<HoldRig>(setup);
    return fmt::format("hold, {}, {} {} for {}, then {} of rest", tup_text(rig.tup, lengths),
                       rig.is_under_load() ? "under" : "squeezed by", held_text(rig), time_text(rig.duration),
                       time_text(rig.rest));
  }

  std::vector<std::string> cautions(const solver::Case &setup) const override
  {
    std::vector<std::string> texts;
    if (numbers_of<HoldRig>(setup).is_under_load())
      texts.emplace_back("A weight that stands for days can get knocked over. Guide it so that it cannot "
                         "tip, put it on the floor or behind a guard, and lift it off with both hands.");
    else
      texts.emplace_back("Plates bolted down on a stack are a loaded spring. Open all nuts in turn, little "
                         "by little, and keep your face out of the line of the bolts.");
    texts.emplace_back("Over hours gas leaves closed cells and air units through their walls, and the stack "
                       "sinks further (from memory). The model lets gas out of punctured units only.");
    return texts;
  }

  bool tells(const Run &run) const override
  {
    return run.result.complete && value_of(run, catalogue.compression_set);
  }

  std::string sentence(const Run &run) const override
  {
    const auto &rig = numbers_of<HoldRig>(run.setup);
    return fmt::format("{}. {} after it is let go, {} of the squeeze remains.{}", held(run),
                       time_text(rig.rest), share_words(number(run, catalogue.compression_set)),
                       warning_on(run, catalogue.compression_set));
  }

  std::vector<Headline> headline(const Run &run) const override
  {
    const auto &rig = numbers_of<HoldRig>(run.setup);
    const auto  kept = value_of(run, catalogue.force_left);
    return {
      kept
        ? Headline{"force left", share_words(*kept), "after " + time_text(rig.duration)}
        : Headline{"creep under load", length(number(run, catalogue.creep)), "in " + time_text(rig.duration)},
      {"compression set", share_words(number(run, catalogue.compression_set)), "of the squeeze"},
      {"height lost", length(number(run, catalogue.set_left)), time_text(rig.rest) + " after letting go"}};
  }

  std::vector<std::string> story(const Run &run) const override
  {
    const auto &rig = numbers_of<HoldRig>(run.setup);
    return {fmt::format("The plate squeezes the stack {1} within {0}.", time_text(rig.ramp),
                        rig.is_under_load() ? "with " + held_text(rig) : "by " + held_text(rig)),
            held(run) + "." + warning_on(run, catalogue.compression_set),
            fmt::format("Then the plate is lifted off. After {} of rest, the stack is still {} lower than "
                        "before: {} of the squeeze.",
                        time_text(rig.rest), length(number(run, catalogue.set_left)),
                        share_words(number(run, catalogue.compression_set)))};
  }

  Captions captions(const Run &run) const override
  {
    return {fmt::format("Greatest squeeze: the stack gives {}. The peak force is {}.",
                        of_stack(run, greatest_compression(run)), force_text(peak_force(run))),
            "Force against compression: squeezed, held, and released. The area inside is the energy that the "
            "stack keeps.",
            "The section from first touch to the end of the rest. The pictures are closer together in time "
            "at the start, where most happens.",
            "Where the work of squeezing is stored or lost, over time."};
  }

  std::vector<LineBlock> blocks(const std::vector<const Run *> &runs) const override
  {
    LineChart forces{"force", "time since squeezed [powers of ten of a second]", "force [N]", {}};
    LineChart ways{"compression", "time since loaded [powers of ten of a second]", "compression [mm]", {}};
    for (const auto *run : runs)
    {
      const bool  by_load = numbers_of<HoldRig>(run->setup).is_under_load();
      const auto *values = by_load ? compression_curve(*run) : curve_of(*run, "force");
      auto       &chart = by_load ? ways : forces;
      if (values && chart.lines.size() < most_lines)
        if (auto line = over_decades(*run, *values, by_load ? 1e3 : 1.0); line.x.size() > 1)
          chart.lines.push_back(std::move(line));
    }
    LineBlock block{
      "During the hold", "Each step along the time axis is ten times as long as the one before.", {}};
    for (auto &chart : {forces, ways})
      if (!chart.lines.empty())
        block.charts.push_back(chart);
    return block.charts.empty() ? std::vector<LineBlock>() : std::vector<LineBlock>{block};
  }

protected:
  Details detail_rows(const solver::Case &from, const solver::Case &to) const override
  {
    const auto &a = numbers_of<HoldRig>(from), &b = numbers_of<HoldRig>(to);
    Details     rows;
    add_row(rows, "squeeze or load", held_text(a), held_text(b));
    add_row(rows, "ramp", time_text(a.ramp), time_text(b.ramp));
    add_row(rows, "duration of the hold", time_text(a.duration), time_text(b.duration));
    add_row(rows, "rest after the hold", time_text(a.rest), time_text(b.rest));
    return rows;
  }

private:
  /// What the hold itself did, without a full stop.
  static std::string held(const Run &run)
  {
    const auto &rig = numbers_of<HoldRig>(run.setup);
    if (const auto kept = value_of(run, catalogue.force_left))
      return fmt::format(
        "Squeezed by {} for {}, the stack pushes back with {} at the end, {} of the {} at first",
        held_text(rig), time_text(rig.duration), force_text(number(run, catalogue.force_at_end)),
        share_words(*kept), force_text(peak_force(run)));
    return fmt::format("Under {} for {}, the stack sinks {} further, to {}", held_text(rig),
                       time_text(rig.duration), length(number(run, catalogue.creep)),
                       of_stack(run, greatest_compression(run)));
  }
};
} // namespace

const Kind &hold()
{
  static const Hold kind;
  return kind;
}
} // namespace solemech::tools::rigs
