// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/bend.h"

#include "solver/rigs/slow_bench.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
namespace
{
constexpr double n_steps = 10;        // over the travel, at step tolerance 1
constexpr double seat_share = 0.1;    // of the depth of the contact, where the section starts
constexpr double first_share = 0.002; // of the travel, where the nose is seated
constexpr double least_force = 1e-2;  // that residuals count against at first [N]

class BendBench
{
public:
  BendBench(const LongSection &section, const Case &input, const BendRig &rig, const Resolution &resolution);

  /// Lets the section down on its supports and finds the preload. @return why not
  std::string seat();
  std::string travel(BendOutcome &outcome);
  Recorder   &recorder() { return recorder_; }

  double force() const { return -nose_.reaction(bench_.integrator.x, 1); } ///< on the nose [N]
  double way() const { return -bench_.at(); } ///< of the nose since it touched [m]

private:
  class Seen : public Probe
  {
  public:
    explicit Seen(const BendBench &bench) : bench_(bench) {}
    void read(const TimeIntegrator &now, Curves &curves) const override { bench_.read(now.x, curves); }

  private:
    const BendBench &bench_;
  };

  const BendRig &rig_;
  SectionModel   model_;
  SectionLine    lower_, upper_;
  PlateLines     plate_;
  RollerContact  contact_;
  LedRoller      left_, right_, nose_;
  int            grip_; ///< unknown that the nose holds
  SlowBench      bench_;
  Recorder       recorder_;
  double         rate_, longest_step_;

