// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/compare_text.h"

#include "solver/results/catalogue.h"
#include "tools/answers/compare/reading_words.h"
#include "tools/answers/compare/view.h"
#include "tools/output/results/cautions.h"
#include "tools/output/results/energy_text.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
constexpr std::size_t change_width = 32, number_width = 16;

class Text
{
public:
  explicit Text(const SummaryOptions &options)
    : options_(options), width_(static_cast<std::size_t>(std::max(options.width, 60)))
  {
  }

  void line(const std::string &text) { text_ += text.substr(0, text.find_last_not_of(' ') + 1) + "\n"; }
  /// The first line starts with `first`, every other one with `indent`.
  void paragraph(const std::string &text, const std::string &indent, const std::string &first = "")
  {
    line(first + wrapped(text, width_ - first.size(), indent));
  }
  void        heading(const std::string &text) { text_ += "\n" + bold(text, options_) + "\n"; }
  std::size_t width() const { return width_; }
  std::string take() { return std::move(text_); }

private:
  const SummaryOptions &options_;
  std::size_t           width_;
  std::string           text_;
};

void what_differs(Text &text, const report::Comparison &view, const ComparedPair &pair)
{
  if (view.differences.empty())
    return;
  text.heading(fmt::format("what differs, {} -> {}", pair.a, pair.b));
  std::size_t width = 0;
  for (const auto &difference : view.differences)
    width = std::max(width, columns(difference.what));
  for (const auto &difference : view.differences)
    text.paragraph(difference.from + " -> " + difference.to, std::string(width + 6, ' '),
                   "  " + pad_right(difference.what, width) + "  ");
}

std::string with_digits(double value, int digits)
{
  return fmt::format("{:.{}f}", value, digits);
}

/// Width of the columns under the two labels.
std::size_t label_columns(const ComparedPair &pair)
{
  return std::max({number_width, columns(pair.a) + 2, columns(pair.b) + 2});
}

void readings(Text &text, const report::Comparison &view, const ComparedPair &pair, bool details)
{
  text.heading("readings");
  const std::size_t width = label_columns(pair);
  text.line("  " + pad_right("", 22) + pad_left(pair.a, width) + pad_left(pair.b, width) +
            pad_left("difference", number_width));
  for (const auto &reading : view.readings)
  {
    if (!details && (reading.name == solver::catalogue.return_by_speed ||
                     reading.name == solver::catalogue.return_by_loop))
      continue;
    text.line("  " + pad_right(reading.label + (reading.unit.empty() ? "" : ", " + reading.unit), 22) +
              pad_left(with_digits(reading.from, reading.digits), width) +
              pad_left(with_digits(reading.to, reading.digits), width) +
              pad_left(fmt::format("{:+.{}f}", reading.to - reading.from, reading.digits), number_width) +
              "  " + reading.verdict);
  }
}

/// A band as people read it: never nothing.
std::string band_text(double band, int digits)
{
  const double step = std::pow(10.0, -digits);
  return with_digits(std::max(1.0, std::round(band / step)) * step, digits);
}

std::string banded_text(double value, double band, int digits)
{
  if (value == 0 && band == 0)
    return "0";
  return std::abs(value) <= band ? "cannot tell"
                                 : fmt::format("{:+.{}f} ±{}", value, digits, band_text(band, digits));
}

/// One row a change, one column a reading.
void shares(Text &text, const report::Comparison &view, const ComparedPair &pair, bool details)
{
  if (view.shares.empty() || view.shares.front().rows.empty())
    return;
  text.heading(fmt::format("why: share of each change, averaged over every order of change ({})", view.runs));
  std::vector<const report::ShareTable *> tables;
  for (const auto &table : view.shares)
    if (tables.size() < 3 || details)
      tables.push_back(&table);
  const int   more_digits = details ? 1 : 0;
  bool        any_marked = false;
  std::string head = "  " + pad_right("", change_width);
  for (const auto *table : tables)
    head += pad_left(table->label + " " + table->unit, number_width + 2);
  text.line(head);
  for (std::size_t i = 0; i < tables.front()->rows.size(); ++i)
  {
    const bool marked = tables.front()->rows[i].verdict.starts_with("together");
    any_marked = any_marked || marked;
    std::string row = "  " + pad_right(tables.front()->rows[i].change + (marked ? " *" : ""), change_width);
    for (const auto *table : tables)
      row += pad_left(banded_text(table->rows[i].share, table->rows[i].band, table->digits + more_digits),
                      number_width + 2);
    text.line(row);
    if (const std::string remark = change_remark(pair.explanation, i); !remark.empty())
      text.paragraph("(" + remark + ")", "       ", "      ");
  }
  std::string sum = "  " + pad_right("together", change_width);
  for (const auto *table : tables)
    sum += pad_left(banded_text(table->total, table->band, table->digits + more_digits), number_width + 2);
  text.line(sum);
  if (any_marked)
    text.paragraph("matters only together with another change, see below", "    ", "  * ");
}

