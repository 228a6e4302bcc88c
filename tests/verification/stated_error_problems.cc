// SPDX-License-Identifier: Apache-2.0
#include "tests/verification/stated_error_problems.h"

#include "tests/support/layered_cases.h"

#include <algorithm>
#include <numbers>

namespace solemech::tests
{
namespace
{
const solver::RunOptions plain{.progress = {}, .pictures = false};

/// Share of the last step at which the speed of a hit passes zero.
double time_of_crest(const ColumnHit &hit)
{
  for (std::size_t i = 1; i < hit.time.size(); ++i)
    if (hit.speed[i - 1] > 0 && hit.speed[i] <= 0)
      return hit.time[i - 1] +
             (hit.time[i] - hit.time[i - 1]) * hit.speed[i - 1] / (hit.speed[i - 1] - hit.speed[i]) -
             hit.time[0];
  return 0;
}

std::map<std::string, KnownReading> readings_of_blow(const ColumnHit &hit)
{
  return {{"peak_force_raw", {hit.peak_force}},
          {"greatest_compression", {hit.peak_compression}},
          {"contact_time", {hit.contact_time}},
          {"rebound_by_height", {hit.return_by_height}},
          {"return_by_speed", {hit.return_by_speed}},
          {"return_by_loop", {hit.return_by_loop}},
          {"rebound_speed", {hit.loss_speed}},
          {"time_of_peak", {time_of_crest(hit)}},
          {"left_in_stack", {hit.stored_at_loss - hit.stored_at_touch}}};
}

solver::DropRig rig_of(const ColumnDrop &drop, const solver::Case &input)
{
  solver::DropRig rig;
  rig.tup = wide_plate(input.plug.radius);
  rig.mass = drop.mass;
  rig.height = drop.touch_speed * drop.touch_speed / (2 * drop.gravity);
  rig.discarded = drop.n_hits - 1;
  rig.rest = drop.rest;
  return rig;
}

KnownProblem column_blow(const std::string &name, const ColumnFoam &foam, const ColumnDrop &drop)
{
  auto input = column_case(foam, bench_column());
  // As light against the weight as under that of the bench.
  input.layers[0].material.density *= drop.mass / bench_drop().mass;
  input.rig = rig_of(drop, input);
  input.gravity = drop.gravity;
  return {"column, " + name, input, readings_of_blow(column_drop(foam, bench_column(), drop).back())};
}

KnownProblem stack_blow(const LayeredStack &stack, ColumnDrop drop)
{
  drop.step = 5e-6;
  const double area = std::numbers::pi * stack.input.plug.radius * stack.input.plug.radius;
  const auto   hit = stack_drop(stack.layers, area, stack.lateral, drop).back();
  return {"layers, " + stack.name, dropped_case(stack, drop), readings_of_blow(hit)};
}

void add_loop(const ColumnHit &hit, std::map<std::string, KnownReading> &readings)
{
  double     in = 0, out = 0;
  const auto top = std::max_element(hit.compression.begin(), hit.compression.end()) - hit.compression.begin();
  for (std::ptrdiff_t i = 1; i < static_cast<std::ptrdiff_t>(hit.time.size()); ++i)
    (i <= top ? in : out) +=
      0.5 * (hit.force[i] + hit.force[i - 1]) * (hit.compression[i] - hit.compression[i - 1]);
  readings["loop_return"] = {hit.return_by_loop};
  readings["loop_energy_in"] = {in};
  readings["loop_energy_lost"] = {in + out};
}

KnownProblem column_pressed(const std::string &name, const ColumnFoam &foam, double peak, double duration)
{
  auto             input = column_case(foam, bench_column());
  solver::PressRig rig;
  rig.tup = wide_plate(input.plug.radius);
  rig.wave = solver::PressWave::half_sine;
  rig.peak = peak;
  rig.duration = duration;
  input.rig = rig;
  const auto   hit = column_press(foam, bench_column(), peak, duration, duration / 6000);
  KnownProblem problem{
    "column pressed, " + name, input, {{"peak_force", {hit.peak_force}}, {"greatest_compression", {peak}}}};
  add_loop(hit, problem.readings);
  return problem;
}

KnownProblem column_pulse(const std::string &name, const ColumnFoam &foam, double peak, double duration)
{
  auto             input = column_case(foam, bench_column());
  solver::PressRig rig;
  rig.tup = wide_plate(input.plug.radius);
  rig.control = solver::PressControl::force;
  rig.wave = solver::PressWave::half_sine;
  rig.peak = peak;
  rig.duration = duration;
  input.rig = rig;
  const auto hit = column_force_pulse(
    foam, bench_column(), [&](double t) { return peak * std::sin(std::numbers::pi * t / duration); },
    duration, 20000);
  KnownProblem problem{"column under a pulse, " + name,
                       input,
                       {{"peak_force", {peak}}, {"greatest_compression", {hit.peak_compression}}}};
  add_loop(hit, problem.readings);
  return problem;
}

KnownProblem b1_blow(const std::string &name, bool relaxing, std::map<std::string, KnownReading> readings)
{
  return {"B1, " + name, b1_case(relaxing), std::move(readings)};
}

KnownReading listed(const b1::Reading &reading)
{
  return {reading.value, reading.spread};
}
} // namespace

std::vector<KnownProblem> integrated_problems()
{
  std::vector<KnownProblem>                 problems;
  const std::pair<const char *, ColumnFoam> foams[] = {
    {"elastic", elastic_foam()}, {"relaxing", relaxing_foam()}, {"full law", full_foam()}};
  for (const auto &[name, foam] : foams)
  {
    problems.push_back(column_blow(name, foam, bench_drop()));
    problems.push_back(
      column_blow(std::string(name) + ", tiny", foam, {.mass = 0.01, .touch_speed = 0.01, .gravity = 9.81}));
    problems.push_back(column_blow(std::string(name) + ", light and fast", foam,
                                   {.mass = 0.5, .touch_speed = 4, .gravity = 9.81}));
    problems.push_back(column_pressed(name, foam, 10e-3, 30e-3));
    problems.push_back(column_pulse(name, foam, 900, 185e-3));
  }
  ColumnDrop twice = bench_drop();
  twice.n_hits = 2, twice.rest = 2;
  problems.push_back(column_blow("full law, second blow", full_foam(), twice));
  problems.push_back(stack_blow(spreading_stack(), bench_drop()));
  problems.push_back(stack_blow(held_stack(), bench_drop()));
  return problems;
}

std::vector<KnownProblem> listed_problems()
{
  std::vector<KnownProblem> problems;
  problems.push_back(b1_blow("relaxing", true,
                             {{"peak_force", listed(b1::smoothed_peak_force)},
                              {"greatest_compression", listed(b1::peak_compression)},
                              {"contact_time", listed(b1::contact_time)},
                              {"rebound_speed", listed(b1::rebound_speed)},
                              {"return_by_speed", listed(b1::return_by_speed)}}));
  problems.push_back(b1_blow("elastic", false,
                             {{"peak_force", listed(b1::elastic_smoothed_peak_force)},
                              {"greatest_compression", listed(b1::elastic_peak_compression)},
                              {"contact_time", listed(b1::elastic_contact_time)},
                              {"return_by_speed", listed(b1::elastic_return_by_speed)}}));
  for (std::size_t i = 0; i < b1::slow_compressions.size(); ++i)
  {
    auto             input = b1_stack(false);
    solver::PressRig rig;
    rig.tup = b1_tup();
    rig.peak = b1::slow_compressions[i];
    input.rig = rig;
    problems.push_back(
      {"B1 pressed by " + std::to_string(1e3 * rig.peak) + " mm",
       input,
       {{"peak_force", {b1::slow_forces[i], b1::slow_relative_spread * b1::slow_forces[i]}}}});
  }
  return problems;
}

std::vector<ErrorRow> compared(const KnownProblem &problem, double accuracy)
{
  auto input = problem.input;
  input.accuracy = accuracy;
  const auto            result = solver::run(input, plain);
  std::vector<ErrorRow> rows;
  for (const auto &[name, known] : problem.readings)
    if (const auto *found = result.find(name))
      rows.push_back({problem.name, name, accuracy, found->value - known.value, found->error, known.spread,
                      found->unit == "1"   ? 1.0
                      : found->unit == "J" ? result.input_energy
                                           : std::abs(known.value)});
  return rows;
}
} // namespace solemech::tests
