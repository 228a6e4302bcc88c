// SPDX-License-Identifier: Apache-2.0
#include "solver/time/account.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
void set_ledger_facts(Result &result, double scale)
{
  double numerical = 0, residual = 0;
  for (const auto &row : result.ledger)
    if (row.type == EnergyKind::numerical)
      (row.kind == "residual" ? residual : numerical) = row.values.back();
  const double all =
    scale + result.supplied_energy() - result.input_energy; // what a leak spends counts as well
  result.facts.ledger_numerical = std::abs(numerical) / all;
  result.facts.ledger_residual = std::abs(residual) / all;
}

std::string open_account_text(const Result &result, const OpenParts &parts)
{
  std::string text = fmt::format(
    "the energy account is off by {:.1f} % of the energy put in ({:.1f} % by time steps, "
    "{:.1f} % by iterations that end early)",
    100 * open_share(result), 100 * result.facts.ledger_numerical, 100 * result.facts.ledger_residual);
  const auto most = std::max_element(parts.begin(), parts.end(), [](const auto &a, const auto &b) {
    return std::abs(a.second) < std::abs(b.second);
  });
  if (most != parts.end() && result.input_energy > 0)
    text += fmt::format(", most of it in {}: {:.1f} %", most->first,
                        100 * std::abs(most->second) / result.supplied_energy());
  return text + ". Do not rely on the numbers of this run. Try accuracy = \"0.5 %\"";
}

std::vector<Vector> PartAccounts::forces(const Vector &x) const
{
  std::vector<Vector> all;
  for (const auto &contribution : equation_.contributions)
  {
    all.emplace_back(Vector::Zero(equation_.size()));
    contribution->add(x, all.back(), nullptr);
  }
  return all;
}

std::vector<double> PartAccounts::energies() const
{
  std::vector<double> all;
  for (const auto &contribution : equation_.contributions)
  {
    std::vector<EnergyEntry> entries;
    contribution->energies(entries);
    double sum = 0;
    for (const auto &entry : entries)
      sum += entry.value;
    all.push_back(sum);
  }
  return all;
}

void PartAccounts::start(const Vector &x)
{
  forces_ = forces(x);
  energies_.clear(); // taken once the state is accepted
}

void PartAccounts::work(const Vector &x, const Vector &dx, double old_share)
{
  auto now = forces(x);
  works_.assign(now.size(), 0.0);
  for (std::size_t i = 0; i < forces_.size(); ++i) // none at a first step without a start
    works_[i] = ((1 - old_share) * now[i] + old_share * forces_[i]).dot(dx);
  forces_ = std::move(now);
}

void PartAccounts::close(OpenParts &open)
{
  auto now = energies();
  if (!energies_.empty())
    for (std::size_t i = 0; i < now.size(); ++i)
      open[equation_.contributions[i]->name()] += works_[i] - (now[i] - energies_[i]);
  energies_ = std::move(now);
}
} // namespace solemech::solver
