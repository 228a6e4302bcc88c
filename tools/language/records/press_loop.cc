// SPDX-License-Identifier: Apache-2.0
#include "tools/language/records/press_loop.h"

#include "solver/results/metrics.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>

namespace solemech::records
{
namespace
{
constexpr std::size_t fewest_each_way = 10;
/// Share of the greatest compression by which a turn must stand out to be one of the press and not of noise.
constexpr double turn = 0.25;

struct Cycle
{
  std::size_t begin, top, end; ///< end: one past
};

/// Whole cycles: a rise by more than `turn` of the greatest compression, a top, and the fall back by as much.
std::vector<Cycle> cycles_of(std::span<const double> way)
{
  std::vector<Cycle> cycles;
  const auto [least, greatest] = std::minmax_element(way.begin(), way.end());
  const double needed = turn * (*greatest - *least);
  std::size_t  low = 0, top = 0;
  bool         rising = true;
  for (std::size_t i = 1; i < way.size(); ++i)
  {
    if (rising)
    {
      if (way[i] < way[low] && top == low)
        low = top = i;
      if (way[i] > way[top])
        top = i;
      if (way[top] - way[low] > needed && way[top] - way[i] > needed)
      {
        rising = false;
        cycles.push_back({low, top, i + 1});
        low = i;
      }
    }
    else
    {
      if (way[i] < way[low])
      {
        low = i;
        cycles.back().end = i + 1;
      }
      if (way[i] - way[low] > needed)
      {
        rising = true;
        top = i;
      }
    }
  }
  return cycles;
}
} // namespace

LoopReadings read_loop(const Record &record, const LoopSetup &setup, const std::string &file,
                       materials::Problems &problems)
{
  LoopReadings readings;
  readings.notes = record.notes;
  if (record.compression.empty() || record.force.empty())
  {
    problems.add({file, 0, 0, "", "a press loop needs columns of compression and force",
                  "Name them in the header: compression [mm], force [N]"});
    return readings;
  }
  std::vector<double> way = record.compression, force = record.force;
  const auto          size_of = [](const std::vector<double> &v) {
    const auto [low, high] = std::minmax_element(v.begin(), v.end());
    return -*low > *high;
  };
  for (auto *column : {&way, &force})
    if (size_of(*column))
    {
      for (auto &value : *column)
        value = -value;
      readings.notes.push_back(fmt::format("{} is counted upwards here: signs were reversed",
                                           column == &way ? "compression" : "force"));
    }
  const auto cycles = cycles_of(way);
  readings.n_cycles = int(cycles.size());
  if (cycles.empty())
  {
    problems.add({file, 0, 0, "", "the record has no unloading",
                  "Record the unloading as well: the loop needs both branches"});
    return readings;
  }
  const auto &cycle = cycles.back();
  if (cycle.top - cycle.begin < fewest_each_way || cycle.end - cycle.top - 1 < fewest_each_way)
  {
    problems.add({file, record.line[cycle.begin], 1, "",
                  fmt::format("the last cycle has fewer than {} rows each way", fewest_each_way),
                  "Use a higher sampling rate"});
    return readings;
  }
  if (cycles.size() > 1)
    readings.notes.push_back(fmt::format("{} cycles: the last one is used", cycles.size()));
  else
    readings.notes.emplace_back(
      "a single cycle: foam gives back more after a few, so mention this when you compare");
  const auto w = std::span(way).subspan(cycle.begin, cycle.end - cycle.begin);
  const auto f = std::span(force).subspan(cycle.begin, cycle.end - cycle.begin);
  const auto areas = solver::loop_areas(w, f);
  if (!(areas.loading > 0))
  {
    problems.add({file, record.line[cycle.begin], 1, "", "no work goes in during loading",
                  "Check the signs and the order of the columns"});
    return readings;
  }
  const auto   top = std::size_t(std::max_element(f.begin(), f.end()) - f.begin());
  const double peak = f[top], compression = *std::max_element(w.begin(), w.end()) - w.front();
  const double at_peak = w[top] - w.front();
  // Play of the frame smears the two ends of the way: about peak x play of work each.
  const double work_doubt = peak * setup.compression_doubt / areas.loading;
  readings.loop_return = {true, false, areas.returned(), work_doubt, {}};
  readings.peak_force = {true, false, peak, setup.force_gain_doubt * peak, {}};
  readings.compression = {true, false, compression, setup.compression_doubt, {}};
  readings.stiffness = {true,
                        false,
                        peak / at_peak,
                        peak / at_peak *
                          std::hypot(setup.force_gain_doubt, setup.compression_doubt / at_peak),
                        {}};
  if (areas.returned() > 1)
    readings.notes.emplace_back(
      "more work comes back than goes in: force or compression is off, or the cycles are mixed");
  // A rest of the loop that stays open: the piece has not come back, or the record ends early.
  if (const double open = w.back() - w.front(); open > 0.1 * compression)
    readings.notes.push_back(fmt::format(
      "the loop does not close (gap {:.2g} mm): the return includes only what was recorded", 1e3 * open));
  return readings;
}
} // namespace solemech::records
