// SPDX-License-Identifier: Apache-2.0
// Readings, warnings and parts of a run as the page lists them, with how each number came about.
#pragma once

#include "tools/output/picture/looks.h"
#include "tools/output/report/record_facts.h"
#include "tools/output/results/result_blocks.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools::report
{
// Tables: a row is read as one line.
// clang-format off
struct ReadingBlock
{
  std::string                          name, label;
  double                               value = 0;
  std::string                          unit;
  int                                  digits = 0;
  std::optional<double>                error, band;
  std::optional<std::array<double, 2>> range;
  std::string                          meaning;
  bool                                 headline = false;
  std::vector<std::string>             how;
};
constexpr auto block_of(const ReadingBlock *)
{
  using S = ReadingBlock;
  return block<S>("Reading", "One number of a run.",
    field(&S::name, "name", "machine name"),
    field(&S::label, "label", "for people"),
    field(&S::value, "value", "in `unit`"),
    field(&S::unit, "unit", "display unit, \"\" for a pure number"),
    field(&S::digits, "digits", "decimals to print"),
    field(&S::error, "error", "estimated numerical error in `unit`"),
    field(&S::band, "band", "half the band that readings of a bench sheet left open, in `unit`"),
    field(&S::range, "range", "as far as an input with a band lets it be known, in `unit`"),
    field(&S::meaning, "meaning", "definition in one sentence"),
    field(&S::headline, "headline"),
    field(&S::how, "how", "how this number came about: inputs with sources, rule, error, versions; one line each"));
}

struct PartBlock
{
  std::string              name, material;
  int                      tone = -1, hatch = -1;
  double                   thickness = 0;
  std::vector<std::string> assumed;
  std::string              source;
};
constexpr auto block_of(const PartBlock *)
{
  using S = PartBlock;
  return block<S>("Part", "A part of the stack.",
    field(&S::name, "name", "layer, or layer and place (\"core ring\")"),
    field(&S::material, "material"),
    field(&S::tone, "tone", "of the palette; one material has one tone and one hatch everywhere"),
    field(&S::hatch, "hatch", "number of a tile"),
    field(&S::thickness, "thickness", "", "mm"),
    field(&S::assumed, "assumed", "what no one measured, one phrase each"),
    field(&S::source, "source", "of the material"));
}
// clang-format on

std::vector<ReadingBlock> reading_blocks(const Run &run, const std::vector<Part> &parts,
                                         const RecordFacts &record);

/// A run that stopped early says so here too.
std::vector<solver::Warning> warning_blocks(const Run &run);

std::vector<PartBlock> part_blocks(const std::vector<Part> &parts, const Looks &looks);

/// How good one reading is, in words; empty when its error was not estimated.
std::string error_words(const solver::Reading &reading);
} // namespace solemech::tools::report
