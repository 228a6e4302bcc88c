// SPDX-License-Identifier: Apache-2.0
#include "tools/language/records/impact_record.h"

#include "solver/results/metrics.h"
#include "tools/language/records/saturation.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <span>

namespace solemech::records
{
namespace
{
constexpr int    fewest_before = 10, fewest_in_contact = 20;
constexpr double peak_window = 0.15;                          // of the contact time, each way
constexpr double low_threshold = 0.02, high_threshold = 0.06; // of the peak
constexpr double other_thresholds = 2; // times these: how far the ends move then is their doubt

/// Mean and standard deviation.
struct Level
{
  double      mean = 0, deviation = 0;
  std::size_t n = 0;
};

Level level_of(std::span<const double> values)
{
  Level level;
  level.n = values.size();
  for (const double v : values)
    level.mean += v / double(values.size());
  for (const double v : values)
    level.deviation += (v - level.mean) * (v - level.mean) / double(values.size());
  level.deviation = std::sqrt(level.deviation);
  return level;
}

/// Where the pulse stands in the record, by its raw signal: samples before it, and the first and last above 6
/// % of the top.
struct Place
{
  std::size_t first = 0, last = 0, top = 0;
  Level       before;
};

std::optional<Place> find_pulse(std::span<const double> signal)
{
  Place place;
  place.top = std::size_t(std::max_element(signal.begin(), signal.end()) - signal.begin());
  // The level before, from the first half of what lies before the flank: found in two passes.
  double level = signal[0];
  for (int pass = 0; pass < 2; ++pass)
  {
    const double limit = level + high_threshold * (signal[place.top] - level);
    place.first = place.top;
    while (place.first > 0 && signal[place.first - 1] > limit)
      --place.first;
    place.last = place.top;
    while (place.last + 1 < signal.size() && signal[place.last + 1] > limit)
      ++place.last;
    // Half of the way back to the start: the last samples may already belong to the soft begin of the pulse.
    const auto quiet = place.first - std::min(place.first, (place.last - place.first) / 4);
    if (quiet < std::size_t(fewest_before))
      return std::nullopt;
    const auto longest = 4 * (place.last - place.first) + 50;
    const auto begin = quiet > longest ? quiet - longest : 0;
    place.before = level_of(signal.subspan(begin, quiet - begin));
    level = place.before.mean;
  }
  return place;
}

/// Time at which the line through two crossings, of `low` and of `high`, meets zero. `step` +1 walks
/// forwards.
double meets_zero(std::span<const double> t, std::span<const double> f, std::size_t from, int step,
                  double low, double high)
{
  const auto crossing = [&](double level) {
    std::size_t i = from;
    while (i > 0 && i + 1 < f.size() && f[i] > level)
      i = std::size_t(std::ptrdiff_t(i) + step);
    const std::size_t inner = std::size_t(std::ptrdiff_t(i) - step);
    const double share = f[inner] > f[i] ? std::clamp((level - f[i]) / (f[inner] - f[i]), 0.0, 1.0) : 0.0;
    return t[i] + share * (t[inner] - t[i]);
  };
  const double t_low = crossing(low), t_high = crossing(high);
  return t_low - (t_high - t_low) * low / (high - low);
}

/// Everything read from one pulse with one set of inputs.
struct Values
{
  double              peak = 0, contact_time = 0, compression = 0, energy_return = 0;
  std::vector<double> time, force, travel;
};

Values values_of(std::span<const double> t, std::span<const double> force, std::size_t top, double mass,
                 double speed, double gravity, double thresholds = 1)
{
  Values       values;
  const double peak = force[top];
  const double low = thresholds * low_threshold * peak, high = thresholds * high_threshold * peak;
  const double begin = meets_zero(t, force, top, -1, low, high),
               end = meets_zero(t, force, top, +1, low, high);
  values.contact_time = end - begin;
  values.time.push_back(0);
  values.force.push_back(0);
  for (std::size_t i = 0; i < t.size(); ++i)
    if (t[i] > begin && t[i] < end)
    {
      values.time.push_back(t[i] - begin);
      values.force.push_back(force[i]);
    }
  values.time.push_back(end - begin);
  values.force.push_back(0);
  values.peak = solver::smoothed_peak(values.time, values.force, peak_window * values.contact_time);
  if (mass <= 0 || speed <= 0)
    return values;
  double v = speed, x = 0;
  values.travel.push_back(0);
  for (std::size_t i = 1; i < values.time.size(); ++i)
  {
    const double dt = values.time[i] - values.time[i - 1];
    const double a0 = gravity - values.force[i - 1] / mass, a1 = gravity - values.force[i] / mass;
    // Force between samples is a straight line: its integrals are exact.
    x += v * dt + dt * dt * (2 * a0 + a1) / 6;
    v += 0.5 * dt * (a0 + a1);
    values.travel.push_back(x);
  }
  values.compression = *std::max_element(values.travel.begin(), values.travel.end());
  values.energy_return = v < 0 ? v * v / (speed * speed) : 0;
  return values;
}

/// The sensor's zero in words, and a problem when the person states another.
void judge_zero(double level, const ImpactSetup &setup, ImpactReadings &readings, const std::string &file,
                materials::Problems &problems)
{
  const double in_g = level / setup.gravity;
  const bool   free_fall = std::abs(in_g) < 0.3, at_rest = std::abs(in_g + 1) < 0.3;
  if (!free_fall && !at_rest)
  {
    readings.notes.push_back(fmt::format("before first touch the sensor shows {:.2f} g, neither 0 (zeroed in "
                                         "free fall) nor -1 (zeroed at rest): treated as a shifted zero",
                                         in_g));
    return;
  }
  readings.notes.push_back(
    free_fall ? fmt::format("before first touch the sensor shows {:.2f} g: zeroed in free fall", in_g)
              : fmt::format("before first touch the sensor shows {:.2f} g: zeroed at rest, 1 g is "
                            "added",
                            in_g));
  if ((setup.zero == Zero::free_fall && !free_fall) || (setup.zero == Zero::at_rest && !at_rest))
    problems.add({file, 0, 0, "zero",
                  fmt::format("the sheet says zeroed {}, but before first touch the record shows {:.2f} g",
                              setup.zero == Zero::free_fall ? "in free fall" : "at rest", in_g),
                  "Correct the sheet, or leave the zero out: the level before first touch is then used"});
}
} // namespace

ImpactReadings read_impact(const Record &record, const ImpactSetup &setup, const std::string &file,
                           materials::Problems &problems)
{
  ImpactReadings readings;
  readings.notes = record.notes;
  const bool is_force = !record.force.empty();
  const auto problem = [&](const std::string &reason, const std::string &cure, int line = 0) {
    problems.add({file, line, line > 0 ? 1 : 0, "", reason, cure});
    return readings;
  };
  if (record.time.empty() || (!is_force && record.acceleration.empty()))
    return problem("an impact record needs a time column and one of force or acceleration",
                   "Name the columns in the header: time [ms], force [N]");
  if (!is_force && !(setup.mass.value > 0))
    return problem("the mass of the drop weight is missing", "It turns an acceleration into a force");
  if (record.time.size() < std::size_t(fewest_before + fewest_in_contact))
    return problem("too few rows for a pulse and a quiet stretch before it", "Export the whole recording");

  std::vector<double> signal = is_force ? record.force : record.acceleration;
  const double        sum = std::accumulate(signal.begin(), signal.end(), 0.0);
  const auto [least, greatest] = std::minmax_element(signal.begin(), signal.end());
  // The pulse is what stands furthest from the usual level.
  const double usual = sum / double(signal.size());
  if (usual - *least > *greatest - usual)
  {
    for (auto &value : signal)
      value = -value;
    readings.notes.emplace_back("the axis of the sensor points the other way: signs were reversed");
  }
  const auto place = find_pulse(signal);
  if (!place)
    return problem(
      fmt::format("the record starts inside the pulse: there are fewer than {} quiet rows before it",
                  fewest_before),
      "Record some milliseconds before first touch; they show the zero");
  const double height = signal[place->top] - place->before.mean;
  if (height < 10 * place->before.deviation || height <= 0)
    return problem("no pulse stands out from the noise", "Check the range of the sensor and the columns");
  if (place->last + 2 >= signal.size())
    return problem("the record ends inside the pulse", "Record until the weight has left");
  if (place->last - place->first < std::size_t(fewest_in_contact))
    return problem(fmt::format("there are only {} rows during contact", place->last - place->first + 1),
                   fmt::format("Sample at least {} times in a contact of {:.1f} ms", 2 * fewest_in_contact,
                               1e3 * (record.time[place->last] - record.time[place->first])),
                   record.line[place->first]);
  if (gap_between(record, place->first, place->last))
    return problem("samples are missing during contact", "The readings would be a guess; repeat the drop",
                   record.line[place->first]);
  if (!is_force)
    judge_zero(place->before.mean, setup, readings, file, problems);
  else if (std::abs(place->before.mean) > 0.005 * height)
    readings.notes.push_back(
      fmt::format("before first touch the sensor shows {:.3g} N: subtracted", place->before.mean));

  // The stretch of the contact with its tails.
  const auto margin = (place->last - place->first) / 2 + 5;
  const auto begin = place->first > margin ? place->first - margin : 0;
  const auto end = std::min(signal.size(), place->last + margin + 1);
  const auto t = std::span(record.time).subspan(begin, end - begin);
  const auto raw = std::span(signal).subspan(begin, end - begin);
  const auto top = place->top - begin;
  const auto saturated = saturated_top(std::span(signal).subspan(0, end));
  const auto with = [&](double mass, double speed, double gain, double shift, double thresholds = 1) {
    std::vector<double> force(raw.begin(), raw.end());
    for (auto &value : force)
      value = (value - place->before.mean - shift) * gain * (is_force ? 1 : mass);
    return values_of(t, force, top, mass, speed, setup.gravity, thresholds);
  };

  const double mass = setup.mass.value, speed = setup.speed.value;
  const Values middle = with(mass, speed, 1, 0);
  // The zero may drift between its stretch and the pulse by about what it scatters.
  std::vector<Values> moved{with(mass, speed, 1 + setup.gain_doubt, 0),
                            with(mass, speed, 1, place->before.deviation),
                            with(mass, speed, 1, 0, other_thresholds)};
  if (setup.mass.doubt > 0)
    moved.push_back(with(mass + setup.mass.doubt, speed, 1, 0));
  if (setup.speed.doubt > 0)
    moved.push_back(with(mass, speed + setup.speed.doubt, 1, 0));
  const auto reading = [&](double Values::*member, double own_doubt) {
    double sum_squares = own_doubt * own_doubt;
    for (const auto &other : moved)
      sum_squares += (other.*member - middle.*member) * (other.*member - middle.*member);
    return Reading{true, false, middle.*member, std::sqrt(sum_squares), {}};
  };
  readings.time = middle.time;
  readings.force = middle.force;
  readings.travel = middle.travel;
  readings.contact_time =
    reading(&Values::contact_time, 0.4 * record.interval); // 2 ends, evenly spread: / sqrt 6
  readings.peak_force = reading(&Values::peak, place->before.deviation * (is_force ? 1 : mass));
  if (mass > 0)
  {
    readings.deceleration = readings.peak_force;
    readings.deceleration.value = readings.peak_force.value / (mass * setup.gravity) - 1;
    // Of an acceleration the mass drops out again.
    const double share = readings.peak_force.doubt / readings.peak_force.value,
                 of_mass = is_force ? setup.mass.doubt / mass : -setup.mass.doubt / mass;
    const double squared = share * share + (is_force ? 1 : -1) * of_mass * of_mass;
    readings.deceleration.doubt = (readings.deceleration.value + 1) * std::sqrt(std::max(0.0, squared));
  }
  else
    readings.deceleration.why = "needs the mass of the drop weight";
  if (mass > 0 && speed > 0)
  {
    readings.compression = reading(&Values::compression, 0);
    readings.energy_return = reading(&Values::energy_return, 0);
    if (readings.energy_return.value <= 0 || readings.energy_return.value > 1)
      readings.notes.push_back(fmt::format("the record returns {:.0f} % of the energy: mass, speed and the "
                                           "gain of the sensor do not fit together",
                                           100 * readings.energy_return.value));
  }
  else
    readings.compression.why = readings.energy_return.why =
      "needs the mass of the drop weight and its speed at first touch";
  if (saturated)
  {
    const auto n = saturated->second - saturated->first + 1;
    readings.notes.push_back(fmt::format("the sensor clipped for {} rows (from line {}): the peak is at "
                                         "least {:.4g} N, and nothing is integrated",
                                         n, record.line[saturated->first], readings.peak_force.value));
    readings.peak_force.at_least = readings.deceleration.at_least = true;
    readings.compression = readings.energy_return = Reading{};
    readings.compression.why = readings.energy_return.why = "the sensor clipped";
    readings.travel.clear();
  }
  return readings;
}
} // namespace solemech::records
