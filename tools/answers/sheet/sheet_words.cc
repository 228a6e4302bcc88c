// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/sheet_words.h"

#include "materials/pad_hardness.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
std::string fit_word(const MaterialFit &fit)
{
  return fit.misfit <= 1 ? "matches" : fit.misfit <= 2 ? "poor" : "does not match";
}

constexpr int most_fits = 3; ///< shown for a layer
} // namespace

std::vector<ComparedRow> reading_rows_of(const SettledSheet &answer)
{
  std::vector<ComparedRow> rows;
  for (std::size_t i = 0; i < answer.n_readings; ++i)
  {
    const auto &seen = answer.settled.observations[i];
    const auto &probe = answer.probes[i];
    const auto  text = [&](const settle::Band &band) { return band_text(band, probe.dimension, probe.unit); };
    rows.push_back({seen.name, text(seen.measured), text(seen.without_it), text(seen.predicted),
                    std::string(settle::verdict_words(seen.verdict)) + (seen.held_out ? " (held out)" : "") +
                      (seen.weight < 0.99 ? " (wild: counts less)" : "")});
  }
  return rows;
}

namespace
{
const UnknownMaterial *material_of(const Sheet &sheet, const Unknown &unknown)
{
  for (const auto &material : sheet.materials)
    if (material.name == unknown.target)
      return &material;
  return nullptr;
}

/// A stiffness as the list of materials has it: Young's modulus in a slow, small test.
std::string modulus_text(const Sheet &sheet, const Unknown &unknown, const settle::Band &band)
{
  const auto at = [&](double value) {
    auto setup = sheet.setup;
    set_unknown(setup, unknown, value);
    for (const auto &layer : setup.layers)
      for (const auto *material : {&layer.material, layer.ring ? &*layer.ring : nullptr})
        if (material && material->name == unknown.target)
          return slow_stiffness(*material).youngs_modulus / 1e6;
    return value / 1e6;
  };
  return fmt::format("{:.2f} MPa ±{:.2f}", at(band.value), 0.5 * (at(band.high) - at(band.low)));
}

/// Name and texts of an unknown as people know it from elsewhere.
SettledRow unknown_row(const Sheet &sheet, const Unknown &unknown, const settle::SettledParameter &parameter)
{
  const auto *material = material_of(sheet, unknown);
  if (material && unknown.kind == DoubtedNumber::modulus)
    return {material->layer + " modulus, slow", modulus_text(sheet, unknown, parameter.band),
            modulus_text(sheet, unknown, parameter.before), ""};
  const auto name = material && unknown.kind == DoubtedNumber::loss
                      ? fmt::format("{} (1: as {})", parameter.name, material->start.name)
                      : parameter.name;
  return {name, band_text(parameter.band, unknown.dimension), band_text(parameter.before, unknown.dimension),
          ""};
}
} // namespace

