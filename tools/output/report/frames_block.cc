// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/frames_block.h"

#include "tools/output/picture/outlines.h"
#include "tools/output/report/energy_flow.h"
#include "tools/output/report/frame_coding.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/results/parts.h"

#include <algorithm>
#include <cmath>

namespace solemech::tools::report
{
namespace
{
constexpr double      mm = 1e3;
constexpr std::size_t most_frames = 80;
constexpr std::size_t most_values =
  150'000;                              ///< of a field; beyond, a cell is drawn as one quad instead of four
constexpr double finest_quantum = 2e-3; ///< of positions [mm], a tenth of a pixel on a large screen
constexpr double scale_steps = 1000;    ///< quanta across a colour scale

/// What is drawn: quads of compact node numbers, each with the cell corners whose mean it shows.
struct DrawnMesh
{
  std::vector<std::size_t>                              nodes; ///< picture node of each drawn node
  std::vector<std::array<std::size_t, 4>>               quads;
  std::vector<int>                                      part;
  std::vector<std::vector<std::size_t>>                 corners; ///< places in a snapshot's fields, a quad
  std::vector<std::pair<int, std::vector<std::size_t>>> outlines;
};

DrawnMesh drawn_mesh(const solver::Picture &picture, const std::vector<int> &part_of, bool fine)
{
  DrawnMesh                mesh;
  const std::size_t        none = static_cast<std::size_t>(-1);
  std::vector<std::size_t> compact(picture.snapshots[0].position.size(), none);
  const auto               drawn = [&](std::size_t node) {
    if (compact[node] == none)
    {
      compact[node] = mesh.nodes.size();
      mesh.nodes.push_back(node);
    }
    return compact[node];
  };
  for (std::size_t c = 0; c < picture.cells.size(); ++c)
  {
    const auto &cell = picture.cells[c];
    const auto  add = [&](std::array<std::size_t, 4> local, std::vector<std::size_t> corners) {
      std::array<std::size_t, 4> quad;
      for (std::size_t i = 0; i < 4; ++i)
        quad[i] = drawn(cell[local[i]]);
      for (auto &corner : corners)
        corner += 4 * c;
      mesh.quads.push_back(quad);
      mesh.part.push_back(part_of[static_cast<std::size_t>(picture.cell_part[c])]);
      mesh.corners.push_back(std::move(corners));
    };
    if (fine)
      for (std::size_t row = 0; row < 2; ++row)
        for (std::size_t column = 0; column < 2; ++column)
        {
          const std::size_t first = 3 * row + column;
          add({first, first + 1, first + 4, first + 3}, {2 * row + column});
        }
    else
      add({0, 2, 8, 6}, {0, 1, 2, 3});
  }
  for (int part = 0; part < static_cast<int>(picture.part_names.size()); ++part)
    for (auto &loop :
         boundary_loops(picture.cells, picture.cell_part, [&](int other) { return other == part; }))
    {
      for (auto &node : loop)
        node = drawn(node);
      mesh.outlines.emplace_back(part_of[static_cast<std::size_t>(part)], std::move(loop));
    }
  return mesh;
}

/// Numbers of the snapshots that become frames: all, or evenly many with the first, the last and the peak.
std::vector<std::size_t> chosen_frames(const solver::Picture &picture, double time_of_peak)
{
  const std::size_t        n = picture.snapshots.size();
  std::vector<std::size_t> frames;
  const std::size_t        n_wanted = std::min(n, most_frames - 1);
  for (std::size_t i = 0; i < n_wanted; ++i)
    frames.push_back(n_wanted > 1 ? i * (n - 1) / (n_wanted - 1) : 0);
  std::size_t peak = 0;
  for (std::size_t i = 0; i < n; ++i)
    if (std::abs(picture.snapshots[i].time - time_of_peak) <
        std::abs(picture.snapshots[peak].time - time_of_peak))
      peak = i;
  frames.push_back(peak);
  std::sort(frames.begin(), frames.end());
  frames.erase(std::unique(frames.begin(), frames.end()), frames.end());
  return frames;
}

struct FieldLook
{
  FieldName           name;
  const char         *label, *unit;
  double              factor;
  std::vector<double> solver::Snapshot::*values;
  double                                 rest; ///< value of the unloaded stack, always on the scale
};
const FieldLook fields[] = {
  {FieldName::stretch, "height divided by initial height", "", 1, &solver::Snapshot::vertical_stretch, 1},
  {FieldName::energy_density, "energy stored", "mJ/cm³", 1e-3, &solver::Snapshot::energy_density, 0},
  {FieldName::dissipated_density, "turned into heat so far", "mJ/cm³", 1e-3,
   &solver::Snapshot::dissipated_density, 0},
  {FieldName::pressure, "pressure in the material", "kPa", -1e-3, &solver::Snapshot::mean_stress, 0}};

/// The range that all but the outermost hundredths fill, widened to hold the value at rest.
std::pair<double, double> colour_scale(std::vector<double> values, double rest)
{
  std::sort(values.begin(), values.end());
  const auto at = [&](double share) {
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
  };
  double low = values.empty() ? rest : std::min(rest, rounded(at(0.02), 2));
  double high = values.empty() ? rest : std::max(rest, rounded(at(0.98), 2));
  if (!(high > low))
    low = rest, high = rest + 1;
  return {low, high};
}

FieldBlock field_block(const solver::Picture &picture, const std::vector<std::size_t> &frames,
                       const DrawnMesh &mesh, const FieldLook &look, std::size_t peak)
{
  std::vector<double> all, telling;
  all.reserve(frames.size() * mesh.quads.size());
  for (const std::size_t frame : frames)
  {
    const auto &values = picture.snapshots[frame].*look.values;
    for (const auto &corners : mesh.corners)
    {
      double sum = 0;
      for (const std::size_t corner : corners)
        sum += values[corner];
      all.push_back(look.factor * sum / static_cast<double>(corners.size()));
    }
    // The scale is that of the greatest compression and of the end, not of the many quiet moments.
    if (frame == peak || frame == frames.back())
      telling.insert(telling.end(), all.end() - static_cast<long>(mesh.quads.size()), all.end());
  }
  const auto [low, high] = colour_scale(std::move(telling), look.rest);
  const double quantum = (high - low) / scale_steps;
  return {look.name, look.label, look.unit, low,
          high,      quantum,    low,       coded(all, mesh.quads.size(), low, quantum)};
}
} // namespace

std::optional<Frames> frames_block(const Run &run, const std::vector<Part> &parts)
{
  const auto &picture = run.result.picture;
  if (picture.snapshots.empty() || picture.cells.empty())
    return std::nullopt;
  std::vector<int> part_of;
  for (const auto &name : picture.part_names)
    part_of.push_back(part_number(parts, name));
  const auto frames = chosen_frames(picture, run.result.time_of_peak);
  const bool fine = 4 * picture.cells.size() * frames.size() <= most_values;
  const auto mesh = drawn_mesh(picture, part_of, fine);

  std::vector<double> time, tup, positions;
  double              extent = 0;
  std::size_t         peak = frames[0];
  for (const std::size_t frame : frames)
  {
    const auto &shot = picture.snapshots[frame];
    time.push_back(mm * shot.time);
    tup.push_back(mm * shot.tup_position);
    for (const std::size_t node : mesh.nodes)
      for (const double x : shot.position[node])
      {
        positions.push_back(mm * x);
        extent = std::max(extent, std::abs(mm * x));
      }
    if (std::abs(shot.time - run.result.time_of_peak) <
        std::abs(picture.snapshots[peak].time - run.result.time_of_peak))
      peak = frame;
  }
  // Four digits are kept of the quantum, so that the page decodes with the number it shows.
  const double quantum = std::max(finest_quantum, rounded(1.001 * extent / greatest_step, 4));

  Frames block{frames.size(),
               rounded(time, 1),
               rounded(tup, 1),
               {},
               mesh.nodes.size(),
               quantum,
               coded(positions, 2 * mesh.nodes.size(), 0, quantum),
               {},
               mesh.part,
               {},
               {}};
  for (const auto &point : picture.tup_outline)
    block.tup_outline.push_back({rounded(mm * point[0], 5), rounded(mm * point[1], 5)});
  for (const auto &[part, nodes] : mesh.outlines)
    block.outlines.push_back({part, nodes});
  for (const auto &quad : mesh.quads)
    block.quads.insert(block.quads.end(), quad.begin(), quad.end());
  for (const auto &look : fields)
    block.fields.push_back(field_block(picture, frames, mesh, look, peak));
  return block;
}
} // namespace solemech::tools::report
