// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/tread.h"

#include "solver/in_parallel.h"
#include "solver/results/catalogue.h"
#include "solver/sole_on_court.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <mutex>
#include <numbers>

namespace solemech::solver
{
namespace
{
constexpr double pi = std::numbers::pi;
constexpr double same_angle = 1e-6, same_pressure = 1e-9; ///< [rad], relative
constexpr double most_tilt = 30 * pi / 180;               ///< of the foot, either way
constexpr double ahead = 0, back = pi, outwards = pi / 2; ///< headings of the movements

/// One slide that the map needs.
struct Wanted
{
  std::size_t zone;
  double      angle, pressure;
  double      grip = 0;
  std::string trouble;
};

class Map
{
public:
  Map(const Case &input, const SlideRig &rig, const Resolution &resolution, const RunOptions &options)
    : input_(input), rig_(rig), tread_(*rig.tread), resolution_(resolution), options_(options)
  {
  }

  Result run()
  {
    // First all slides are noted, then they run, then the same questions are asked again.
    even_ = pressures(Movement::even), push_ = pressures(Movement::push_off);
    brake_ = pressures(Movement::braking), cut_ = pressures(Movement::side_cut);
    ask();
    slide_all();
    answers_ = true;
    ask();
    return std::move(result_);
  }

private:
  /// Over the faces of the bars of each zone [Pa].
  std::vector<double> pressures(Movement movement) const
  {
    auto         values = zone_forces(tread_, movement);
    const double along = rig_.pad_length > 0 ? rig_.pad_length / (rig_.pad_length + rig_.pad_gap) : 1;
    const double bars = along * rig_.lug.width / rig_.lug.spacing;
    for (std::size_t z = 0; z < values.size(); ++z)
      values[z] /= tread_.zones[z].length * tread_.zones[z].width * bars;
    return values;
  }

  /// Whether two zones have bars of one rubber.
  bool alike(std::size_t a, std::size_t b) const
  {
    const auto name = [&](std::size_t z) {
      return tread_.zones[z].rubber ? tread_.zones[z].rubber->name : input_.layers[1].material.name;
    };
    return name(a) == name(b);
  }

  double slid(std::size_t zone, double angle, double pressure)
  {
    for (const auto &known : wanted_)
      if (alike(known.zone, zone) && std::abs(known.angle - angle) < same_angle &&
          std::abs(known.pressure - pressure) < same_pressure * pressure)
        return known.grip;
    wanted_.push_back({zone, angle, pressure, 0, {}});
    return 0;
  }

  double zone_grip(std::size_t z, double heading, double pressure)
  {
    const auto  &zone = tread_.zones[z];
    const double one = slid(z, angle_to_bar(heading, zone.bar_heading + zone.arm_angle), pressure);
    if (zone.arm_angle == 0)
      return one;
    return 0.5 * (one + slid(z, angle_to_bar(heading, zone.bar_heading - zone.arm_angle), pressure));
  }

  double sole_grip(double heading, Movement movement, const std::vector<double> &pressure)
  {
    const auto force = zone_forces(tread_, movement);
    double     sum = 0;
    for (std::size_t z = 0; z < force.size(); ++z)
      if (force[z] > 0)
        sum += force[z] * zone_grip(z, heading, pressure[z]);
    return sum / tread_.force;
  }

  double heading(int i) const { return 2 * pi * i / tread_.n_headings; }

  void ask()
  {
    std::vector<double>              grip;
    std::vector<std::vector<double>> zones(tread_.zones.size());
    for (int i = 0; i < tread_.n_headings; ++i)
    {
      grip.push_back(sole_grip(heading(i), Movement::even, even_));
      for (std::size_t z = 0; z < zones.size(); ++z)
        zones[z].push_back(zone_grip(z, heading(i), even_[z]));
    }
    const double push = sole_grip(back, Movement::push_off, push_);
    const double brake = sole_grip(ahead, Movement::braking, brake_);
    const double cut = sole_grip(outwards, Movement::side_cut, cut_);
    if (!answers_)
      return;
    readings(grip, push, brake, cut, zones);
    curves(grip, zones);
    warnings();
  }

