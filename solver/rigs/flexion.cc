// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/flexion.h"

#include "geometry/sole/monotone_curve.h"
#include "solver/results/metrics.h"
#include "solver/rigs/slow_bench.h"

#include "numerics/rising_root.h"
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace solemech::solver
{
namespace
{
constexpr double regular_step = 5 * degree; // at step tolerance 1
constexpr double growth = 4;                // of the first steps, from the touch on
constexpr double bent_over = 5e-3;          // length over which the bend of the sole is a mean [m]

/// Held by a pad: the lower face from the axis on, the upper one from the end of its pad on.
Held pads(const LongSection &section, const FlexionRig &rig)
{
  return [&](const geometry::BoundaryFace &face) {
    const auto      &mesh = section.mesh;
    const auto       ends = geometry::face_vertices(mesh.cells[face.cell], face.face);
    const double     from = std::min(mesh.vertices[ends[0]][0], mesh.vertices[ends[1]][0]);
    constexpr double rounding = 1e-9; // [m]
    const bool       lower =
                 face.id == static_cast<int>(geometry::BoundaryId::base) && from > rig.axis[0] - rounding,
               upper = face.id == static_cast<int>(geometry::BoundaryId::top) &&
                       from > rig.axis[0] + rig.setback - rounding;
    return std::array{lower || upper, lower || upper};
  };
}

/// Throws std::invalid_argument when no cells end where a pad does.
void check_pad_ends(const LongSection &section, const FlexionRig &rig)
{
  constexpr double close = 1e-6; // [m]
  for (const double end : {rig.axis[0], rig.axis[0] + rig.setback})
    if (std::ranges::none_of(section.mesh.vertices,
                             [&](const auto &vertex) { return std::abs(vertex[0] - end) < close; }))
      throw std::invalid_argument(
        fmt::format("no cells of the section end at {:.3f} mm, where a pad does", 1e3 * end));
}

/// Angle of the arm at which its roller first touches the unloaded line [rad].
double touch_angle(const SectionLine &line, const FlexionRig &rig)
{
  const auto places = line.drawn();
  const auto sunk = [&](double angle) {
    const double x = rig.axis[0] - rig.arm * std::cos(angle) - rig.roller_radius * std::sin(angle),
                 z = rig.axis[1] + rig.arm * std::sin(angle) - rig.roller_radius * std::cos(angle);
    double deepest = -std::numeric_limits<double>::max(); // of what is above the roller, straight down
    for (const Point &place : places)
      if (const double apart = place[0] - x; std::abs(apart) < rig.roller_radius)
        deepest =
          std::max(deepest, z + std::sqrt(rig.roller_radius * rig.roller_radius - apart * apart) - place[1]);
    return deepest;
  };
  constexpr double searched = 20 * degree;
  const double     angle = numerics::rising_root(sunk, -searched, searched);
  if (std::abs(angle) == searched)
    throw std::invalid_argument("the roller on the arm does not reach the sole from below");
  return angle;
}

class FlexionBench
{
public:
  FlexionBench(const LongSection &section, const Case &input, const FlexionRig &rig,
               const Resolution &resolution);

  /// From the first touch to the touch moment. @return why not
  std::string find_zero();
  /// On to the greatest angle.
  std::string bend_up();
  /// And back until the roller leaves the sole, where something was lost on the way.
  std::string let_down();

  FlexionOutcome outcome(const std::string &stop);
  double         angle() const { return bench_.at(); } ///< of the arm from the floor [rad]

private:
  class Seen : public Probe
  {
  public:
    explicit Seen(const FlexionBench &bench) : bench_(bench) {}
    void read(const TimeIntegrator &now, Curves &curves) const override { bench_.read(now.x, curves); }

  private:
    const FlexionBench &bench_;
  };

  const FlexionRig &rig_;
  SectionModel      model_;
  SectionLine       lower_;
  PlateLines        plate_;
  LedRoller         roller_;
  double            touch_, step_;
  SlowBench         bench_;
  Recorder          recorder_;
  FlexionOutcome    outcome_;
  std::size_t       n_up_ = 0; ///< records until the greatest angle
  std::string       cure_ = "Foam between a pad and a plate, or at the end of a pad, is squeezed without end "
                            "there: end the upper pad further ahead, or flex less";

  double          moment() const { return roller_.reaction(bench_.integrator.x, 1); } ///< [N m]
  void            read(const Vector &x, Curves &curves) const;
  SlowBench::Seen seen();
  std::string     go_to(double angle);
  void            read_curve(const std::vector<double> &angles, const std::vector<double> &moments);
};

FlexionBench::FlexionBench(const LongSection &section, const Case &input, const FlexionRig &rig,
                           const Resolution &resolution)
  : rig_(rig), model_(section, input, pads(section, rig)), lower_(*model_.mesh, SectionLine::Side::lower),
    plate_(section, *model_.mesh, rig.plate),
    roller_(add_roller_on_arm(model_,
                              {"roller",
                               Meets::lower_face,
                               rig.roller_radius,
                               {rig.axis[0] - rig.arm, rig.axis[1] - rig.roller_radius}},
                              rig.axis, roller_contact(section, input, resolution).penalty)),
    touch_(touch_angle(lower_, rig)), step_(regular_step * resolution.step_tolerance),
    bench_(model_, roller_.led(), 0.1 * rig.touch_moment / rig.arm, resolution),
    recorder_(bench_recorder(model_, bench_, std::make_unique<Seen>(*this)))
{
  bench_.integrator.x[roller_.led()] = touch_;
  roller_.stand(bench_.integrator.x);
  bench_.integrator.start();
  recorder_.open_ledger(0);
  bench_.on_step = [this] { return seen(); };
}

void FlexionBench::read(const Vector &x, Curves &curves) const
{
  const auto strains = plate_.strains(x);
  curves.push("angle", "rad", "angle of the arm from the floor", x[roller_.led()]);
  curves.push("moment", "N m", "moment that turns the arm", roller_.reaction(x, 1));
  curves.push("strain_most", "1", "greatest logarithmic strain of the plate", strains[0]);
  curves.push("strain_least", "1", "least logarithmic strain of the plate", strains[1]);
}

SlowBench::Seen FlexionBench::seen()
{
  (void)recorder_.look({bench_.integrator, bench_.integrator.time});
  const auto   strains = plate_.strains(bench_.integrator.x);
  const double strain = std::max(strains[0], -strains[1]);
  outcome_.most_strain = std::max(outcome_.most_strain, strain);
  if (strain > rig_.strain_limit)
  {
    cure_ = "Flex less, or lay the plate lower";
    return {0, fmt::format("the plate is strained by {:.2f} %, beyond its limit of {:.2f} %", 100 * strain,
                           100 * rig_.strain_limit)};
  }
  return {moment() / rig_.arm, {}};
}

std::string FlexionBench::go_to(double angle)
{
  return bench_.lead_to(angle, rig_.rate,
                        std::max(1.0, std::ceil(std::abs(angle - this->angle()) / step_ - 1e-9)));
}

std::string FlexionBench::find_zero()
{
  constexpr double first = 1e-3 * degree, close = 0.01;
  std::string      stop;
  for (double on = first; stop.empty() && moment() < rig_.touch_moment && angle() < rig_.greatest_angle;
       on = std::min(growth * on, regular_step))
    stop = go_to(angle() + on);
  for (int i = 0; i < 6 && stop.empty() && std::abs(moment() - rig_.touch_moment) > close * rig_.touch_moment;
       ++i)
    stop = go_to(touch_ + (angle() - touch_) * rig_.touch_moment / moment());
  outcome_.zero = stop.empty() ? touch_ + (angle() - touch_) * rig_.touch_moment / moment() : angle();
  return stop;
}

std::string FlexionBench::bend_up()
{
  std::vector<double> targets{outcome_.zero + rig_.window_from, outcome_.zero + rig_.window_to,
                              outcome_.zero + rig_.secant, rig_.greatest_angle};
  std::ranges::sort(targets);
  for (const double target : targets)
    if (target > angle() && target <= rig_.greatest_angle)
      if (const auto stop = go_to(target); !stop.empty())
        return stop;
  n_up_ = recorder_.time().size();
  outcome_.flex_line =
    most_bent((plate_.exist() ? plate_.lower() : lower_).at(bench_.integrator.x), bent_over) - rig_.axis[0];
  return {};
}

std::string FlexionBench::let_down()
{
  const auto &energies = bench_.integrator.energies();
  const bool  loses = std::ranges::any_of(
     energies, [](const auto &entry) { return entry.type == EnergyKind::dissipated && entry.value > 0; });
  if (!loses)
    outcome_.loop_loss = 0;
  while (loses && moment() > 0 && angle() > touch_)
    if (const auto stop = go_to(std::max(touch_, angle() - step_)); !stop.empty())
      return stop;
  if (loses)
  {
    const auto areas = loop_areas(recorder_.curve("angle"), recorder_.curve("moment"));
    outcome_.loop_loss = 1 - areas.returned();
  }
  return {};
}

/// Slope and secant from the way up.
void FlexionBench::read_curve(const std::vector<double> &angles, const std::vector<double> &moments)
{
  std::vector<double> at, value; // rising
  for (std::size_t i = 0; i < angles.size() && (n_up_ == 0 || i < n_up_); ++i)
    if (at.empty() || angles[i] > at.back())
      at.push_back(angles[i]), value.push_back(moments[i]);
  if (at.size() < 4)
    return;
  const geometry::MonotoneCurve curve(at, value);
  const double                  from = outcome_.zero + rig_.window_from, to = outcome_.zero + rig_.window_to,
               secant = outcome_.zero + rig_.secant, reached = at.back() * (1 + 1e-12);
  if (to <= reached)
  {
    constexpr int n = 20;
    double        product = 0, squares = 0;
    for (int i = 0; i <= n; ++i)
    {
      const double off = (to - from) * (double(i) / n - 0.5);
      product += off * curve(0.5 * (from + to) + off), squares += off * off;
    }
    outcome_.stiffness = product / squares;
  }
  if (secant <= reached)
    outcome_.secant = (curve(secant) - curve(outcome_.zero)) / rig_.secant;
}

FlexionOutcome FlexionBench::outcome(const std::string &stop)
{
  read_curve(recorder_.curve("angle"), recorder_.curve("moment"));
  outcome_.record = recorder_.finish();
  outcome_.record.complete = stop.empty();
  if (!stop.empty())
    outcome_.record.stop_reason =
      fmt::format("the arm stopped at {:.1f} degrees: {}. {}", angle() / degree, stop, cure_);
  return std::move(outcome_);
}
} // namespace

FlexionOutcome run_flexion(const LongSection &section, const Case &surroundings, const FlexionRig &rig,
                           const Resolution &resolution)
{
  check_pad_ends(section, rig);
  FlexionBench bench(section, surroundings, rig, resolution);
  std::string  stop = bench.find_zero();
  if (stop.empty())
    stop = bench.bend_up();
  if (stop.empty())
    stop = bench.let_down();
  return bench.outcome(stop);
}
} // namespace solemech::solver