/// What changes do together beyond their effects one by one: for people where a share is marked for it, with
/// details all of them.
void interactions(Text &text, const report::Comparison &view, const ComparedPair &pair, bool details)
{
  if (view.shares.empty())
    return;
  const ReadingSplit &split = pair.explanation.splits.front();
  const auto         &table = view.shares.front();
  bool                any = false;
  for (std::size_t k = 0; k < table.interactions.size(); ++k)
  {
    const auto &of_two = table.interactions[k];
    const auto  is_marking = [&](std::size_t change) {
      return split.shares[change].is_told() && entangled(split, change) == &split.interactions[k];
    };
    if (!details && !is_marking(split.interactions[k].first) && !is_marking(split.interactions[k].second))
      continue;
    if (!any)
      text.line(fmt::format("  act on each other, {}{}; included in the shares:", table.label,
                            table.unit.empty() ? "" : " in " + table.unit));
    any = true;
    text.paragraph(fmt::format("{} with {}: {} more than their separate effects", of_two.changes[0],
                               of_two.changes[1],
                               banded_text(of_two.value, of_two.band, table.digits + (details ? 1 : 0))),
                   "      ", "    ");
  }
}

void parts(Text &text, const report::Comparison &view, const ComparedPair &pair)
{
  if (view.parts.empty())
    return;
  text.heading("where the energy went, % of the energy put in");
  const std::size_t width = label_columns(pair);
  text.line("  " + pad_right("", 22) + pad_left(pair.a, width) + pad_left(pair.b, width) +
            pad_left("difference", number_width));
  for (const auto &part : view.parts)
    text.line("  " + pad_right(part.name, 22) +
              pad_left(part.from == 0 ? "-" : with_digits(part.from, 1), width) +
              pad_left(part.to == 0 ? "-" : with_digits(part.to, 1), width) +
              pad_left(fmt::format("{:+.1f}", part.to - part.from), number_width));
}

void headline(Text &text, const report::Comparison &view, const ComparedPair &pair)
{
  text.paragraph(view.sentence, "");
  if (!view.shares.empty() && pair.explanation.splits.front().total.is_told())
    text.paragraph(view.shares.front().sentence, "");
  for (const std::string &sentence : view.sentences)
    text.paragraph(sentence, "");
}

void tables(Text &text, const report::Comparison &view, const ComparedPair &pair,
            const SummaryOptions &options)
{
  what_differs(text, view, pair);
  readings(text, view, pair, options.details);
  if (pair.explanation.plan.changes.empty())
    return;
  shares(text, view, pair, options.details);
  interactions(text, view, pair, options.details);
  if (!pair.explanation.no_shares.empty())
    text.paragraph("The shares cannot be determined: " + pair.explanation.no_shares + ".", "  ", "  ");
  if (!view.rule.empty())
    text.paragraph(view.rule, "  ", "  ");
  constexpr std::size_t n_shown = 4;
  for (std::size_t i = 0; i < view.impossible.size() && (i < n_shown || options.details); ++i)
    text.paragraph("not run: " + view.impossible[i], "    ", "  ");
  if (view.impossible.size() > n_shown && !options.details)
    text.line(fmt::format("  and {} more mixtures that cannot be built or run (listed with --details)",
                          view.impossible.size() - n_shown));
  parts(text, view, pair);
}
} // namespace

std::string comparison_headline(const ComparedPair &pair, const SummaryOptions &options)
{
  Text text(options);
  headline(text, comparison_view(pair, 0, 1), pair);
  return text.take();
}

std::string comparison_text(const std::vector<ComparedPair> &pairs, const SummaryOptions &options,
                            bool with_headlines)
{
  Text                              text(options);
  LabelledCases                     labelled;
  std::vector<const solver::Case *> setups;
  for (const ComparedPair &pair : pairs)
  {
    if (&pair != &pairs.front())
      text.line("\n" + std::string(std::min<std::size_t>(text.width(), 72), '-'));
    const auto view = comparison_view(pair, 0, 1);
    if (with_headlines)
      headline(text, view, pair);
    tables(text, view, pair, options);
    for (const auto &[label, setup] :
         {std::pair{pair.a, &pair.explanation.plan.a}, std::pair{pair.b, &pair.explanation.plan.b}})
    {
      setups.push_back(setup);
      labelled.emplace_back(label, setup);
    }
  }
  const bool has_doubts = std::any_of(pairs.begin(), pairs.end(), [](const ComparedPair &pair) {
    return pair.explanation.has_doubts && pair.explanation.no_doubt_bands.empty();
  });
  text.line("");
  text.paragraph(
    has_doubts
      ? "± is a 90 % band: what the readings of a settled bench sheet left open, plus the numerical error."
      : "± is the numerical error, from runs at two levels of mesh and time step. Uncertainty in materials, "
        "thickness readings and the rig comes on top.",
    "  ");
  for (const std::string &caution : cautions(setups))
    text.paragraph("Caution: " + caution, "  ");
  for (const std::string &sentence : invented_sentences(labelled))
    text.paragraph(sentence, "  ");
  return text.take();
}
} // namespace solemech::tools
