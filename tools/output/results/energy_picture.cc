// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/energy_picture.h"

#include "solver/results/catalogue.h"
#include "solver/rig_parts.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace solemech::tools
{
namespace
{
using solver::EnergyKind;
namespace rig_part = solver::rig_part;

/// Linear between recorded times.
double at(const std::vector<double> &time, const std::vector<double> &values, double t)
{
  if (time.empty() || values.size() != time.size())
    return 0;
  const auto upper = std::lower_bound(time.begin(), time.end(), t);
  if (upper == time.begin())
    return values.front();
  if (upper == time.end())
    return values.back();
  const auto   i = static_cast<std::size_t>(upper - time.begin());
  const double weight = (t - time[i - 1]) / (time[i] - time[i - 1]);
  return (1 - weight) * values[i - 1] + weight * values[i];
}

/// The account is that of the last blow; the rebound of several is their mean.
const solver::Reading *last_rebound(const solver::Result &result)
{
  const solver::Reading *last = result.find(solver::catalogue.rebound_by_height);
  for (const auto &reading : result.readings)
    if (solver::catalogue.rebound_of_hit.is_named(reading.name))
      last = &reading;
  return last;
}
} // namespace

double EnergyPicture::accounted() const
{
  double sum = 0;
  for (const auto &part : shares)
    sum += share(part);
  return sum;
}

double EnergyPicture::share_error() const
{
  double greatest = -1;
  for (const auto &part : shares)
    if (input > 0 && part.error >= 0)
      greatest = std::max(greatest, part.error / input);
  return greatest;
}

std::string share_error_words(const EnergyPicture &picture)
{
  const double error = picture.share_error();
  return error < 0 ? "" : fmt::format(", each share to ±{:.1f} points", std::max(100 * error, 0.1));
}

EnergyPicture energy_picture(const solver::Case &setup, const solver::Result &result)
{
  EnergyPicture picture;
  const auto    basis = rigs::kind_of(setup).energy_basis();
  if (basis == rigs::EnergyBasis::none || result.input_energy <= 0 || result.ledger.empty() ||
      result.time.empty())
    return picture;
  picture.input = result.supplied_energy();
  picture.held_before = picture.input - result.input_energy;
  const double end = result.time_of_loss > 0 ? result.time_of_loss : result.time.back();

  std::map<std::string, double> lost;
  std::vector<std::string>      order;
  for (const auto &layer : setup.layers)
    order.push_back(layer.name);
  double guide = 0, left = 0, base = 0;
  for (const auto &row : result.ledger)
  {
    const double energy = at(result.time, row.values, end);
    if (row.type == EnergyKind::numerical)
      picture.numerical += energy;
    else if (row.type == EnergyKind::dissipated && row.part == rig_part::guide)
      guide += energy;
    else if (row.part == rig_part::support)
      base += energy; // what swings in the block, its spring and damper never comes back to the weight
    else if (row.type == EnergyKind::dissipated)
    {
      lost[row.part] += energy;
      if (std::find(order.begin(), order.end(), row.part) == order.end())
        order.push_back(row.part);
    }
    else if (row.type != EnergyKind::exchanged && row.part != rig_part::striker)
      left += energy;
  }
  const auto error_of = [&](const std::string &name) {
    const auto *reading = result.find(name);
    return reading ? reading->error : -1.0;
  };
  if (const auto *reading = result.find(solver::catalogue.left_in_stack))
    left = reading->value;
  // The ledger ends at contact loss; what the weight loses on its way up comes after it.
  if (const auto *reading = result.find(solver::catalogue.guide_loss_up))
    guide += reading->value;

  const bool drop = basis == rigs::EnergyBasis::blow;
  if (const auto *reading = drop ? last_rebound(result) : result.find(solver::catalogue.loop_return))
    picture.shares.push_back({drop ? "thrown back" : "given back", ShareKind::returned,
                              reading->value * result.input_energy, reading->error * result.input_energy});
  for (const auto &name : order)
    if (const auto part = lost.find(name); part != lost.end())
      picture.shares.push_back(
        {name, ShareKind::lost_in_part, part->second, error_of(solver::catalogue.lost_in_part.of(name))});
  if (base != 0)
    picture.shares.push_back({base_of_the_rig, ShareKind::lost_in_part, base});
  if (guide != 0)
    picture.shares.push_back(
      {rig_part::guide, ShareKind::lost_in_guide, guide, error_of(solver::catalogue.guide_loss_up)});
  picture.shares.push_back(
    {"left in the stack", ShareKind::left_in_stack, left, error_of(solver::catalogue.left_in_stack)});
  return picture;
}

std::string unaccounted_text(const solver::Case &setup, const solver::Result &result)
{
  const EnergyPicture picture = energy_picture(setup, result);
  if (picture.shares.empty() || std::abs(picture.accounted() - 1) <= most_unaccounted)
    return "";
  std::vector<std::string> named;
  for (const auto &part : picture.shares)
    named.push_back(fmt::format("{} {:.1f} %", part.name, 100 * picture.share(part)));
  return fmt::format("the shares of the energy add up to {:.1f} % instead of 100 % ({}). Do not rely on the "
                     "numbers of this run. Try accuracy = \"0.5 %\"",
                     100 * picture.accounted(), fmt::join(named, ", "));
}
} // namespace solemech::tools