  LedRoller   add(const char *name, Meets meets, double radius, double place);
  int         nearest_to_nose() const;
  void        read(const Vector &x, Curves &curves) const;
  std::string go_to(double way);
};

BendBench::BendBench(const LongSection &section, const Case &input, const BendRig &rig,
                     const Resolution &resolution)
  : rig_(rig), model_(section, input,
                      [](const auto &) {
                        return std::array{false, false};
                      }),
    lower_(*model_.mesh, SectionLine::Side::lower), upper_(*model_.mesh, SectionLine::Side::upper),
    plate_(section, *model_.mesh, rig.plate), contact_(roller_contact(section, input, resolution)),
    left_(add("support behind", Meets::lower_face, rig.support_radius, rig.centre - 0.5 * rig.span)),
    right_(add("support ahead", Meets::lower_face, rig.support_radius, rig.centre + 0.5 * rig.span)),
    nose_(add("nose", Meets::upper_face, rig.nose_radius, rig.centre)), grip_(nearest_to_nose()),
    bench_(model_, nose_.led(), std::max(rig.preload, least_force), resolution),
    recorder_(bench_recorder(model_, bench_, std::make_unique<Seen>(*this))), rate_(rig.speed),
    longest_step_(rig.force_at.back() / n_steps * resolution.step_tolerance)
{
  model_.equation.boundary.hold(grip_, 0);
  bench_.on_step = [this] {
    (void)recorder_.look({bench_.integrator, bench_.integrator.time});
    return SlowBench::Seen{force()};
  };
}

LedRoller BendBench::add(const char *name, Meets meets, double radius, double place)
{
  const auto &line = meets == Meets::lower_face ? lower_ : upper_;
  return add_roller(model_, {name, meets, radius, {place, touching_height(line, meets, radius, place)}},
                    contact_.penalty);
}

int BendBench::nearest_to_nose() const
{
  double   closest = 1e9;
  unsigned nearest = 0;
  for (const auto &face : model_.mesh->mesh().faces)
    if (face.id == static_cast<int>(geometry::BoundaryId::top))
      for (const unsigned node : model_.mesh->edge(face))
        if (const double apart = std::abs(model_.mesh->nodes()[node][0] - rig_.centre); apart < closest)
          closest = apart, nearest = node;
  return model_.mesh->dof(nearest, 0);
}

void BendBench::read(const Vector &x, Curves &curves) const
{
  const auto &bent = plate_.exist() ? plate_.lower() : lower_;
  const auto  strains = plate_.strains(x);
  curves.push("force", "N", "force on the nose, upwards", force());
  curves.push("travel", "m", "way of the nose since it touched", way());
  curves.push("deflection", "m", "way down of the plate, or of the lower face, under the nose",
              -bent.displacement(x, rig_.centre)[1]);
  curves.push("sink", "m", "way down of the lower face under the nose",
              -lower_.displacement(x, rig_.centre)[1]);
  curves.push("force_behind", "N", "force on the support nearer to the heel, downwards",
              left_.reaction(x, 1));
  curves.push("force_ahead", "N", "force on the support nearer to the toe, downwards", right_.reaction(x, 1));
  curves.push("grip", "N", "force along the foot by which the nose keeps the sole in its place",
              -left_.reaction(x, 0) - right_.reaction(x, 0) - nose_.reaction(x, 0));
  curves.push("strain_most", "1", "greatest logarithmic strain of the plate", strains[0]);
  curves.push("strain_least", "1", "least logarithmic strain of the plate", strains[1]);
}

std::string BendBench::go_to(double way)
{
  return bench_.lead_to(-way, rate_,
                        std::max(1.0, std::ceil(std::abs(way - this->way()) / longest_step_ - 1e-9)));
}

std::string BendBench::seat()
{
  // What only lies on its supports has no stiffness: it starts sunk into them a little.
  for (unsigned node = 0; node < model_.mesh->n_nodes(); ++node)
    if (const int dof = model_.mesh->dof(node, 1); dof >= 0)
      bench_.integrator.x[dof] = -seat_share * contact_.depth;
  for (const auto *roller : {&left_, &right_, &nose_})
    roller->stand(bench_.integrator.x);
  bench_.integrator.start();
  recorder_.open_ledger(0);
  const double first = first_share * rig_.force_at.back();
  std::string  stop;
  for (double to = first; stop.empty() && (to == first || force() < rig_.preload);
       to = std::min(4 * way(), way() + longest_step_))
    stop = go_to(to);
  // Force grows about as the way does.
  constexpr double close = 0.01;
  for (int i = 0;
       i < 6 && rig_.preload > 0 && stop.empty() && std::abs(force() - rig_.preload) > close * rig_.preload;
       ++i)
    stop = go_to(way() * rig_.preload / force());
  return stop;
}

std::string BendBench::travel(BendOutcome &outcome)
{
  outcome.zero = rig_.preload > 0 ? way() * rig_.preload / force() : 0.0;
  std::vector<double> targets = rig_.force_at;
  targets.insert(targets.end(), {rig_.secant_from, rig_.secant_to});
  std::ranges::sort(targets);
  std::optional<double> from;
  for (const double target : targets)
  {
    if (target > rig_.force_at.back())
      break;
    if (const auto stop = go_to(outcome.zero + target); !stop.empty())
      return stop;
    if (std::ranges::count(rig_.force_at, target) > 0 && outcome.forces.size() < rig_.force_at.size() &&
        rig_.force_at[outcome.forces.size()] == target)
      outcome.forces.push_back(force());
    if (target == rig_.secant_from)
      from = force();
    if (target == rig_.secant_to && from)
      outcome.stiffness = (force() - *from) / (rig_.secant_to - rig_.secant_from);
  }
  const auto &bent = plate_.exist() ? plate_.lower() : lower_;
  outcome.indentation = 1 + bent.displacement(bench_.integrator.x, rig_.centre)[1] / way();
  return {};
}
} // namespace

BendOutcome run_bend(const LongSection &section, const Case &surroundings, const BendRig &rig,
                     const Resolution &resolution)
{
  BendBench   bench(section, surroundings, rig, resolution);
  BendOutcome outcome;
  std::string stop = bench.seat();
  if (stop.empty())
    stop = bench.travel(outcome);
  const double way = bench.way();
  outcome.record = bench.recorder().finish();
  outcome.record.complete = stop.empty();
  if (!stop.empty())
    outcome.record.stop_reason = fmt::format(
      "the bend stopped at {:.2f} mm of travel: {}. Try a wider span, a thicker nose, or less travel",
      1e3 * way, stop);
  return outcome;
}
} // namespace solemech::solver
