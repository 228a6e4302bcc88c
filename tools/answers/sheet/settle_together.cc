// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/settle_sheet.h"
#include "tools/answers/sheet/settled_case.h"
#include "tools/answers/sheet/value_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace solemech::tools
{
namespace
{
/// Runs that settling a sheet will take about, for the progress: four steps of a point and its derivatives,
/// both sides of each unknown, check runs, and the candidates; a sheet without readings only takes the
/// derivatives.
std::size_t expected_runs(const Sheet &sheet, const std::vector<Probe> &probes, std::size_t n_candidates)
{
  const auto  major = static_cast<std::size_t>(std::count_if(
     sheet.unknowns.begin(), sheet.unknowns.end(), [](const Unknown &one) { return !one.parameter.minor; }));
  std::size_t sets = sheet.unknowns.size() + 1;
  if (!is_prediction(sheet))
    sets +=
      4 * (major + 1) + 2 * major + static_cast<std::size_t>(settle::Wish().n_check_runs) + n_candidates;
  return sets * std::max<std::size_t>(1, benches_run(probes).size());
}

std::string named(const SheetToSettle &part, const std::string &what)
{
  return part.name.empty() ? what : part.name + " " + what;
}

/// One number of the rod in two sheets.
bool is_same(const Unknown &a, const Unknown &b)
{
  constexpr double rounding = 1e-9;
  return is_of_rig(a.kind) && a.kind == b.kind &&
         std::abs(a.parameter.median - b.parameter.median) <= rounding * a.parameter.median;
}

bool is_known_better(const settle::Parameter &a, const settle::Parameter &b)
{
  return a.minor != b.minor ? !a.minor : a.spread < b.spread;
}

/// All unknown numbers as one list.
struct Numbers
{
  std::vector<settle::Parameter>        parameters;
  std::vector<std::vector<std::size_t>> places; ///< [sheet][unknown]

  explicit Numbers(const std::vector<SheetToSettle> &sheets)
  {
    std::vector<const Unknown *> unknowns; // one a parameter
    for (const auto &part : sheets)
    {
      auto &row = places.emplace_back();
      for (const auto &unknown : part.sheet.unknowns)
      {
        const auto before =
          std::ranges::find_if(unknowns, [&](const Unknown *one) { return is_same(*one, unknown); });
        row.push_back(static_cast<std::size_t>(before - unknowns.begin()));
        if (before == unknowns.end())
        {
          unknowns.push_back(&unknown);
          parameters.push_back(unknown.parameter);
          parameters.back().name = named(part, unknown.parameter.name);
          parameters.back().part = static_cast<int>(places.size());
        }
        else
        {
          if (is_known_better(unknown.parameter, parameters[row.back()]))
            parameters[row.back()] = unknown.parameter;
          parameters[row.back()].name = unknown.parameter.name;
          parameters[row.back()].part = 0;
        }
        parameters[row.back()].shown = [dimension = unknown.dimension](double value) {
          return value_text(value, dimension);
        };
      }
    }
  }

  std::vector<double> of_sheet(std::size_t sheet, const std::vector<double> &all) const
  {
    std::vector<double> own;
    for (const auto place : places[sheet])
      own.push_back(all[place]);
    return own;
  }
};

/// Predictions of one sheet; what it was asked before is kept, as most steps leave its own numbers alone.
class SheetPredictions
{
public:
  SheetPredictions(const Sheet &sheet, const std::vector<Probe> &probes, Job &job)
    : sheet_(sheet), probes_(probes), job_(job)
  {
  }

  const std::vector<double> &at(const std::vector<double> &set) const { return kept_.at(set); }

  void compute(const std::vector<std::vector<double>> &sets)
  {
    std::vector<std::vector<double>> fresh;
    for (const auto &set : sets)
      if (kept_.try_emplace(set).second)
        fresh.push_back(set);
    if (fresh.empty())
      return;
    auto rows = predict_probes(sheet_, probes_, fresh, job_);
    for (std::size_t i = 0; i < fresh.size(); ++i)
      kept_[fresh[i]] = std::move(rows[i]);
  }

private:
  const Sheet                                       &sheet_;
  const std::vector<Probe>                          &probes_;
  Job                                               &job_;
  std::map<std::vector<double>, std::vector<double>> kept_;
};

/// The predictions of all sheets, one after the other; a sheet that could not be run leaves its row empty.
class AllPredictions
{
public:
  AllPredictions(const std::vector<SheetToSettle> &sheets, const std::vector<SettledSheet> &answers,
                 const Numbers &numbers, Job &job)
    : numbers_(numbers)
  {
    for (std::size_t s = 0; s < sheets.size(); ++s)
      sheets_.emplace_back(sheets[s].sheet, answers[s].probes, job);
  }

  std::vector<std::vector<double>> operator()(const std::vector<std::vector<double>> &sets)
  {
    std::vector<std::vector<double>> rows(sets.size());
    std::vector<bool>                failed(sets.size(), false);
    for (std::size_t s = 0; s < sheets_.size(); ++s)
    {
      std::vector<std::vector<double>> own;
      for (const auto &set : sets)
        own.push_back(numbers_.of_sheet(s, set));
      sheets_[s].compute(own);
      for (std::size_t i = 0; i < sets.size(); ++i)
      {
        const auto &row = sheets_[s].at(own[i]);
        failed[i] = failed[i] || row.empty();
        rows[i].insert(rows[i].end(), row.begin(), row.end());
      }
    }
    for (std::size_t i = 0; i < rows.size(); ++i)
      if (failed[i])
        rows[i].clear();
    return rows;
  }

private:
  const Numbers                &numbers_;
  std::vector<SheetPredictions> sheets_;
};

/// Readings first, then what is asked: held out, predicted with a band and never used, so that the value
/// plays no part.
std::vector<settle::Observation> observations_of(const SheetToSettle &part, std::vector<Probe> &probes)
{
  std::vector<settle::Observation> observations;
  for (const auto &reading : part.sheet.readings)
  {
    observations.push_back(reading.observation);
    observations.back().name = named(part, reading.observation.name);
    observations.back().shown = [dimension = reading.probe.dimension, unit = reading.probe.unit](
                                  double value) { return value_text(value, dimension, unit); };
    probes.push_back(reading.probe);
  }
  for (const auto &probe : part.asked)
  {
    observations.push_back({named(part, probe.name), 1, 0.5, settle::Meaning::value, true});
    probes.push_back(probe);
  }
  return observations;
}

/// What the whole says of one sheet, under the names that its numbers have there.
settle::Settled settled_part(const settle::Settled &whole, const Sheet &sheet,
                             const std::vector<std::size_t> &places, std::size_t first,
                             const std::vector<Probe> &probes)
{
  std::vector<std::size_t> observations;
  for (std::size_t i = 0; i < probes.size(); ++i)
    observations.push_back(first + i);
  auto part = settle::part_of(whole, places, observations);
  for (std::size_t k = 0; k < places.size(); ++k)
    part.parameters[k].name = sheet.unknowns[k].parameter.name;
  for (std::size_t i = 0; i < probes.size(); ++i)
    part.observations[i].name =
      i < sheet.readings.size() ? sheet.readings[i].observation.name : probes[i].name;
  return part;
}
} // namespace

SettledTogether settle_together(const std::vector<SheetToSettle> &sheets, Job &job,
                                const std::vector<materials::Material> &candidates)
{
  const Numbers                    numbers(sheets);
  SettledTogether                  together;
  std::vector<settle::Observation> observations;
  bool                             all_predicted = true;
  for (const auto &part : sheets)
  {
    auto &answer = together.sheets.emplace_back();
    auto  own = observations_of(part, answer.probes);
    answer.n_readings = part.sheet.readings.size();
    observations.insert(observations.end(), own.begin(), own.end());
    all_predicted = all_predicted && is_prediction(part.sheet);
    job.expect(static_cast<double>(
                 expected_runs(part.sheet, answer.probes,
                               std::min(candidates.size(), most_candidates * part.sheet.materials.size()))) *
               cost_of(readings_only));
  }
  settle::Wish wish;
  wish.predict_only = all_predicted;
  wish.check_by_sampling = !all_predicted;
  together.settled = settle::settle(numbers.parameters, observations,
                                    AllPredictions(sheets, together.sheets, numbers, job), wish);
  together.places = numbers.places;
  std::size_t first = 0;
  for (std::size_t s = 0; s < sheets.size(); ++s)
  {
    const auto &sheet = sheets[s].sheet;
    auto       &answer = together.sheets[s];
    answer.settled = settled_part(together.settled, sheet, numbers.places[s], first, answer.probes);
    first += answer.probes.size();
    answer.setup = case_at(sheet.setup, sheet.unknowns, answer.settled.values);
    answer.setup.doubts = settled_doubts(sheet, answer.settled);
    if (!is_prediction(sheet)) // else there is nothing to compare a library material with
      answer.fits = material_fits(sheet, answer, candidates, job);
  }
  return together;
}

SettledSheet settle_sheet(const Sheet &sheet, const std::vector<Probe> &asked, Job &job,
                          const std::vector<materials::Material> &candidates)
{
  return settle_together({{sheet, asked, ""}}, job, candidates).sheets.front();
}
} // namespace solemech::tools
