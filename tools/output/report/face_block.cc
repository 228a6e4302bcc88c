// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/face_block.h"

#include "tools/output/report/run_facts.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools::report
{
namespace
{
constexpr std::size_t most_lines = 6;     ///< that one chart can tell apart
constexpr double      really_less = 0.03; ///< share of a pressure below which it has not changed

std::vector<double> scaled(std::vector<double> values, double factor)
{
  for (double &value : values)
    value *= factor;
  return values;
}

const std::vector<double> *curve(const Run &run, const char *name)
{
  for (const auto &each : run.result.curves)
    if (each.name == name)
      return &each.values;
  return nullptr;
}

LineChart pressure_chart()
{
  return {"pressure on the face", "from leading to trailing end, mm", "pressure over 0.25 mm, kPa", {}};
}

void add_pressure(LineChart &chart, const std::string &name, const solver::FaceLine &face)
{
  chart.lines.push_back({name, scaled(face.place, 1e3), scaled(face.pressure, 1e-3)});
}

/// The bar in its cell, skin included.
ChartLine outline(const std::string &name, const Run &run)
{
  constexpr int n = 240;
  auto          lug = std::get<solver::SlideRig>(run.setup.rig).lug;
  lug.skin = run.setup.layers.at(0).thickness, lug.height = run.setup.layers.at(1).thickness;
  ChartLine line{name, {}, {}};
  for (int i = 0; i <= n; ++i)
  {
    line.x.push_back(1e3 * lug.spacing * (static_cast<double>(i) / n - 0.5));
    line.y.push_back(1e3 * geometry::surface_height_at(lug, 1e-3 * line.x.back()));
  }
  return line;
}

/// One line a run.
LineBlock slid_faces(const std::vector<const Run *> &runs)
{
  LineBlock block{
    "The lug, and what presses on it",
    "",
    {pressure_chart(), {"outline of the lug on its skin", "across the bar, mm", "height, mm", {}}}};
  const auto labels = short_labels(runs);
  for (std::size_t i = 0; i < runs.size() && i < most_lines; ++i)
  {
    add_pressure(block.charts[0], labels[i], runs[i]->result.faces.front());
    block.charts[1].lines.push_back(outline(labels[i], *runs[i]));
  }
  block.sentence =
    "The edge that leads carries most, the one that trails comes off first: friction tips the lug.";
  return block;
}

LineBlock worn_faces(const Run &run)
{
  const auto &wear = *std::get<solver::SlideRig>(run.setup.rig).wear;
  LineBlock   block{
    "The face as it wears down",
    "",
    {{"shape of the face", "from leading to trailing end, mm", "height, mm", {}}, pressure_chart()}};
  for (const auto &face : run.result.faces)
  {
    const std::string name =
      face.way > 0 ? fmt::format("after {} steps", rounded_count(face.way / wear.slip)) : "fresh";
    block.charts[0].lines.push_back({name, scaled(face.place, 1e3), scaled(face.height, 1e3)});
    add_pressure(block.charts[1], name, face);
  }
  const double fresh = value_of(run, "edge_pressure").value_or(0), worn = value_of(run, "worn_edge_pressure").value_or(0);
  block.sentence = fmt::format("Where pressure is highest the face goes first{}: {:.0f} kPa over a quarter of a millimetre at most on the "
                               "fresh face, {:.0f} kPa on the last one.",
                               worn < (1 - really_less) * fresh ? ", and so the pressure evens out"
                               : worn > (1 + really_less) * fresh ? ", and its new edge takes more pressure"
                                                                  : "; the greatest pressure stays",
                               1e-3 * fresh, 1e-3 * worn);
  return block;
}

LineBlock life(const Run &run)
{
  const auto &wear = *std::get<solver::SlideRig>(run.setup.rig).wear;
  const auto  depth = scaled(*curve(run, "depth"), 1e3), steps = scaled(*curve(run, "steps"), 1e-3);
  LineBlock   block{"How it lasts",
                  "",
                  {{"depth lost over steps", "thousand steps", "depth, mm", {}},
                     {"grip as it wears", "depth, mm", "grip", {}}}};
  block.charts[0].lines = {
    {"as given", steps, depth},
    {"greatest wear of the band", scaled(steps, wear.coefficient / wear.highest), depth}};
  // The least wear would push the others into a corner: it is told in words.
  block.charts[1].lines = {{"as given", depth, *curve(run, "grip")}};
  block.sentence = fmt::format("{} steps as given; with the greatest wear of the band {}, with the least {}.",
                               rounded_count(value_of(run, "life_steps").value_or(0)),
                               rounded_count(value_of(run, "life_steps_lowest").value_or(0)),
                               rounded_count(value_of(run, "life_steps_highest").value_or(0)));
  return block;
}

/// One line a run, and for a single run its band.
LineBlock ground(const std::vector<const Run *> &runs)
{
  LineBlock  block{"What the abrasive takes",
                  "A sleeve sinks in ever more slowly, since its groove gets wider; where the line bends, another layer begins.",
                  {{"depth over time", "s", "depth, mm", {}}}};
  const auto labels = short_labels(runs);
  const auto depth = [&](const Run &run, const char *name, const std::string &label) {
    if (const auto *values = curve(run, name))
      block.charts[0].lines.push_back({label, run.result.time, scaled(*values, 1e3)});
  };
  if (runs.size() == 1)
  {
    depth(*runs[0], "depth", "as given");
    depth(*runs[0], "depth_lowest", "least loss of the band");
    depth(*runs[0], "depth_highest", "greatest loss of the band");
  }
  else
    for (std::size_t i = 0; i < runs.size() && i < most_lines; ++i)
      depth(*runs[i], "depth", labels[i]);
  return block;
}

/// One line a run.
LineBlock lives(const std::vector<const Run *> &runs)
{
  LineBlock  block{"How they last",
                  "The face of each when it is worn, and the depth it has lost by then.",
                  {{"depth lost over steps", "thousand steps", "depth, mm", {}},
                    {"face at the end", "from leading to trailing end, mm", "height, mm", {}}}};
  const auto labels = short_labels(runs);
  for (std::size_t i = 0; i < runs.size() && i < most_lines; ++i)
  {
    const auto &last = runs[i]->result.faces.back();
    block.charts[0].lines.push_back(
      {labels[i], scaled(*curve(*runs[i], "steps"), 1e-3), scaled(*curve(*runs[i], "depth"), 1e3)});
    block.charts[1].lines.push_back({labels[i], scaled(last.place, 1e3), scaled(last.height, 1e3)});
  }
  return block;
}
} // namespace

std::vector<LineBlock> face_blocks(const std::vector<const Run *> &runs)
{
  std::vector<LineBlock>   blocks;
  std::vector<const Run *> slid, worn, abraded;
  for (const auto *run : runs)
  {
    if (std::holds_alternative<solver::AbrasionRig>(run->setup.rig) && curve(*run, "depth"))
      abraded.push_back(run);
    const auto *rig = std::get_if<solver::SlideRig>(&run->setup.rig);
    if (!rig || run->result.faces.empty())
      continue;
    (rig->wear ? worn : slid).push_back(run);
  }
  if (worn.size() == 1)
    blocks = {worn_faces(*worn[0]), life(*worn[0])};
  else if (!worn.empty())
    blocks = {lives(worn)};
  if (!slid.empty())
    blocks.insert(blocks.begin(), slid_faces(slid));
  if (!abraded.empty())
    blocks.push_back(ground(abraded));
  return blocks;
}
} // namespace solemech::tools::report