std::vector<SettledRow> settled_rows(const Sheet &sheet, const SettledSheet &answer, Numbers which)
{
  const auto             &settled = answer.settled;
  std::vector<SettledRow> rows;
  for (std::size_t i = answer.n_readings; i < answer.probes.size() && which != Numbers::of_rod; ++i)
  {
    const auto &seen = settled.observations[i];
    const auto &probe = answer.probes[i];
    rows.push_back({probe.part.empty() ? probe.name : probe.part + " returns",
                    band_text(seen.predicted, probe.dimension, probe.unit),
                    band_text(seen.before, probe.dimension, probe.unit), ""});
  }
  for (std::size_t k = 0; k < settled.parameters.size(); ++k)
  {
    const auto &parameter = settled.parameters[k];
    if (which != Numbers::all && is_of_rig(sheet.unknowns[k].kind) != (which == Numbers::of_rod))
      continue;
    if (sheet.unknowns[k].parameter.minor && !parameter.settled && !parameter.at_limit)
      continue; // the readings say no more of it than the instrument did
    auto row = unknown_row(sheet, sheet.unknowns[k], parameter);
    row.remark = std::string(parameter.settled ? "" : "  not pinned down") +
                 (parameter.at_limit ? "  at its limit" : "");
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<FitRow> fit_rows(const SettledSheet &answer)
{
  std::vector<FitRow> rows;
  int                 shown = 0;
  for (const auto &fit : answer.fits)
  {
    shown = !rows.empty() && rows.back().layer == fit.layer ? shown + 1 : 1;
    if (shown <= most_fits)
      rows.push_back({fit.layer, fit.name, fmt::format("{:.1f}", fit.misfit),
                      fit_word(fit) + (fit.misfit > 1 ? "; largest miss: " + fit.worst : "")});
  }
  return rows;
}

std::vector<std::string> fit_remarks(const settle::Settled &settled)
{
  std::vector<std::string> remarks;
  for (const auto &open : settled.open)
    remarks.push_back(open.words);
  remarks.insert(remarks.end(), settled.remarks.begin(), settled.remarks.end());
  if (!settled.converged)
    remarks.push_back("the fit did not finish: " + settled.why_not);
  return remarks;
}

std::vector<std::string> questions_to_person(const Sheet &sheet)
{
  std::vector<std::string> questions;
  for (const auto &question : sheet.asked)
    questions.push_back("please check: " + question);
  return questions;
}

std::vector<std::string> sheet_remarks(const Sheet &sheet)
{
  std::vector<std::string> remarks = sheet.kept;
  for (const auto &assumed : sheet.assumptions)
    remarks.push_back("assumed: " + assumed);
  return remarks;
}

std::vector<std::string> settled_remarks(const Sheet &sheet, const SettledSheet &answer)
{
  std::vector<std::string> once;
  for (auto &&remarks : {questions_to_person(sheet), fit_remarks(answer.settled), sheet_remarks(sheet)})
    for (const auto &remark : remarks)
      if (std::find(once.begin(), once.end(), remark) == once.end())
        once.push_back(remark);
  return once;
}

std::string readings_table(const std::vector<ComparedRow> &rows, const std::string &heading)
{
  if (rows.empty())
    return "";
  std::size_t widest = 24;
  for (const auto &row : rows)
    widest = std::max(widest, row.name.size());
  const auto line = [&](const ComparedRow &row) {
    return fmt::format("  {:<{}}  {:<19}{:<21}{:<19}{}\n", row.name, widest, row.measured, row.without_it,
                       row.settled, row.verdict);
  };
  auto text = line({heading, "measured", "from the others", "fitted to all", "verdict"});
  for (const auto &row : rows)
    text += line(row);
  return text;
}

std::string numbers_text(const std::vector<SettledRow> &rows, bool is_predicted)
{
  std::string text;
  for (const auto &row : rows)
    text += is_predicted ? fmt::format("  {:<30}{}\n", row.name, row.now)
                         : fmt::format("  {:<30}{} (was {}){}\n", row.name, row.now, row.before, row.remark);
  return text;
}

std::string fits_text(const SettledSheet &answer)
{
  const auto  fits = fit_rows(answer);
  std::string text;
  if (!fits.empty())
    text = "\n  library materials that could be in its place (misfit in units of ±; 1 or less matches)\n";
  for (const auto &fit : fits)
    text += fmt::format("  {:<12}{:<22}{:>5}  {}\n", fit.layer, fit.material, fit.misfit, fit.word);
  return text;
}

std::string settled_text(const Sheet &sheet, const SettledSheet &answer)
{
  std::string text =
    fmt::format("bench sheet {}{}{}; ± is a 90 % band\n\n", sheet.file.label,
                sheet.pair.empty() ? "" : ", " + sheet.pair, sheet.part.empty() ? "" : ", " + sheet.part);
  const auto rows = reading_rows_of(answer);
  const bool predicted = is_prediction(sheet);
  if (predicted)
    text += fmt::format("  {}\n", prediction_words);
  text += readings_table(rows, "your readings");
  if (!rows.empty())
    text += verdict_words;
  text += predicted ? "\n  predicted\n" : "\n  settled with your readings\n";
  text += numbers_text(settled_rows(sheet, answer), predicted) + fits_text(answer) + "\n";
  for (const auto &remark : settled_remarks(sheet, answer))
    text += "  " + remark + "\n";
  return text;
}
} // namespace solemech::tools
