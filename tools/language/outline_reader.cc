// SPDX-License-Identifier: Apache-2.0
#include "tools/language/outline_reader.h"

#include "tools/language/described_sole.h"
#include "tools/language/member_reader.h"
#include "tools/language/trace_file.h"

#include <fmt/format.h>

#include <string>
#include <string_view>
#include <vector>

namespace solemech::tools
{
using materials::Fields;
using materials::Problems;

namespace
{
std::vector<geometry::PlanPoint> trace(const Fields &fields, const char *entry, SheetFolder &folder,
                                       Problems &problems)
{
  const auto name = fields.text(entry);
  if (name.empty())
    return {};
  const auto found = folder.data("trace", name);
  using State = materials::FileText::State;
  if (found.file.state != State::read)
  {
    const bool missing = found.file.state == State::missing;
    fields.problem(entry,
                   missing ? fmt::format("there is no file \"{}\"", name)
                           : fmt::format("\"{}\": {}", name, found.file.reason),
                   missing ? "Put it into the folder of the sole file" : found.file.cure);
    return {};
  }
  const auto before = problems.n_noted();
  auto points = std::string_view(entry) == "points" ? read_points(found.shown, found.file.text, problems)
                                                    : read_drawing(found.shown, found.file.text, problems);
  if (points.empty() && problems.n_noted() == before)
    fields.problem(entry, fmt::format("\"{}\" holds no points", name), "Give the points of the traced edge");
  return points;
}

/// Toe along x, lateral side along y, as of a left sole.
std::vector<geometry::PlanPoint> turned(std::vector<geometry::PlanPoint> points, const std::string &toe,
                                        const std::string &foot)
{
  for (auto &[x, y] : points)
  {
    const double right = x, up = y;
    // Seen from above the lateral side of a left sole lies to the left of its toe.
    if (toe == "up")
      x = up, y = -right;
    else if (toe == "down")
      x = -up, y = right;
    else if (toe == "left")
      x = -right, y = -up;
    if (foot == "right")
      y = -y;
  }
  return points;
}
} // namespace

bool read_outline(const Fields &fields, SheetFolder &folder, geometry::OutlineShape &outline,
                  Problems &problems)
{
  read_members(fields, outline);
  const bool is_traced = fields.given("points") || fields.given("path");
  for (const char *side : {"medial", "lateral"})
    if (fields.given("path") && fields.given(side))
      fields.problem(side, "path is given as well, and both set the edge of the sole", "Keep one of the two");
    else if (!is_traced && !fields.given(side))
      fields.problem(side, "is missing",
                     fmt::format("Give {} = [seven half widths], or a trace: points = \"trace.csv\"", side));
  for (const char *entry : {"toe", "foot"})
    if (fields.given(entry) && !is_traced)
      fields.problem(entry, "has no meaning without a trace", "Remove the line");
  if (is_traced)
    outline.trace = turned(trace(fields, fields.given("points") ? "points" : "path", folder, problems),
                           fields.text("toe"), fields.text("foot"));
  return is_traced ? !outline.trace.empty() : fields.given("medial") && fields.given("lateral");
}
} // namespace solemech::tools