  void slide_all()
  {
    std::size_t done = 0;
    std::mutex  guard;
    in_parallel(wanted_.size(), [&](std::size_t i) {
      slide_one(wanted_[i]);
      const std::lock_guard lock(guard);
      ++done;
      if (options_.progress &&
          !options_.progress(static_cast<double>(done) / static_cast<double>(wanted_.size()),
                             "slides in all directions"))
        throw RunStopped();
    });
  }

  void slide_one(Wanted &wanted)
  {
    Case own = input_;
    if (const auto &rubber = tread_.zones[wanted.zone].rubber)
      own.layers[1].material = *rubber;
    SlideRig rig = rig_;
    rig.tread.reset();
    rig.heading = wanted.angle, rig.pressure = wanted.pressure;
    RunOptions quiet;
    quiet.pictures = false;
    const auto study = study_slide(own, rig, resolution_, quiet);
    wanted.grip = study.result.find(catalogue.effective_grip)->value;
    if (study.outcome.end != SlideEnd::steady)
      wanted.trouble = study.outcome.reason;
    const std::lock_guard lock(facts_guard_);
    auto                 &facts = result_.facts;
    facts.unknowns = std::max(facts.unknowns, study.result.facts.unknowns);
    facts.cells = std::max(facts.cells, study.result.facts.cells);
    facts.steps += study.result.facts.steps, facts.iterations += study.result.facts.iterations;
  }

  /// Of a zone at any heading, between those of the map [-].
  double between(const std::vector<double> &grip, double heading) const
  {
    const double place =
      std::fmod(heading / (2 * pi) * tread_.n_headings + 2 * tread_.n_headings, tread_.n_headings);
    const auto   i = static_cast<std::size_t>(place) % grip.size();
    const double share = place - std::floor(place);
    return (1 - share) * grip[i] + share * grip[(i + 1) % grip.size()];
  }

  void readings(const std::vector<double> &grip, double push, double brake, double cut,
                const std::vector<std::vector<double>> &zones)
  {
    // A movement loads the sole unevenly, and the most loaded zone may grip least: the ends hold the
    // movements too.
    std::vector<std::pair<double, double>> all{
      {push, back}, {brake, ahead}, {cut, outwards}}; // grip, heading
    for (std::size_t i = 0; i < grip.size(); ++i)
      all.emplace_back(grip[i], heading(static_cast<int>(i)));
    const auto [low, high] = std::minmax_element(all.begin(), all.end());
    double mean = 0;
    for (const double each : grip)
      mean += each / static_cast<double>(grip.size());
    add_reading(result_, catalogue.effective_grip, mean,
                "friction of the evenly loaded sole divided by the force on it, mean of all directions");
    add_reading(result_, catalogue.grip_push_off, push, "grip against sliding back, loaded as in a push-off");
    add_reading(result_, catalogue.grip_braking, brake, "grip against sliding ahead, loaded as in braking");
    add_reading(result_, catalogue.grip_side_cut, cut,
                "grip against sliding outwards, loaded as in a side cut");
    add_reading(result_, catalogue.lowest_grip, low->first,
                "lowest grip in any direction evenly loaded, and in the three movements");
    add_reading(result_, catalogue.highest_grip, high->first, "highest grip of the same");
    add_reading(result_, catalogue.lowest_grip_heading, low->second,
                "direction of the lowest grip, from straight ahead to the outer side");
    const auto force = zone_forces(tread_, Movement::push_off);
    add_reading(result_, catalogue.pivot_moment,
                pivot_moment(tread_, force, tread_.ball, 0,
                             [&](std::size_t z, double at) { return between(zones[z], at); }),
                "moment of friction against turning on the ball, loaded as in a push-off");
    add_reading(result_, catalogue.highest_zone_pressure,
                std::max({*std::max_element(push_.begin(), push_.end()),
                          *std::max_element(brake_.begin(), brake_.end()),
                          *std::max_element(cut_.begin(), cut_.end())}),
                "highest pressure on the faces of the bars, of all zones and movements");
    add_reading(
      result_, catalogue.rolled_contact_share, tilted_sole(tread_, 15 * pi / 180, 0).contact_share,
      "area in contact when the foot is rolled 15 degrees outward, divided by the area of all zones");
  }

