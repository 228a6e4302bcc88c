// SPDX-License-Identifier: Apache-2.0
#include "solver/slide_process.h"

#include "solver/run.h"
#include "solver/time/no_balance.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace solemech::solver
{
namespace
{
constexpr int         press_steps = 12;
constexpr double      seated_share = 0.02; ///< of the force: from there on it is the force that is led
constexpr double      seated_sink = 0.2;   ///< of the lug height that the court comes down for that at most
constexpr int         slide_steps = 50;    ///< over one lug height
constexpr double      least_step = 2e-5;   ///< of the lug height: below this no balance is sought
constexpr std::size_t most_repeats =
  40; ///< of steps of one slide; one that goes on by ever smaller ones gets nowhere
constexpr double steady_change = 2e-3;  ///< of the grip over `steady_stretch`
constexpr double steady_stretch = 0.25; ///< of the lug height
constexpr double folded_share = 0.3;    ///< of the lug height that the wall lies on the court
/// By which the court is lowered to the first touch [m]: the first that finds a balance.
constexpr double seat_depths[] = {1e-6, 0.5e-6, 2e-6, 0.25e-6, 4e-6};

/// Length of the walls that touches.
double wall_contact(const LugModel &model, const std::vector<SlidingPointState> &points)
{
  double length = 0;
  for (const auto &point : points)
    if (point.pressure > 0 && !model.is_on_face(point.at_rest))
      length += point.length;
  return length;
}

SlideMoment moment_of(const LugModel &model, const TimeIntegrator &integrator, double way)
{
  const auto   state = model.court->state(integrator.x);
  const double width = model.nominal_width();
  SlideMoment  m;
  m.time = integrator.time;
  m.way = way;
  m.pressure = state.normal / width;
  m.shear = state.shear / width;
  m.grip = state.normal > 0 ? state.shear / state.normal : 0.0;
  m.sink = -integrator.x[model.court_unknown()];
  m.contact_share = state.contact_length / width;
  double work = 0, shift = 0, length = 0;
  for (const auto &point : model.court->points(integrator.x))
  {
    work += point.work * point.length;
    if (!model.is_on_face(point.at_rest))
      continue;
    shift += (point.position[0] - point.at_rest[0]) * point.length;
    length += point.length;
  }
  m.deflection = shift / length;
  m.offset = state.normal > 0 ? state.moment / state.normal - m.deflection : 0.0;
  m.friction_work = work / width;
  return m;
}
} // namespace

TimeIntegrator sliding_integrator(LugModel &model, OpenParts *open_parts)
{
  TimeIntegrator integrator(model.equation, 1.0);
  integrator.book_parts(open_parts);
  integrator.start();
  return integrator;
}

namespace
{
/// Force along points in their order: pressure is even over the length of each [N/m over m].
class RunningForce
{
public:
  explicit RunningForce(std::vector<const SlidingPointState *> points) : points_(std::move(points))
  {
    for (const auto *point : points_)
    {
      borders_.push_back(borders_.back() + point->length);
      forces_.push_back(forces_.back() + point->pressure * point->length);
    }
  }

  const std::vector<double> &borders() const { return borders_; }
  double                     length() const { return borders_.back(); }

  double up_to(double s) const
  {
    const auto after = std::upper_bound(borders_.begin(), borders_.end(), s);
    if (after == borders_.begin())
      return 0.0;
    if (after == borders_.end())
      return forces_.back();
    const auto i = static_cast<std::size_t>(after - borders_.begin());
    return forces_[i - 1] + points_[i - 1]->pressure * (s - borders_[i - 1]);
  }

private:
  std::vector<const SlidingPointState *> points_;
  std::vector<double>                    borders_{0.0}, forces_{0.0};
};
} // namespace

FaceLine face_line(const LugModel &model, const std::vector<SlidingPointState> &points)
{
  std::vector<const SlidingPointState *> face;
  for (const auto &point : points)
    if (model.is_on_face(point.at_rest))
      face.push_back(&point);
  std::sort(face.begin(), face.end(),
            [](const auto *a, const auto *b) { return a->at_rest[0] < b->at_rest[0]; });
  const RunningForce force(face);
  const double       window = std::min(edge_window, force.length());
  FaceLine           line;
  for (std::size_t i = 0; i < face.size(); ++i)
  {
    line.place.push_back(face[i]->at_rest[0]);
    line.height.push_back(face[i]->at_rest[1]);
    // At its ends the window stays on the face.
    const double middle = 0.5 * (force.borders()[i] + force.borders()[i + 1]);
    const double from = std::clamp(middle - 0.5 * window, 0.0, force.length() - window);
    line.pressure.push_back((force.up_to(from + window) - force.up_to(from)) / window);
  }
  return line;
}

double windowed_peak(const std::vector<SlidingPointState> &points, double window)
{
  // Along the outline the points come face by face; on the lug itself x is the order that counts.
  std::vector<const SlidingPointState *> touching;
  for (const auto &point : points)
    if (point.pressure > 0)
      touching.push_back(&point);
  std::sort(touching.begin(), touching.end(),
            [](const auto *a, const auto *b) { return a->position[0] < b->position[0]; });
  // The greatest mean has a border between two points at one end.
  const RunningForce force(std::move(touching));
  double             peak = 0;
  for (const double border : force.borders())
    peak = std::max({peak, force.up_to(border + window) - force.up_to(border),
                     force.up_to(border) - force.up_to(border - window)});
  return peak / window;
}

SlideOutcome slide(LugModel &model, TimeIntegrator &integrator, const SlideLoad &load,
                   const std::function<bool(const SlideMoment &)> &on_step)
{
  SlideOutcome outcome;
  const double width = model.nominal_width(), height = model.cell.outline.height;
  const double force = load.pressure * width;
  const auto   keep = [&](double way) {
    outcome.moments.push_back(moment_of(model, integrator, way));
    if (on_step && !on_step(outcome.moments.back()))
      throw RunStopped();
  };

  // The court comes down by about a micrometre first: without touch there is no tangent.
  StepSettings settings{.force_scale = 0.01 * force, .quasi_static = true};
  settings.newton.tolerance *= load.newton_tolerance;
  settings.newton.n_iterations = 20;
  auto      &boundary = model.equation.boundary;
  double     sunk = 0;
  const auto comes_down = [&](double depth) {
    boundary.hold(model.court_unknown(), -depth);
    if (!integrator.step(1e-3 * load.press_time, settings).advanced)
      return false;
    sunk = depth;
    return true;
  };
  if (!std::any_of(std::begin(seat_depths), std::end(seat_depths), comes_down))
    throw NoBalance("the court cannot be brought into contact with the lug");
  // A worn face may touch at a corner only: a force would find no balance there before more of it is down.
  for (double further = sunk; sunk < seated_sink * height && further > least_step * height;)
  {
    if (model.court->state(integrator.x).normal > seated_share * force)
      break;
    further *= comes_down(sunk + further) ? 1.5 : 0.5;
  }
  model.load->force = model.court->state(integrator.x).normal;
  boundary.release(model.court_unknown());
  settings.extrapolate = 1;
  double pressed = 0, share = load.step_share / press_steps;
  settings.force_scale = force;
  while (pressed < 1 - 1e-12)
  {
    const double next = std::min(1.0, pressed + share);
    model.load->force = next * force;
    if (integrator.step((next - pressed) * load.press_time, settings).advanced)
    {
      pressed = next;
      share = std::min(1.5 * share, load.step_share / press_steps);
      keep(0);
    }
    else if ((share *= 0.5) < 1e-4)
    {
      outcome.end = SlideEnd::no_balance;
      outcome.reason =
        fmt::format("the lug collapses under the pressure: it gives way at {:.0f} kPa of {:.0f} kPa",
                    1e-3 * pressed * load.pressure, 1e-3 * load.pressure);
      outcome.surface = model.court->points(integrator.x);
      return outcome;
    }
  }

  const double      regular = load.step_share * height / slide_steps;
  const std::size_t repeated_before = integrator.n_repeated;
  double            way = 0, step = 0.5 * model.slip_length, steady_since = -1;
  while (way < load.distance * (1 - 1e-12))
  {
    const double next = std::min(load.distance, way + step);
    model.court->drive_to(next);
    if (!integrator.step((next - way) / load.speed, settings).advanced)
    {
      if ((step *= 0.5) < std::min(least_step * height, 0.02 * model.slip_length) ||
          integrator.n_repeated - repeated_before > most_repeats)
      {
        model.court->drive_to(way);
        outcome.wall_contact = wall_contact(model, model.court->points(integrator.x));
        outcome.end =
          outcome.wall_contact > folded_share * height ? SlideEnd::folded_over : SlideEnd::no_balance;
        outcome.reason = outcome.end == SlideEnd::folded_over
                           ? fmt::format("the lug folds over: {:.1f} mm of its leading wall lie on the court",
                                         1e3 * outcome.wall_contact)
                           : fmt::format("no steady slide: no balance was found after {:.2f} mm", 1e3 * way);
        break;
      }
      continue;
    }
    way = next;
    step = std::min(1.5 * step, regular);
    keep(way);

    const auto &now = outcome.moments.back();
    const auto  before =
      std::find_if(outcome.moments.rbegin(), outcome.moments.rend(),
                   [&](const SlideMoment &m) { return m.way <= now.way - steady_stretch * height; });
    const bool steady =
      before != outcome.moments.rend() && before->way > 0 &&
      std::abs(now.grip - before->grip) < steady_change * std::max(std::abs(now.grip), 0.01) &&
      std::abs(now.contact_share - before->contact_share) < steady_change;
    if (steady && steady_since < 0)
    {
      steady_since = way;
      model.court->clear_wear();
    }
    else if (!steady && steady_since >= 0)
      steady_since = -1;
    outcome.end = steady ? SlideEnd::steady : SlideEnd::way_is_over;
    if (steady && !load.to_the_end && way - steady_since > steady_stretch * height)
      break;
  }
  if (outcome.end == SlideEnd::way_is_over)
    outcome.reason = fmt::format("no steady slide: the grip still changes after {:.2f} mm", 1e3 * way);
  outcome.surface = model.court->points(integrator.x);
  outcome.wall_contact = wall_contact(model, outcome.surface);
  outcome.steady_way = steady_since >= 0 ? way - steady_since : 0.0;
  double sum = 0, n = 0;
  for (const auto &m : outcome.moments)
    if (steady_since >= 0 && m.way > steady_since)
      sum += m.grip, n += 1;
  outcome.grip = n > 0 ? sum / n : (outcome.moments.empty() ? 0.0 : outcome.moments.back().grip);
  return outcome;
}
} // namespace solemech::solver
