// SPDX-License-Identifier: Apache-2.0
// Pulses with closed forms: half sine F = P sin(pi t / T) (impulse 2 P T / pi), and the mass on a spring
// under gravity of tests/support/closed_forms.h. Sampled, offset, turned, quantised, cut off and disturbed
// like records of a bench.
#include "tests/support/catch.h"
#include "tests/support/closed_forms.h"
#include "tools/language/records/impact_record.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

using namespace solemech;
using namespace solemech::records;

namespace
{
constexpr double g = 9.80665, mass = 1.2, speed = 2.8, peak = 1200, duration = 9e-3, interval = 5e-5;

double half_sine(double t)
{
  return t > 0 && t < duration ? peak * std::sin(std::numbers::pi * t / duration) : 0;
}

/// 20 ms before first touch, 20 ms after; `shape` gives what the sensor shows for a force [N].
template <class Shape>
std::vector<double> sampled(const Shape &shape, Record &record, double (*force)(double) = half_sine)
{
  std::vector<double> values;
  for (int i = 0; i < 1000; ++i)
  {
    record.time.push_back(i * interval);
    record.line.push_back(i + 2);
    values.push_back(shape(force(i * interval - 20.013e-3)));
  }
  record.interval = interval;
  return values;
}

Record force_record()
{
  Record record;
  record.force = sampled([](double f) { return f; }, record);
  return record;
}

ImpactSetup bench()
{
  ImpactSetup setup;
  setup.mass = {mass, 0};
  setup.speed = {speed, 0};
  return setup;
}

ImpactReadings read(const Record &record, const ImpactSetup &setup = bench())
{
  materials::Problems problems;
  const auto          readings = read_impact(record, setup, "drop.csv", problems);
  CHECK(problems.text() == "");
  return readings;
}

std::string refused(const Record &record, const ImpactSetup &setup = bench())
{
  materials::Problems problems;
  read_impact(record, setup, "drop.csv", problems);
  return problems.text();
}

bool notes(const ImpactReadings &readings, const std::string &words)
{
  return std::any_of(readings.notes.begin(), readings.notes.end(),
                     [&](const auto &note) { return note.find(words) != note.npos; });
}
} // namespace

TEST_CASE("a half sine: peak, contact time, compression and return in closed form")
{
  const auto readings = read(force_record());
  // x' = v + g t - P T / (pi m) (1 - cos), zero where the weight turns; found by halving.
  const double a = peak * duration / (std::numbers::pi * mass), w = std::numbers::pi / duration;
  const auto   velocity = [&](double t) { return speed + g * t - a * (1 - std::cos(w * t)); };
  double       low = 0, high = duration;
  for (int i = 0; i < 100; ++i)
    (velocity(0.5 * (low + high)) > 0 ? low : high) = 0.5 * (low + high);
  const double turn = speed * low + 0.5 * g * low * low - a * (low - std::sin(w * low) / w);
  const double leaving = velocity(duration);

  // 180 samples a contact: straight lines between them and to zero are good to about (w dt)^2.
  CHECK(readings.peak_force.value == Approx(peak).epsilon(0.001));
  CHECK(readings.deceleration.value == Approx(peak / (mass * g) - 1).epsilon(0.001));
  CHECK(readings.contact_time.value == Approx(duration).epsilon(0.001));
  CHECK(readings.compression.value == Approx(turn).epsilon(0.001));
  CHECK(readings.energy_return.value == Approx(leaving * leaving / (speed * speed)).epsilon(0.005));
  // Gain of 2 % alone: of the peak 2 %; the return moves with twice the impulse over the leaving speed.
  CHECK(readings.peak_force.doubt == Approx(0.02 * peak).epsilon(0.02));
  const double more = (velocity(duration) - 0.02 * 2 * a) / speed;
  CHECK(readings.energy_return.doubt ==
        Approx(more * more - leaving * leaving / (speed * speed)).epsilon(0.05));
}

TEST_CASE("mass on a spring under gravity: the same readings as its closed form, and all energy back")
{
  constexpr double    k = 1.5e5;
  static const double omega = std::sqrt(k / mass), sink = mass * g / k;
  Record              record;
  record.force = sampled([](double f) { return f; }, record,
                         [](double t) {
                           return t > 0 ? std::max(0.0, k * (sink * (1 - std::cos(omega * t)) +
                                                             speed / omega * std::sin(omega * t)))
                                        : 0.0;
                         });
  const auto exact = tests::spring_impact(mass, k, speed, g);
  // The formula above does not end at the first zero: cut there.
  for (std::size_t i = 0; i < record.time.size(); ++i)
    if (record.time[i] - 20.013e-3 > exact.contact_time)
      record.force[i] = 0;
  const auto readings = read(record);
  CHECK(readings.peak_force.value == Approx(exact.peak_force).epsilon(0.001));
  CHECK(readings.compression.value == Approx(exact.peak_compression).epsilon(0.001));
  CHECK(readings.contact_time.value == Approx(exact.contact_time).epsilon(0.001));
  CHECK(readings.energy_return.value == Approx(1).epsilon(0.005));
  CHECK(readings.travel.size() == readings.time.size());
}

