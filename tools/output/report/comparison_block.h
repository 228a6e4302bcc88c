// SPDX-License-Identifier: Apache-2.0
// Two runs of a page against each other: what differs, what it does to the readings, and the share of each
// change.
#pragma once

#include "tools/language/blocks.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
using blocks::block;
using blocks::field;

// Tables: a row is read as one line.
// clang-format off

struct Difference { std::string what, from, to; };
constexpr auto block_of(const Difference *)
{
  using S = Difference;
  return block<S>("Difference", "One entry that differs between two runs.",
    field(&S::what, "what"), field(&S::from, "from"), field(&S::to, "to"));
}

struct ComparedReading
{
  std::string name, label, unit;
  int         digits = 0;
  double      from = 0, to = 0, band = 0;
  std::string verdict;
};
constexpr auto block_of(const ComparedReading *)
{
  using S = ComparedReading;
  return block<S>("ComparedReading", "One reading of two runs.",
    field(&S::name, "name", "machine name"),
    field(&S::label, "label", "for people"),
    field(&S::unit, "unit", "display unit"),
    field(&S::digits, "digits", "decimals to print"),
    field(&S::from, "from", "in `unit`"),
    field(&S::to, "to", "in `unit`"),
    field(&S::band, "band", "the difference is good to ± this, in `unit`"),
    field(&S::verdict, "verdict", "\"higher\", \"cannot tell\", \"no difference\""));
}

struct ChangeShare
{
  std::string change;
  double      share = 0, band = 0;
  std::string verdict;
};
constexpr auto block_of(const ChangeShare *)
{
  using S = ChangeShare;
  return block<S>("ChangeShare", "What one change does to a reading, in the unit of its table.",
    field(&S::change, "change", "\"core -> pressurised unit\""),
    field(&S::share, "share"), field(&S::band, "band"), field(&S::verdict, "verdict"));
}

struct Interaction
{
  std::vector<std::string> changes;
  double                   value = 0, band = 0;
};
constexpr auto block_of(const Interaction *)
{
  using S = Interaction;
  return block<S>("Interaction", "What several changes do together beyond what each does on its own.",
    field(&S::changes, "changes"), field(&S::value, "value"), field(&S::band, "band"));
}

struct ShareTable
{
  std::string              reading, label, unit;
  int                      digits = 0;
  double                   total = 0, band = 0;
  std::vector<ChangeShare> rows;
  std::vector<Interaction> interactions;
  std::string              sentence;
};
constexpr auto block_of(const ShareTable *)
{
  using S = ShareTable;
  return block<S>("ShareTable", "How much of the difference of one reading each change makes.",
    field(&S::reading, "reading", "machine name"),
    field(&S::label, "label", "for people"),
    field(&S::unit, "unit", "display unit"),
    field(&S::digits, "digits", "decimals to print"),
    field(&S::total, "total", "what the shares add up to"),
    field(&S::band, "band"), field(&S::rows, "rows"), field(&S::interactions, "interactions"),
    field(&S::sentence, "sentence"));
}

struct ComparedPart
{
  std::string name;
  double      from = 0, to = 0;
};
constexpr auto block_of(const ComparedPart *)
{
  using S = ComparedPart;
  return block<S>("ComparedPart", "Energy turned into heat or kept by one part.",
    field(&S::name, "name"),
    field(&S::from, "from", "of the energy put in", "%"),
    field(&S::to, "to", "of the energy put in", "%"));
}

struct Comparison
{
  std::size_t                  from = 0, to = 1;
  std::string                  sentence;
  std::vector<std::string>     sentences;
  std::vector<Difference>      differences;
  std::vector<ComparedReading> readings;
  std::vector<ShareTable>      shares;
  std::vector<ComparedPart>    parts;
  std::vector<std::string>     impossible;
  std::string                  runs, rule;
};
constexpr auto block_of(const Comparison *)
{
  using S = Comparison;
  return block<S>("Comparison", "Run `to` against run `from`.",
    field(&S::from, "from", "number of a run of the page"),
    field(&S::to, "to", "number of a run of the page"),
    field(&S::sentence, "sentence"),
    field(&S::sentences, "sentences", "what each change does"),
    field(&S::differences, "differences"), field(&S::readings, "readings"), field(&S::shares, "shares"),
    field(&S::parts, "parts"),
    field(&S::impossible, "impossible", "mixtures that could not be built or run, with the reason"),
    field(&S::runs, "runs", "how many runs it took, in words"),
    field(&S::rule, "rule", "how mixtures are closed, in words"));
}
// clang-format on
} // namespace solemech::tools::report
