// SPDX-License-Identifier: Apache-2.0
#include "tools/language/trace_file.h"

#include "tools/language/csv_rows.h"
#include "tools/language/svg_path.h"

#include <fmt/format.h>

namespace solemech::tools
{
using geometry::PlanPoint;

namespace
{
bool is_too_long(const std::vector<PlanPoint> &points, const std::string &file, materials::Problems &problems)
{
  if (points.size() <= most_read_points)
    return false;
  problems.add({file, 0, 0, "", fmt::format("the trace has more than {} points", most_read_points),
                "Give the edge of one sole with a point every 5 to 10 mm"});
  return true;
}
} // namespace

std::vector<PlanPoint> read_points(const std::string &file, const std::string &text,
                                   materials::Problems &problems)
{
  problems.add_source(file, text);
  std::vector<PlanPoint> points;
  CsvRows                lines(text);
  bool                   is_heading = true;
  while (const auto row = lines.next())
  {
    const auto fields = csv_fields(row->text, separator_of(row->text));
    const auto x = number_in(fields[0].text);
    const auto y = fields.size() == 2 ? number_in(fields[1].text) : std::nullopt;
    if (x && y)
      points.push_back({*x, *y});
    else if (!is_heading || row->text.front() == '-' ||
             (row->text.front() >= '0' && row->text.front() <= '9'))
    {
      problems.add({file, row->line, 1, "", "this line does not hold two numbers with a comma between them",
                    "Write x and y of one point, with decimal points: 12.5,-31.0"});
      return {};
    }
    is_heading = false;
    if (is_too_long(points, file, problems))
      return {};
  }
  return points;
}

std::vector<PlanPoint> read_drawing(const std::string &file, const std::string &text,
                                    materials::Problems &problems)
{
  problems.add_source(file, text);
  try
  {
    auto points = svg_outline(text, most_read_points);
    for (auto &point : points)
      point[1] = -point[1];
    return points;
  }
  catch (const InvalidDrawing &error)
  {
    problems.add({file, error.line, 1, "", error.what(), error.cure});
    return {};
  }
}
} // namespace solemech::tools
