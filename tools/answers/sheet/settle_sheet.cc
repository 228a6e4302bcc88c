// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/settle_sheet.h"

#include "solver/layer_parts.h"
#include "solver/results/catalogue.h"
#include "solver/results/uncertainty.h"
#include "tools/answers/sheet/doubted.h"
#include "tools/answers/sheet/value_words.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
std::vector<std::size_t> benches_run(const std::vector<Probe> &probes)
{
  std::vector<std::size_t> benches;
  for (const auto &probe : probes)
    if (!probe.direct)
      benches.push_back(probe.bench);
  std::sort(benches.begin(), benches.end());
  benches.erase(std::unique(benches.begin(), benches.end()), benches.end());
  return benches;
}

namespace
{
/// Predictions of all probes for stacks that stand ready; a stack that could not be run gives an empty row.
std::vector<std::vector<double>>
predict_stacks(const Sheet &sheet, const std::vector<Probe> &probes,
               const std::vector<std::function<void(solver::Case &)>> &stacks, Job &job)
{
  const auto                benches = benches_run(probes);
  std::vector<solver::Case> cases;
  for (const auto &change : stacks)
    for (const std::size_t bench : benches)
    {
      auto setup = sheet.setup;
      sheet.benches[bench](setup);
      change(setup);
      cases.push_back(std::move(setup));
    }
  const auto                       results = job.run(cases, readings_only, "settling");
  std::vector<std::vector<double>> rows;
  for (std::size_t s = 0; s < stacks.size(); ++s)
  {
    auto stack = sheet.setup;
    stacks[s](stack);
    std::vector<double> row;
    for (const auto &probe : probes)
    {
      if (probe.direct)
      {
        row.push_back(probe.direct(stack));
        continue;
      }
      const auto  place = std::lower_bound(benches.begin(), benches.end(), probe.bench) - benches.begin();
      const auto &result = results[s * benches.size() + static_cast<std::size_t>(place)];
      const auto *reading = result.find(probe.reading);
      if (!result.complete || (probe.part.empty() && !reading))
      {
        row.clear();
        break;
      }
      row.push_back(probe.part.empty() ? reading->value : returned_by(result, probe.part));
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

/// Library materials in place of an unknown one, everything else as settled.
std::vector<MaterialFit> fits_of(const Sheet &sheet, const UnknownMaterial &unknown,
                                 const std::vector<materials::Material> &candidates,
                                 const SettledSheet &answer, Job &job)
{
  std::vector<std::function<void(solver::Case &)>> stacks;
  for (const auto &candidate : candidates)
    stacks.emplace_back([&sheet, &unknown, &answer, candidate](solver::Case &setup) {
      setup = case_at(setup, sheet.unknowns, answer.settled.values);
      for (auto &layer : setup.layers)
      {
        if (layer.material.name == unknown.name)
          layer.material = candidate;
        if (layer.ring && layer.ring->name == unknown.name)
          layer.ring = candidate;
      }
    });
  const std::vector<Probe> read(answer.probes.begin(),
                                answer.probes.begin() + static_cast<long>(answer.n_readings));
  const auto               rows = predict_stacks(sheet, read, stacks, job);
  std::vector<MaterialFit> fits;
  for (std::size_t c = 0; c < candidates.size(); ++c)
  {
    if (rows[c].empty())
      continue;
    MaterialFit fit{unknown.layer, candidates[c].name, candidates[c].title, 0, ""};
    double      squares = 0, greatest = 0;
    int         n = 0;
    for (std::size_t i = 0; i < read.size(); ++i)
    {
      const auto &seen = sheet.readings[i].observation;
      if (seen.held_out || seen.meaning == settle::Meaning::at_least)
        continue;
      const double miss = std::abs(rows[c][i] - seen.value) / (seen.doubt * doubts_in_half_band);
      squares += miss * miss;
      ++n;
      if (miss > greatest)
        greatest = miss, fit.worst = seen.name;
    }
    fit.misfit = n > 0 ? std::sqrt(squares / n) : 0;
    fits.push_back(fit);
  }
  std::stable_sort(fits.begin(), fits.end(),
                   [](const MaterialFit &a, const MaterialFit &b) { return a.misfit < b.misfit; });
  return fits;
}
} // namespace

namespace
{
bool is_unknown(const Sheet &sheet, const std::string &layer)
{
  return std::any_of(sheet.setup.layers.begin(), sheet.setup.layers.end(), [&](const solver::Layer &one) {
    return one.name == layer &&
           std::any_of(sheet.materials.begin(), sheet.materials.end(),
                       [&](const UnknownMaterial &known) { return known.name == one.material.name; });
  });
}
} // namespace

double returned_by(const solver::Result &result, const std::string &part)
{
  // What went in: most that the layer ever held (stored, moving) together with what it had lost by then.
  std::vector<double> into(result.time.size(), 0.0);
  double              lost = 0;
  for (const auto &row : result.ledger)
  {
    if (!solver::is_part_of(row.part, part))
      continue;
    for (std::size_t i = 0; i < into.size() && i < row.values.size(); ++i)
      if (row.type != solver::EnergyKind::exchanged)
        into[i] += row.values[i];
    if (row.type == solver::EnergyKind::dissipated && !row.values.empty())
      lost += row.values.back();
  }
  const double most = into.empty() ? 0 : *std::max_element(into.begin(), into.end());
  return most > 0 ? 1 - lost / most : 1;
}

void take_from_run(const solver::Result &result, SettledSheet &answer)
{
  for (std::size_t i = 0; i < answer.probes.size(); ++i)
  {
    const auto &probe = answer.probes[i];
    const auto *reading =
      probe.bench == 0 && !probe.direct && probe.part.empty() ? result.find(probe.reading) : nullptr;
    if (!reading || reading->doubt() < 0)
      continue;
    const double half = solver::uncertainty(*reading);
    answer.settled.observations[i].predicted = {reading->value, reading->value - half, reading->value + half};
  }
}

std::vector<Probe> questions(const Sheet &sheet)
{
  std::vector<Probe> asked;
  // What a gauge reads on a thin sole is not the hardness of its rubber: that is told beside it.
  for (const auto &reading : sheet.readings)
    if (const auto name = fmt::format("bulk hardness of {}", reading.layer);
        reading.probe.reading == solver::catalogue.hardness && is_unknown(sheet, reading.layer))
      if (std::none_of(asked.begin(), asked.end(), [&](const Probe &one) { return one.name == name; }))
        asked.push_back({name, materials::Dimension::number, reading.probe.unit, 0, "", "",
                         pad_hardness(gauge_named(reading.probe.unit), reading.layer)});
  if (!rigs::fall_of(sheet.setup))
    return asked;
  using D = materials::Dimension;
  for (const auto *kind : {&solver::catalogue.rebound_height, &solver::catalogue.peak_force,
                           &solver::catalogue.greatest_compression})
    asked.push_back(probe_of(*kind));
  for (const auto &unknown : sheet.materials)
    for (const auto &layer : sheet.setup.layers)
      if (layer.material.name == unknown.name && !layer.ring && unknown.family == "foam")
        asked.push_back({layer.name, D::share, "", 0, "", layer.name, {}});
  return asked;
}

std::vector<std::vector<double>> predict_probes(const Sheet &sheet, const std::vector<Probe> &probes,
                                                const std::vector<std::vector<double>> &sets, Job &job)
{
  std::vector<std::function<void(solver::Case &)>> stacks;
  for (const auto &set : sets)
    stacks.emplace_back([&sheet, set](solver::Case &setup) { setup = case_at(setup, sheet.unknowns, set); });
  return predict_stacks(sheet, probes, stacks, job);
}

bool is_prediction(const Sheet &sheet)
{
  return std::all_of(sheet.readings.begin(), sheet.readings.end(),
                     [](const SheetReading &one) { return one.observation.held_out; });
}

const materials::Material *material_named(const solver::Case &setup, const std::string &name)
{
  for (const auto &layer : setup.layers)
  {
    if (layer.material.name == name)
      return &layer.material;
    if (layer.ring && layer.ring->name == name)
      return &*layer.ring;
  }
  return nullptr;
}

std::vector<MaterialFit> material_fits(const Sheet &sheet, const SettledSheet &answer,
                                       const std::vector<materials::Material> &candidates, Job &job)
{
  std::vector<MaterialFit> fits;
  for (const auto &unknown : sheet.materials)
  {
    const auto *settled = material_named(answer.setup, unknown.name);
    if (!settled)
      continue;
    const auto near = nearest_materials(candidates, unknown.family, *settled, most_candidates);
    for (auto &fit : fits_of(sheet, unknown, near, answer, job))
      fits.push_back(std::move(fit));
  }
  return fits;
}
} // namespace solemech::tools
