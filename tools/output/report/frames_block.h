// SPDX-License-Identifier: Apache-2.0
// The deforming section for the page: drawn nodes, quads and outlines once, positions and fields frame by
// frame in the coding of frame_coding.h. Positions are good to a few micrometres, fields to a thousandth of
// their colour scale.
#pragma once

#include "tools/language/blocks.h"
#include "tools/output/results/parts.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools::report
{
using blocks::block;
using blocks::field;

// Tables: a row is read as one line.
// clang-format off
struct PartOutline
{
  int                      part = -1;
  std::vector<std::size_t> nodes;
};
constexpr auto block_of(const PartOutline *)
{
  using S = PartOutline;
  return block<S>("PartOutline", "A closed polyline round a part of the right half.",
    field(&S::part, "part", "number of a part"),
    field(&S::nodes, "nodes"));
}

enum class FieldName { stretch, energy_density, dissipated_density, pressure };
constexpr std::array<std::string_view, 4> words_of(FieldName)
{
  return {"stretch", "energy_density", "dissipated_density", "pressure"};
}

struct FieldBlock
{
  FieldName   name = FieldName::stretch;
  std::string label, unit;
  double      low = 0, high = 0, quantum = 0, offset = 0;
  std::string values;
};
constexpr auto block_of(const FieldBlock *)
{
  using S = FieldBlock;
  return block<S>("Field", "One value a drawn cell and frame.",
    field(&S::name, "name"), field(&S::label, "label"), field(&S::unit, "unit"),
    field(&S::low, "low", "of the colour scale"),
    field(&S::high, "high", "of the colour scale"),
    field(&S::quantum, "quantum", "in `unit`"),
    field(&S::offset, "offset", "in `unit`"),
    field(&S::values, "values", "n x cells, coded like positions"));
}

struct Frames
{
  std::size_t                        n = 0;
  std::vector<double>                time, tup;
  std::vector<std::array<double, 2>> tup_outline;
  std::size_t                        n_nodes = 0;
  double                             quantum = 0;
  std::string                        positions;
  std::vector<std::size_t>           quads;
  std::vector<int>                   quad_part;
  std::vector<PartOutline>           outlines;
  std::vector<FieldBlock>            fields;
};
constexpr auto block_of(const Frames *)
{
  using S = Frames;
  return block<S>("Frames",
    "The deforming section. Mesh edges and cells are given once, positions per frame as whole numbers: value = "
    "offset + quantum * number. `positions` and the values of each field are little-endian 16-bit integers, frame "
    "after frame, differences to the frame before, deflated (zlib) and base64-coded.",
    field(&S::n, "n", "number of frames"),
    field(&S::time, "time", "", "ms"),
    field(&S::tup, "tup", "height of the striker's lowest point", "mm"),
    field(&S::tup_outline, "tupOutline", "right half, relative to the lowest point", "mm"),
    field(&S::n_nodes, "nNodes"),
    field(&S::quantum, "quantum", "of positions", "mm"),
    field(&S::positions, "positions", "n x nNodes x 2, right half (x >= 0)"),
    field(&S::quads, "quads", "4 corner nodes a drawn cell, flat, counter-clockwise"),
    field(&S::quad_part, "quadPart", "number of a part, one a cell"),
    field(&S::outlines, "outlines"), field(&S::fields, "fields"));
}
// clang-format on

/// None when the run has no pictures.
std::optional<Frames> frames_block(const Run &run, const std::vector<Part> &parts);
} // namespace solemech::tools::report
