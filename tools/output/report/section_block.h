// SPDX-License-Identifier: Apache-2.0
// Blocks of one run that come straight from case and result: the section at rest with its dimensions, the
// curves at full recorded resolution, and where the energy went, at the end and over time.
#pragma once

#include "tools/language/blocks.h"
#include "tools/output/results/energy_picture.h"
#include "tools/output/results/parts.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools::report
{
using blocks::block;
using blocks::field;

// Tables: a row is read as one line.
// clang-format off
struct SectionLayer
{
  std::string name;
  double      bottom = 0, top = 0;
  int         part = -1;
  bool        assumed = false;
};
constexpr auto block_of(const SectionLayer *)
{
  using S = SectionLayer;
  return block<S>("SectionLayer", "A layer of the stack at rest.",
    field(&S::name, "name"),
    field(&S::bottom, "bottom", "", "mm"),
    field(&S::top, "top", "", "mm"),
    field(&S::part, "part", "number of a part"),
    field(&S::assumed, "assumed"));
}

struct SectionWidth
{
  std::string name;
  double      width = 0, y = 0;
  bool        assumed = false;
};
constexpr auto block_of(const SectionWidth *)
{
  using S = SectionWidth;
  return block<S>("SectionWidth", "A diameter: plug, core, unit, striker.",
    field(&S::name, "name"),
    field(&S::width, "width", "", "mm"),
    field(&S::y, "y", "height at which it is drawn", "mm"),
    field(&S::assumed, "assumed"));
}

struct Section
{
  double                    width = 0, height = 0;
  std::vector<SectionLayer> layers;
  std::vector<SectionWidth> widths;
};
constexpr auto block_of(const Section *)
{
  using S = Section;
  return block<S>("Section", "The stack at rest, both halves, x across and y up; y = 0 at the ground side.",
    field(&S::width, "width", "", "mm"),
    field(&S::height, "height", "", "mm"),
    field(&S::layers, "layers"), field(&S::widths, "widths"));
}

struct Curves
{
  std::vector<double> time, force, compression;
  double              time_of_peak = 0, time_of_loss = 0;
};
constexpr auto block_of(const Curves *)
{
  using S = Curves;
  return block<S>("Curves", "Lists of the same length.",
    field(&S::time, "time", "", "ms"),
    field(&S::force, "force", "", "N"),
    field(&S::compression, "compression", "", "mm"),
    field(&S::time_of_peak, "timeOfPeak", "of greatest compression", "ms"),
    field(&S::time_of_loss, "timeOfLoss", "of the end of contact, 0: never", "ms"));
}

struct Gas
{
  int                 part = -1;
  std::vector<double> pressure;
};
constexpr auto block_of(const Gas *)
{
  using S = Gas;
  return block<S>("Gas", "The gas of an air unit.",
    field(&S::part, "part", "number of its film"),
    field(&S::pressure, "pressure", "over the atmosphere, one a time of the curves, kPa"));
}

struct EnergySlice
{
  std::string name;
  ShareKind   kind = ShareKind::left_in_stack;
  double      energy = 0;
  int         part = -1;
};
constexpr auto block_of(const EnergySlice *)
{
  using S = EnergySlice;
  return block<S>("EnergySlice", "What became of a share of the energy.",
    field(&S::name, "name"), field(&S::kind, "kind"),
    field(&S::energy, "energy", "", "J"),
    field(&S::part, "part", "number of a part or -1"));
}

enum class EnergyRowKind { weight, stored, lost };
constexpr std::array<std::string_view, 3> words_of(EnergyRowKind) { return {"weight", "stored", "lost"}; }

struct EnergyRow
{
  std::string         name;
  EnergyRowKind       kind = EnergyRowKind::stored;
  int                 part = -1;
  std::vector<double> energy;
};
constexpr auto block_of(const EnergyRow *)
{
  using S = EnergyRow;
  return block<S>("EnergyRow", "Energy over time, to be stacked on the others.",
    field(&S::name, "name"), field(&S::kind, "kind"),
    field(&S::part, "part", "number of a part or -1"),
    field(&S::energy, "energy", "", "J"));
}

struct Energy
{
  double                   input = 0, accounted = 0;
  std::vector<EnergySlice> shares;
  std::vector<double>      time;
  std::vector<EnergyRow>   rows;
};
constexpr auto block_of(const Energy *)
{
  using S = Energy;
  return block<S>("Energy", "Where the energy went, at the end and over time.",
    field(&S::input, "input", "100 %", "J"),
    field(&S::accounted, "accounted", "share 0..1 that the parts add up to"),
    field(&S::shares, "shares"),
    field(&S::time, "time", "", "ms"),
    field(&S::rows, "rows"));
}
// clang-format on

/// None for a case without layers.
std::optional<Section> section_block(const Run &run, const std::vector<Part> &parts);

Curves curves_block(const Run &run);

/// One for each air unit whose pressure was recorded.
std::vector<Gas> gas_blocks(const Run &run, const std::vector<Part> &parts);

/// None when the run has no energy account.
std::optional<Energy> energy_block(const Run &run, const std::vector<Part> &parts);
} // namespace solemech::tools::report