TEST_CASE("a sensor on the weight reads the same whichever way it was zeroed or turned")
{
  const auto expected = read(force_record());
  for (const double zero : {0.0, -g, 3.7})
    for (const double sign : {1.0, -1.0})
    {
      Record record;
      record.acceleration = sampled([&](double f) { return sign * (f / mass + zero); }, record);
      const auto readings = read(record);
      CHECK(readings.peak_force.value == Approx(expected.peak_force.value).epsilon(1e-6));
      CHECK(readings.energy_return.value == Approx(expected.energy_return.value).epsilon(1e-6));
      CHECK(notes(readings, zero == 0  ? "zeroed in free fall"
                            : zero < 0 ? "zeroed at rest, 1 g is added"
                                       : "shifted zero"));
      CHECK(notes(readings, "signs were reversed") == (sign < 0));
    }
  Record record;
  record.acceleration = sampled([](double f) { return f / mass - g; }, record);
  auto setup = bench();
  setup.zero = Zero::free_fall;
  CHECK(refused(record, setup).find("zeroed in free fall, but before first touch the record shows -1.00 g") !=
        std::string::npos);
  setup.zero = Zero::at_rest;
  CHECK(refused(record, setup).empty());
}

TEST_CASE("a saturated sensor is found: the peak is a lower bound and nothing is integrated")
{
  Record record;
  record.force = sampled([](double f) { return std::min(f, 900.0); }, record);
  const auto readings = read(record);
  CHECK(readings.peak_force.at_least);
  CHECK(readings.deceleration.at_least);
  CHECK(readings.peak_force.value >= 899);
  CHECK_FALSE(readings.compression.known);
  CHECK_FALSE(readings.energy_return.known);
  CHECK(readings.compression.why == "the sensor clipped");
  CHECK(readings.contact_time.value == Approx(duration).epsilon(0.002)); // the flanks are whole
  CHECK(notes(readings, "clipped"));

  // A coarse converter flattens the top as well, without being saturated: 8 bit over 2 kN.
  Record       coarse;
  const double step = 2000 / 256.;
  coarse.force = sampled([&](double f) { return step * std::round(f / step); }, coarse);
  const auto whole = read(coarse);
  CHECK_FALSE(whole.peak_force.at_least);
  CHECK(whole.peak_force.value == Approx(peak).margin(step));
}

TEST_CASE("stated doubts hold the scatter of noisy records")
{
  std::mt19937_64                  random(7);
  std::normal_distribution<double> normal;
  const auto                       exact = read(force_record());
  int                              n_in = 0, n = 0;
  for (int trial = 0; trial < 40; ++trial)
  {
    // Gain, mass and speed drawn from their doubts, white noise of 0.5 % of the peak.
    auto setup = bench();
    setup.mass = {mass * (1 + 0.005 * normal(random)), 0.005 * mass};
    setup.speed = {speed * (1 + 0.01 * normal(random)), 0.01 * speed};
    const double gain = 1 + 0.02 * normal(random);
    Record       record;
    record.force = sampled([&](double f) { return gain * f + 0.005 * peak * normal(random); }, record);
    const auto readings = read(record, setup);
    for (const auto member :
         {&ImpactReadings::peak_force, &ImpactReadings::compression, &ImpactReadings::energy_return})
    {
      ++n;
      n_in += std::abs((readings.*member).value - (exact.*member).value) <= 1.645 * (readings.*member).doubt;
    }
    CHECK(readings.contact_time.value == Approx(duration).epsilon(0.03));
  }
  CHECK(n_in >= 0.8 * n);
  CHECK(n_in < n);
}

TEST_CASE("records that cannot be read say why and where")
{
  auto gap = force_record();
  for (auto *column : {&gap.time, &gap.force})
    column->erase(column->begin() + 450, column->begin() + 470);
  gap.line.erase(gap.line.begin() + 450, gap.line.begin() + 470);
  CHECK(refused(gap).find("samples are missing during contact") != std::string::npos);

  auto late = force_record();
  for (auto *column : {&late.time, &late.force})
    column->erase(column->begin(), column->begin() + 405);
  late.line.resize(late.time.size());
  CHECK(refused(late).find("starts inside the pulse") != std::string::npos);

  auto early = force_record();
  early.time.resize(500), early.force.resize(500), early.line.resize(500);
  CHECK(refused(early).find("ends inside the pulse") != std::string::npos);

  Record flat;
  flat.force = sampled([](double) { return 3.0; }, flat);
  CHECK_FALSE(refused(flat).empty());

  auto nothing = bench();
  nothing.mass = {};
  Record acceleration;
  acceleration.acceleration = sampled([](double f) { return f / mass; }, acceleration);
  CHECK(refused(acceleration, nothing).find("mass of the drop weight is missing") != std::string::npos);
  // Without the speed, what needs none is still read.
  auto no_speed = bench();
  no_speed.speed = {};
  const auto readings = read(force_record(), no_speed);
  CHECK(readings.peak_force.known);
  CHECK_FALSE(readings.compression.known);
}
