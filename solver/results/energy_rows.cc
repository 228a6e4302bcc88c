// SPDX-License-Identifier: Apache-2.0
#include "solver/results/energy_rows.h"

#include "solver/results/curves.h"

#include <algorithm>
#include <functional>

namespace solemech::solver
{
namespace
{
const std::pair<std::string, std::string> fall_row{rig_part::creasing, "fall"},
  numerical_row{rig_part::scheme, "numerical"};
} // namespace

void EnergyRows::open(const TimeIntegrator &state)
{
  opening_.clear();
  held_before_.reset();
  if (held_counts_)
    held_before_ = 0;
  for (const auto &entry : state.energies())
    if (held_before_ && entry.type == EnergyKind::stored)
      *held_before_ += entry.value;
    else
      opening_[{std::string(entry.part), std::string(entry.kind)}] += entry.value;
  numerical_at_opening_ = state.numerical_energy();
  residual_at_opening_ = state.residual_energy();
  fallen_at_opening_ = state.fallen_energy();
  work_at_opening_ = state.driven_work();
}

void EnergyRows::push(const std::string &part, const std::string &kind, EnergyKind type, double value)
{
  const auto [found, is_new] = number_.try_emplace({part, kind}, rows_.size());
  if (is_new)
    rows_.push_back({part, kind, type, std::vector<double>(n_steps_, 0.0)});
  // Several contributions may share a row: side and ground face of a stack both meet the base.
  rows_[found->second].values.back() += value;
}

void EnergyRows::push_once_there(const std::string &part, const std::string &kind, EnergyKind type,
                                 double value)
{
  if (value != 0 || number_.contains({part, kind}))
    push(part, kind, type, value);
}

void EnergyRows::push_motion(const TimeIntegrator &state)
{
  double moving = 0;
  for (std::size_t body = 0; body < bodies_.size(); ++body)
  {
    const double energy = state.body_kinetic_energy(body);
    push(bodies_[body], "motion", EnergyKind::kinetic, energy);
    moving += energy;
  }
  push(rig_part::stack, "motion", EnergyKind::kinetic, state.kinetic_energy() - moving);
}

void EnergyRows::record(const TimeIntegrator &state)
{
  ++n_steps_;
  for (const auto &[key, number] : number_)
    rows_[number].values.push_back(0);
  for (const auto &entry : state.energies())
    push(std::string(entry.part), std::string(entry.kind), entry.type, entry.value);
  for (const auto &[key, opened] : opening_)
    rows_[number_.at(key)].values.back() -= opened;
  if (held_before_)
    push(rig_part::stack, held_before_kind, EnergyKind::exchanged, -*held_before_);
  if (!bodies_.empty())
    push_motion(state);
  push(numerical_row.first, numerical_row.second, EnergyKind::numerical,
       state.numerical_energy() - numerical_at_opening_);
  push(rig_part::scheme, "residual", EnergyKind::numerical, state.residual_energy() - residual_at_opening_);
  push_once_there(fall_row.first, fall_row.second, EnergyKind::dissipated,
                  state.fallen_energy() - fallen_at_opening_);
  push_once_there(drive_.part, drive_.kind, EnergyKind::exchanged, -(state.driven_work() - work_at_opening_));
}

void EnergyRows::take_back(double share)
{
  for (auto &row : rows_)
    solver::take_back(row.values, share);
}

void EnergyRows::drop_small_falls()
{
  constexpr double readable = 5e-4; // of the energy there is at the end
  const auto       fall = number_.find(fall_row);
  if (fall == number_.end())
    return;
  double all = 0;
  for (const auto &row : rows_)
    if (row.type != EnergyKind::exchanged && row.type != EnergyKind::numerical)
      all += row.values.back();
  const auto freed = rows_[fall->second].values;
  if (freed.back() > readable * all)
    return;
  auto &numerical = rows_[number_.at(numerical_row)].values;
  for (std::size_t i = 0; i < freed.size(); ++i)
    numerical[i] += freed[i];
  rows_.erase(rows_.begin() + static_cast<std::ptrdiff_t>(fall->second));
}

std::vector<LedgerRow> EnergyRows::moved()
{
  if (n_steps_ > 0)
    drop_small_falls();
  return std::move(rows_);
}

void add_rubbed(std::vector<LedgerRow> &ledger, const std::string &part, const std::string &lost,
                const std::string &given, const std::vector<double> &heat)
{
  std::vector<double> work(heat.size());
  std::ranges::transform(heat, work.begin(), std::negate<>());
  ledger.push_back({part, lost, EnergyKind::dissipated, heat});
  ledger.push_back({part, given, EnergyKind::exchanged, std::move(work)});
}
} // namespace solemech::solver
