// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/trial/trial_answer.h"

#include "solver/results/catalogue.h"
#include "tools/language/case_text.h"
#include "tools/output/results/cautions.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
bool has_unit(const solver::Case &data)
{
  return std::any_of(data.layers.begin(), data.layers.end(),
                     [](const auto &layer) { return layer.unit.has_value(); });
}

/// True when the stacks differ in a plate or an insert stiff like one.
bool changes_a_plate(const solver::Case &now, const solver::Case &changed)
{
  const auto plates = [](const solver::Case &data) {
    std::string text;
    for (const auto &layer : data.layers)
      if (is_stiff_sheet(layer))
        text += fmt::format("{} {} ", layer.material.name, layer.thickness);
    return text;
  };
  return plates(now) != plates(changed);
}

std::vector<std::string> notes_on(const TrialInput &trial)
{
  std::vector<std::string> notes;
  if (!trial.swaps.empty() && canonical_text(trial.now) == canonical_text(trial.changed))
    notes.emplace_back("The change has no effect: both stacks are the same.");
  if (has_unit(trial.now) && !has_unit(trial.changed))
    notes.emplace_back("The swap took the air unit out. To keep it, change only an entry, for example "
                       "unit.material or unit.thickness.");
  if (changes_a_plate(trial.now, trial.changed))
    notes.emplace_back("A plate or stiff insert works in bending, which a drop does not read. This drop "
                       "reads only how it spreads the load under the striker.");
  if (std::any_of(trial.changed.layers.begin(), trial.changed.layers.end(),
                  [&](const auto &layer) { return layer.laid_in; }))
    notes.emplace_back("The insert is assumed to be bonded to what lies under it. A loose one slides and "
                       "gives a little more.");
  return notes;
}

std::string sentence_of(const TrialInput &trial, const std::vector<TrialRow> &rows, const GeometryCost &cost,
                        Lengths lengths)
{
  std::vector<std::string> parts;
  for (const auto &row : rows)
    if (row.reading == solver::catalogue.rebound_by_height || row.reading == solver::catalogue.loop_return ||
        row.reading == solver::catalogue.peak_force)
      parts.push_back(!row.plain.empty() ? row.plain : fmt::format("{}: {}", row.name, row.note));
  if (std::abs(cost.height) > 0.05e-3)
    parts.push_back(fmt::format("the stack {} {}", length_text(std::abs(cost.height), lengths),
                                cost.height > 0 ? "higher" : "lower"));
  return fmt::format("With {}: {}.", listed(trial.swaps), fmt::format("{}", listed(parts)));
}

/// "Nothing" is what this rig reads, not what the change does in a shoe.
std::string nothing_words(const TrialInput &trial)
{
  const std::string text = "nothing that this rig reads";
  return changes_a_plate(trial.now, trial.changed) ? text + ", and it does not read bending" : text;
}

void weigh(TrialAnswer &answer, const GeometryCost &cost, Lengths lengths)
{
  for (const auto &row : answer.rows)
    if (!row.plain.empty())
      (row.improves() ? answer.improves : answer.gets_worse).push_back(row.plain);
  if (cost.height > 0.05e-3)
    answer.gets_worse.push_back(fmt::format("stack {} higher", length_text(std::abs(cost.height), lengths)));
  if (cost.height < -0.05e-3)
    answer.improves.push_back(fmt::format("stack {} lower", length_text(std::abs(cost.height), lengths)));
  if (cost.inside > 0.05e-3)
    answer.gets_worse.push_back(
      fmt::format("{} less depth in the upper", length_text(std::abs(cost.inside), lengths)));
  if (cost.inside < -0.05e-3)
    answer.improves.push_back(
      fmt::format("{} more depth in the upper", length_text(std::abs(cost.inside), lengths)));
}
} // namespace

TrialAnswer trial_answer(const TrialInput &trial, const TrialResult &result, const SummaryOptions &options)
{
  TrialAnswer answer;
  answer.label = trial.label;
  answer.settings = trial.settings;
  answer.swaps = trial.swaps;
  answer.rig = rig_text(trial.changed, options.lengths);
  answer.rows = trial_rows(trial, result, options);
  answer.reserve_note = reserve_note(result);
  answer.notes = notes_on(trial);
  if (const auto band =
        band_sentence({{"", trial.now, result.now.result}, {"", trial.changed, result.changed.result}});
      !band.empty())
    answer.notes.push_back(
      band +
      " A difference smaller than the bands is reported as \"cannot tell\". Where it bottoms has no band.");
  if (!trial.swaps.empty())
  {
    const auto cost = geometry_cost(trial.now, trial.changed);
    answer.geometry = geometry_lines(cost, options.lengths);
    answer.sentence = sentence_of(trial, answer.rows, cost, options.lengths);
    weigh(answer, cost, options.lengths);
    answer.nothing = nothing_words(trial);
  }
  if (trial.range)
  {
    answer.range = range_answer(*trial.range, result.range);
    if (answer.sentence.empty() && !answer.range->sentences.empty())
      answer.sentence = fmt::format("Over {}, {}", answer.range->quantity, answer.range->sentences.front());
  }
  // The last point of a range has the swaps too.
  answer.cautions = change_cautions(trial.now, trial.range ? trial.range->cases.back() : trial.changed);
  for (const auto &caution : cautions({&trial.now, &trial.changed}))
    answer.cautions.push_back(caution);
  return answer;
}
} // namespace solemech::tools
