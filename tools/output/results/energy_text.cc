// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/energy_text.h"

#include "tools/output/results/energy_picture.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
char fill_of(ShareKind kind)
{
  switch (kind)
  {
  case ShareKind::returned:
    return '#';
  case ShareKind::lost_in_part:
    return '=';
  case ShareKind::lost_in_guide:
    return '-';
  case ShareKind::left_in_stack:
    return ':';
  }
  return '=';
}

/// Share names of all runs in one order, and the energy of each run under that name.
struct EnergyTable
{
  std::vector<EnergyPicture>                     pictures;
  std::vector<std::pair<std::string, ShareKind>> rows;

  explicit EnergyTable(const std::vector<Run> &runs)
  {
    for (const auto &run : runs)
      pictures.push_back(energy_picture(run.setup, run.result));
    for (const auto kind :
         {ShareKind::returned, ShareKind::lost_in_part, ShareKind::lost_in_guide, ShareKind::left_in_stack})
      for (const auto &picture : pictures)
        for (const auto &part : picture.shares)
          if (const std::pair entry(part.name, part.kind);
              part.kind == kind && std::find(rows.begin(), rows.end(), entry) == rows.end())
            rows.push_back(entry);
  }

  /// Share of one run, or a negative number when it has no such part.
  double share(const EnergyPicture &picture, const std::pair<std::string, ShareKind> &row) const
  {
    for (const auto &part : picture.shares)
      if (part.name == row.first && part.kind == row.second)
        return picture.share(part);
    return -1;
  }

  bool empty() const { return rows.empty(); }
};

/// Of the run whose shares are known worst.
std::string error_text(const EnergyTable &table)
{
  return share_error_words(*std::max_element(
    table.pictures.begin(), table.pictures.end(),
    [](const EnergyPicture &a, const EnergyPicture &b) { return a.share_error() < b.share_error(); }));
}

std::string accounted_text(const EnergyTable &table)
{
  constexpr std::size_t    most_named = 3;
  std::vector<std::string> sums;
  for (const auto &picture : table.pictures)
    if (picture.input > 0)
      sums.push_back(fmt::format("{:.1f} %", 100 * picture.accounted()));
  if (sums.size() > most_named)
  {
    const auto [least, most] =
      std::minmax_element(table.pictures.begin(), table.pictures.end(),
                          [](const auto &a, const auto &b) { return a.accounted() < b.accounted(); });
    return fmt::format("  accounts for {:.1f} % to {:.1f} %{}\n", 100 * least->accounted(),
                       100 * most->accounted(), error_text(table));
  }
  if (std::all_of(sums.begin(), sums.end(), [&](const auto &sum) { return sum == sums.front(); }))
    sums.resize(std::min<std::size_t>(sums.size(), 1));
  return "  accounts for " + listed(sums) + error_text(table) + "\n";
}

} // namespace

std::string bold(const std::string &text, const SummaryOptions &options)
{
  return options.emphasis ? "\033[1m" + text + "\033[0m" : text;
}

std::string energy_bars(const std::vector<Run> &runs, const SummaryOptions &options)
{
  const EnergyTable table(runs);
  if (table.empty())
    return "";
  const bool  drop = rigs::kind_of(runs[0].setup).energy_basis() == rigs::EnergyBasis::blow;
  std::string text =
    "\n" +
    bold(drop ? "where 100 % of the drop energy went" : "where 100 % of the energy put in went", options);
  std::vector<std::string> inputs;
  for (const auto &picture : table.pictures)
    inputs.push_back(fmt::format("{:.3g} J", picture.input) +
                     (picture.held_before > 0
                        ? fmt::format(", {:.3g} J of it in the leaking unit before", picture.held_before)
                        : ""));
  inputs.erase(std::unique(inputs.begin(), inputs.end()), inputs.end());
  text += "  (" + listed(inputs) + ")\n";

  for (const auto &row : table.rows)
  {
    std::string line = "  " + pad_right(row.first, label_width - 2);
    for (const auto &picture : table.pictures)
    {
      const double share = table.share(picture, row);
      std::string  cell = "-";
      if (share >= 0)
      {
        const std::string number = share > 0 && share < 0.005 && !options.details
                                     ? "<1"
                                     : fmt::format("{:.{}f}", 100 * share, options.details ? 1 : 0);
        cell = bar(share, bar_length, fill_of(row.second)) + pad_left(number, 6);
      }
      else
        cell = pad_right("-", bar_length + 6);
      line += "  " + pad_left(cell, cell_width - 2);
    }
    text += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
  }
  return text + accounted_text(table);
}

std::string energy_rows(const std::vector<Run> &runs, const SummaryOptions &options)
{
  const EnergyTable table(runs);
  if (table.empty())
    return "";
  std::size_t run_width = 3;
  for (const auto &run : runs)
    run_width = std::max(run_width, columns(run.label));

  std::vector<std::pair<std::string, ShareKind>> shown;
  bool                                           other = false;
  for (const auto &row : table.rows)
  {
    double greatest = 0;
    for (const auto &picture : table.pictures)
      greatest = std::max(greatest, table.share(picture, row));
    if (greatest >= 0.02 || row.second != ShareKind::lost_in_part)
      shown.push_back(row);
    else
      other = true;
  }
  std::string text = "\n" + bold("where 100 % of the energy went", options) + "\n";
  std::string head = "  " + pad_right("run", run_width);
  for (const auto &row : shown)
    head += "  " + pad_left(row.first, 5);
  text += head + (other ? "  other\n" : "\n");
  for (std::size_t i = 0; i < runs.size(); ++i)
  {
    const auto &picture = table.pictures[i];
    std::string line = "  " + pad_right(runs[i].label, run_width);
    double      rest = picture.accounted();
    for (const auto &row : shown)
    {
      const double share = table.share(picture, row);
      rest -= std::max(share, 0.);
      line += "  " + pad_left(share < 0 ? "-" : fmt::format("{:.0f}", 100 * share),
                              std::max<std::size_t>(5, columns(row.first)));
    }
    text += line + (other ? fmt::format("  {:5.1f}\n", 100 * std::max(rest, 0.)) : "\n");
  }
  return text + accounted_text(table);
}
} // namespace solemech::tools