  void curves(const std::vector<double> &grip, const std::vector<std::vector<double>> &zones)
  {
    const int  n = tread_.n_headings;
    const auto add_curve = [&](const std::string &name, const char *unit, const std::string &meaning,
                               auto value) {
      Curve curve{name, unit, meaning, {}};
      for (int i = 0; i < n; ++i)
        curve.values.push_back(value(i));
      result_.curves.push_back(std::move(curve));
    };
    for (int i = 0; i < n; ++i)
      result_.time.push_back((i + 1) * rig_.distance / rig_.speed);
    result_.time_of_peak = result_.time.back();
    add_curve("heading", "rad", "of the slide, from straight ahead to the outer side",
              [&](int i) { return heading(i); });
    add_curve("grip", "1", "of the evenly loaded sole",
              [&](int i) { return grip[static_cast<std::size_t>(i)]; });
    for (std::size_t z = 0; z < zones.size(); ++z)
      add_curve("grip_of_" + tread_.zones[z].name, "1", "of the zone " + tread_.zones[z].name,
                [&](int i) { return zones[z][static_cast<std::size_t>(i)]; });
    const auto tilt = [n](int i) { return most_tilt * (2.0 * i / (n - 1) - 1); };
    add_curve("tilt", "rad", "of the foot", tilt);
    add_curve("rolled_share", "1", "touching area of the foot rolled by `tilt` onto its outer side",
              [&](int i) { return tilted_sole(tread_, tilt(i), 0).contact_share; });
    add_curve("pitched_share", "1", "touching area of the foot pitched by `tilt` onto its toe",
              [&](int i) { return tilted_sole(tread_, 0, tilt(i)).contact_share; });
  }

  void warnings()
  {
    std::size_t troubled = 0;
    for (const auto &wanted : wanted_)
      troubled += wanted.trouble.empty() ? 0 : 1;
    if (troubled > 0)
    {
      const auto first =
        std::find_if(wanted_.begin(), wanted_.end(), [](const auto &w) { return !w.trouble.empty(); });
      result_.warnings.push_back(
        {catalogue.effective_grip,
         fmt::format("{} of {} slides are not steady; zone {} at {:.0f}° to its bars: {}", troubled,
                     wanted_.size(), tread_.zones[first->zone].name, first->angle * 180 / pi,
                     first->trouble)});
    }
    const double moment = result_.find(catalogue.pivot_moment)->value;
    if (moment < tread_.lowest_moment)
      result_.warnings.push_back(
        {catalogue.pivot_moment, "little resists a foot that turns on its ball: it may spin away"});
    if (moment > tread_.highest_moment)
      result_.warnings.push_back(
        {catalogue.pivot_moment, "much resists a foot that turns on its ball: knee and ankle take the load"});
  }

  const Case         &input_;
  const SlideRig     &rig_;
  const Tread        &tread_;
  const Resolution   &resolution_;
  const RunOptions   &options_;
  std::vector<double> even_, push_, brake_, cut_; ///< pressure of each zone [Pa]
  std::vector<Wanted> wanted_;
  bool                answers_ = false;
  std::mutex          facts_guard_;
  Result              result_;
};
} // namespace

double angle_to_bar(double heading, double across_bar)
{
  const double angle = std::abs(std::remainder(heading - across_bar, pi));
  return std::min(angle, pi / 2);
}

Result run_tread(const Case &input, const SlideRig &rig, const Resolution &resolution,
                 const RunOptions &options)
{
  return Map(input, rig, resolution, options).run();
}
} // namespace solemech::solver
