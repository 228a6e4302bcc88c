// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/summary.h"

#include "solver/results/catalogue.h"
#include "solver/results/uncertainty.h"
#include "tools/output/results/air_text.h"
#include "tools/output/results/cautions.h"
#include "tools/output/results/energy_text.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace solemech::tools
{
namespace
{
bool touches(const solver::Warning &warning, const ReadingRow &row)
{
  return std::find(row.readings.begin(), row.readings.end(), warning.reading) != row.readings.end();
}

/// Warnings whose reading no row shows; they are printed below the tables.
bool is_shown_beside_a_row(const solver::Warning &warning)
{
  return std::any_of(reading_rows().begin(), reading_rows().end(),
                     [&](const ReadingRow &row) { return touches(warning, row); });
}

std::string rig_lines(const std::vector<Run> &runs, const SummaryOptions &options)
{
  std::vector<std::string> texts;
  for (const auto &run : runs)
    texts.push_back(rig_text(run.setup, options.lengths));
  const auto  width = static_cast<std::size_t>(options.width);
  std::string result;
  const bool  same =
    std::all_of(texts.begin(), texts.end(), [&](const auto &text) { return text == texts[0]; });
  if (same)
    return wrapped("rig: " + texts[0], width, "     ") + "\n";
  for (std::size_t i = 0; i < texts.size(); ++i)
    result += wrapped("rig of " + runs[i].label + ": " + texts[i], width, "     ") + "\n";
  return result;
}

/// Above a table with one row a run: the rig, which may differ from row to row.
std::string table_rig_lines(const std::vector<Run> &runs, const SummaryOptions &options)
{
  const std::string first = rig_text(runs[0].setup, options.lengths);
  const bool        same = std::all_of(
           runs.begin(), runs.end(), [&](const Run &run) { return rig_text(run.setup, options.lengths) == first; });
  return wrapped((same ? "rig: " : "rig, first run: ") + first, static_cast<std::size_t>(options.width),
                 "     ") +
         "\n";
}

/// What the command line changed, each once: without it two summaries of one case look alike.
std::string changed_lines(const std::vector<Run> &runs, const SummaryOptions &options)
{
  std::vector<std::string> told;
  std::string              text;
  for (const auto &run : runs)
    for (const auto &change : run.changes)
      if (std::find(told.begin(), told.end(), change) == told.end())
      {
        told.push_back(change);
        text += wrapped("changed: " + change, static_cast<std::size_t>(options.width), "     ") + "\n";
      }
  return text;
}

/// Text right of a row when there is room for it, else on lines of its own under the row.
std::string beside(const std::string &row, const std::string &note, const SummaryOptions &options)
{
  const auto        width = static_cast<std::size_t>(options.width);
  const std::string arrow = "<- " + note;
  if (columns(row) + 2 + columns(arrow) <= width)
    return row + "  " + arrow + "\n";
  return row + "\n" + std::string(label_width, ' ') +
         wrapped("^ " + note, width - label_width, std::string(label_width + 2, ' ')) + "\n";
}

std::string side_by_side(const std::vector<Run> &runs, const SummaryOptions &options)
{
  std::string text = std::string(label_width, ' ');
  for (const auto &run : runs)
    text += pad_left(run.label, cell_width);
  text = bold(text, options) + "\n";
  bool any_marked = false;

  for (const auto &row : reading_rows())
  {
    if (row.only_details && !options.details)
      continue;
    std::string              line = "  " + pad_right(row.heading, label_width - 2);
    std::vector<std::string> notes;
    bool                     any = false;
    for (const auto &run : runs)
    {
      std::string cell = row.cell(run, options);
      any = any || !cell.empty();
      bool marked = false;
      for (const auto &warning : run.result.warnings)
        if (touches(warning, row))
        {
          marked = any_marked = true;
          notes.push_back((runs.size() > 1 ? run.label + ": " : "") + warning.text);
        }
      // One column stays free for the mark, so that numbers align with and without it.
      line +=
        pad_left((cell.empty() ? "-" : cell) + (marked ? "!" : " "), cell_width + (&run == &runs[0] ? 1 : 0));
    }
    if (!any)
      continue;
    if (notes.empty())
      text += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
    for (const auto &note : notes)
      text += beside(&note == &notes[0] ? line : std::string(), note, options);
  }
  if (any_marked)
    text += "  ! see the note marked <- or ^\n";
  return text;
}

/// One row per run: what is varied, the readings, the mark of a warning.
std::string one_row_a_run(const std::vector<Run> &runs, const SummaryOptions &options, const Series *series,
                          std::vector<std::string> &footnotes)
{
  std::vector<std::vector<std::string>> table(runs.size() + 1);
  const auto                            add_column = [&](const std::string &heading, const auto &cell) {
    table[0].push_back(heading);
    for (std::size_t i = 0; i < runs.size(); ++i)
      table[i + 1].push_back(cell(i));
  };
  add_column("run", [&](std::size_t i) { return runs[i].label; });
  if (series)
    add_column(series->quantity + " " + series->unit,
               [&](std::size_t i) { return fmt::format("{:.4g}", series->values.at(i)); });
  for (const auto &row : reading_rows())
    if (row.short_cell && std::any_of(runs.begin(), runs.end(),
                                      [&](const Run &run) { return !row.short_cell(run, options).empty(); }))
    {
      std::string heading = row.short_heading;
      if (row.short_heading == "compr." || row.short_heading == "at peak")
        heading += std::string(" ") + length_unit(options.lengths);
      else if (heading.ends_with(" mm"))
        heading.replace(heading.size() - 2, 2, length_unit(options.lengths));
      add_column(heading, [&](std::size_t i) {
        std::string cell = row.short_cell(runs[i], options);
        for (const auto &warning : runs[i].result.warnings)
          if (touches(warning, row))
          {
            auto note = std::find(footnotes.begin(), footnotes.end(), warning.text);
            if (note == footnotes.end())
              note = footnotes.insert(footnotes.end(), warning.text);
            cell += fmt::format(" [{}]", note - footnotes.begin() + 1);
          }
        return cell.empty() ? std::string("-") : cell;
      });
    }

  std::vector<std::size_t> widths(table[0].size());
  for (const auto &line : table)
    for (std::size_t c = 0; c < line.size(); ++c)
      widths[c] = std::max(widths[c], columns(line[c]));
  std::string text;
  for (const auto &line : table)
  {
    std::string row = "  " + pad_right(line[0], widths[0]);
    for (std::size_t c = 1; c < line.size(); ++c)
      row += "  " + pad_left(line[c], widths[c]);
    text += (&line == &table[0] ? bold(row, options) : row) + "\n";
  }
  return text;
}

/// Readings whose accuracy is told, in this order.
std::vector<const solver::ReadingKind *> told_readings()
{
  return solver::in_order([](const solver::ReadingKind &kind) { return kind.main.told; });
}

/// "rebound ±0.4 %, peak force ±0.3 %": the greatest of the runs, of each headline reading that has one.
std::vector<std::string> headline_texts(const std::vector<Run> &runs,
                                        double (*half_band)(const solver::Reading &))
{
  std::vector<std::string> texts;
  for (const auto *kind : told_readings())
  {
    double greatest = -1;
    for (const auto &run : runs)
      if (const auto *reading = run.result.find(*kind);
          reading && half_band(*reading) >= 0 && reading->value != 0)
        greatest = std::max(greatest, half_band(*reading) / std::abs(reading->value));
    if (greatest >= 0)
      texts.push_back(fmt::format("{} ±{:.1f} %", kind->main.words, std::max(100 * greatest, 0.1)));
  }
  return texts;
}

/// "grip may be -38 % to +50 % off, because of the band of the friction of this court": the widest of the
/// runs.
std::vector<std::string> input_texts(const std::vector<Run> &runs)
{
  std::vector<std::string> texts;
  for (const auto *kind : told_readings())
  {
    double      low = 0, high = 0;
    const char *why = nullptr;
    for (const auto &run : runs)
      if (const auto range = rigs::input_range(run, *kind))
      {
        const double value = run.result.find(*kind)->value;
        low = std::min(low, range->low / value - 1), high = std::max(high, range->high / value - 1),
        why = range->why;
      }
    if (why)
      texts.push_back(fmt::format("{} may be {:+.0f} % to {:+.0f} % off, because of the band of {}",
                                  kind->main.words, 100 * low, 100 * high, why));
  }
  return texts;
}

/// How good the numbers are: what the inputs leave open, the greatest estimated error of each headline
/// reading, and what a bench sheet left open.
std::string accuracy_line(const std::vector<Run> &runs, const SummaryOptions &options)
{
  const auto errors = headline_texts(runs, [](const solver::Reading &reading) { return reading.error; });
  const auto inputs = input_texts(runs);
  const std::string numbers = listed(errors) + " of the value, estimated from mesh and time step.";
  std::string       text = "How good: ";
  if (!inputs.empty())
    text += fmt::format("{}.{}", fmt::join(inputs, "; "),
                        errors.empty() ? "" : " The calculation alone: " + numbers);
  else
    text += errors.empty()
              ? "the numerical error of this run was not estimated."
              : numbers + " Uncertainty in materials, thickness readings and the rig comes on top.";
  text = wrapped(text, static_cast<std::size_t>(options.width), "  ") + "\n";
  if (const auto band = band_sentence(runs); !band.empty())
    text += wrapped(band, static_cast<std::size_t>(options.width), "  ") + "\n";
  return text;
}

/// The load at which the fibres have gone slack all over, spread over the whole face of the unit.
std::string gives_way_text(const solver::ChamberFacts &chamber)
{
  return chamber.threshold_load > 0
           ? fmt::format("gives way above {:.0f} N on its whole face", chamber.threshold_load)
           : "gives way at once";
}

std::string fact_lines(const std::vector<Run> &runs)
{
  std::string text = "\nsolver\n";
  for (const auto &run : runs)
  {
    const auto &facts = run.result.facts;
    text +=
      fmt::format("  {}: {} unknowns, {} cells, {} steps ({} repeated), {} iterations, {:.2f} s; ledger: "
                  "numerical {:.3f} %, residual {:.4f} %\n",
                  run.label, facts.unknowns, facts.cells, facts.steps, facts.repeated_steps, facts.iterations,
                  facts.seconds, 100 * facts.ledger_numerical, 100 * facts.ledger_residual);
    if (facts.descents > 0)
      text += fmt::format("  {}: in {} steps a surface creased or a part tipped over, and the stack fell "
                          "into another state of rest\n",
                          run.label, facts.descents);
    if (facts.given_up > 0)
      text += fmt::format("  {}: {} of its runs failed and were taken again with another mesh\n", run.label,
                          facts.given_up);
    for (const auto &chamber : run.result.chambers)
      text +=
        fmt::format("  {}, air unit in {}: {}, {:.1f} cm3, bulge {:.2f} mm, fibre tension {:.2f} N, "
                    "{}, {}\n",
                    run.label, chamber.layer, air_text(run.setup, chamber), chamber.volume * 1e6,
                    chamber.bulge * 1e3, chamber.fibre_tension, gives_way_text(chamber),
                    chamber.heat_time < 0 ? "no heat exchange"
                                          : fmt::format("heat time {:.3g} ms", chamber.heat_time * 1e3));
  }
  return text;
}

std::string invented_lines(const std::vector<Run> &runs, const SummaryOptions &options)
{
  LabelledCases cases;
  for (const auto &run : runs)
    cases.emplace_back(run.label, &run.setup);
  std::string text;
  for (const auto &sentence : invented_sentences(cases))
    text += wrapped(sentence, static_cast<std::size_t>(options.width), "  ") + "\n";
  return text;
}

/// Warnings and early stops of the runs that satisfy a condition, each text once with whom it holds for.
template <typename Condition>
std::string warning_lines(const std::vector<Run> &runs, const SummaryOptions &options, Condition is_told)
{
  std::map<std::string, std::vector<std::string>> general; // text -> labels of the runs it holds for
  for (const auto &run : runs)
  {
    for (const auto &warning : run.result.warnings)
      if (is_told(warning))
        general[warning.text].push_back(run.label);
    if (!run.result.complete)
      general["STOPPED EARLY: " + run.result.stop_reason].push_back(run.label);
  }
  std::string text;
  for (const auto &[note, labels] : general)
    text +=
      wrapped("Note, " + (labels.size() == runs.size() && runs.size() > 2 ? "all runs" : listed(labels)) +
                ": " + note,
              static_cast<std::size_t>(options.width), "  ") +
      "\n";
  return text;
}

std::string caution_lines(const std::vector<Run> &runs, const SummaryOptions &options)
{
  std::vector<const solver::Case *> setups;
  for (const auto &run : runs)
    setups.push_back(&run.setup);
  std::string text;
  for (const auto &caution : cautions(setups))
    text += wrapped("Caution: " + caution, static_cast<std::size_t>(options.width), "  ") + "\n";
  return text + invented_lines(runs, options);
}

std::string closing_lines(const std::vector<Run> &runs, const SummaryOptions &options,
                          const std::vector<std::string> &footnotes)
{
  std::string text;
  for (std::size_t i = 0; i < footnotes.size(); ++i)
    text += wrapped(fmt::format("  [{}] {}", i + 1, footnotes[i]), static_cast<std::size_t>(options.width),
                    "      ") +
            "\n";
  return text +
         warning_lines(runs, options, [](const auto &warning) { return !is_shown_beside_a_row(warning); }) +
         caution_lines(runs, options);
}
} // namespace

std::string band_sentence(const std::vector<Run> &runs)
{
  const auto bands = headline_texts(runs, [](const solver::Reading &reading) {
    return reading.doubt() < 0 ? -1.0 : solver::uncertainty(reading);
  });
  return bands.empty() ? ""
                       : "Band: " + listed(bands) +
                           " of the value is a 90 % band: what the bench sheet left open about the stack, "
                           "plus the numerical error.";
}

std::string warnings_text(const std::vector<Run> &runs, const SummaryOptions &given)
{
  SummaryOptions options = given;
  options.width = std::max(options.width, 60);
  std::string text;
  for (const auto &run : runs)
    for (const auto &row : reading_rows())
      if (row.heading == "bottoming")
        if (const auto cell = row.cell(run, options); !cell.empty())
          text += wrapped(fmt::format("Bottoming{}: {}", runs.size() > 1 ? ", " + run.label : "", cell),
                          static_cast<std::size_t>(options.width), "  ") +
                  "\n";
  return text + warning_lines(runs, options, [](const auto &) { return true; });
}

std::string notes_text(const Run &run, const SummaryOptions &given)
{
  SummaryOptions options = given;
  options.width = std::max(options.width, 60);
  return warnings_text({run}, options) + caution_lines({run}, options);
}

std::string summary_text(const std::vector<Run> &runs, const SummaryOptions &given, const Series *series)
{
  if (runs.empty())
    return "";
  SummaryOptions options = given;
  options.width = std::max(options.width, 60);

  const std::size_t fitting = (static_cast<std::size_t>(options.width) - label_width) / cell_width;
  const bool        table = series || runs.size() > std::max<std::size_t>(fitting, 1);

  std::vector<std::string> footnotes;
  std::string              text;
  if (table)
    text = table_rig_lines(runs, options) + changed_lines(runs, options) + "\n" +
           one_row_a_run(runs, options, series, footnotes) + energy_rows(runs, options);
  else
    text = rig_lines(runs, options) + changed_lines(runs, options) + "\n" + side_by_side(runs, options) +
           energy_bars(runs, options);
  text += "\n" + accuracy_line(runs, options) + closing_lines(runs, options, footnotes);
  if (options.details)
    text += fact_lines(runs);
  return text;
}
} // namespace solemech::tools
