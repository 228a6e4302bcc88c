// SPDX-License-Identifier: Apache-2.0
#include "tools/output/drawing/sole_drawing.h"

#include "tools/language/number_text.h"
#include "tools/output/drawing/sole_cuts.h"
#include "tools/output/drawing/svg_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
using Anchor = SvgSheet::Anchor;
constexpr double mm = 1e3, margin = 24, gap = 12;

std::string value_of(double length)
{
  return length_text(length, Lengths::millimetre, false);
}

/// A layer's material among those that are shown together.
std::map<std::string, std::string> families(const solver::Sole &sole)
{
  std::map<std::string, std::string> all;
  for (const auto &layer : sole.layers)
    all[layer.material.name] = layer.material.family;
  return all;
}

class Drawing
{
public:
  Drawing(const solver::Sole &sole, const geometry::SoleBody &body, const SoleFacts &facts)
    : sole_(sole), body_(body), facts_(facts), looks_(families(sole)), length_(mm * body.length()),
      heel_(geometry::heel_station * body.length()), ball_(body.ball_line().centre())
  {
    for (const auto &point : points_round(body.outline(), 400))
    {
      outer_ = std::max(outer_, mm * point[1]);
      inner_ = std::max(inner_, -mm * point[1]);
    }
  }

  std::string text()
  {
    double y = head();
    y = from_above(y);
    y = along(y);
    y = across(y);
    y = legend(y);
    return sheet_.finished(length_ + 2 * margin + 10, y, sole_.title, drawing_mark);
  }

private:
  Look look(std::size_t layer) const { return looks_.of_material(sole_.layers[layer].material.name); }

  double head()
  {
    sheet_.text({margin, 11}, {0, 0}, sole_.title, Anchor::start, 5, true);
    sheet_.text(
      {margin, 17}, {0, 0},
      fmt::format("Left sole, to scale, lengths in mm. Drawn as described; nothing has been calculated.{}",
                  sole_.invented ? " Invented: it describes no product." : ""));
    return 24;
  }

  void heading(double y, const std::string &words)
  {
    sheet_.text({margin, y}, {0, 0}, words, Anchor::start, 3.6, true);
  }

  double from_above(double top)
  {
    heading(top + 4, "From above");
    const Frame frame{margin, top + 14 + outer_};
    sheet_.hollow(frame, in_millimetres(points_round(body_.outline(), 400)), false, {.width = 0.4});
    layers_in_plan(frame);
    for (const auto &patch : sole_.patches)
      sheet_.line(frame, closed(in_millimetres(points_round(patch.plan, 160))),
                  {.width = 0.2, .faint = true});
    for (const auto &pocket : sole_.pockets)
    {
      sheet_.line(frame, closed(in_millimetres(points_round(pocket.shape.plan, 160))), {.dashes = "2 1"});
      sheet_.text(frame, {mm * pocket.shape.plan.x, mm * pocket.shape.plan.y - 6},
                  pocket.unit ? "air unit" : "pocket", Anchor::middle);
    }
    lines_in_plan(frame);
    return frame.y + inner_ + 16;
  }

  /// Plates in their look, other layers that do not fill the sole as lines.
  void layers_in_plan(const Frame &frame)
  {
    for (std::size_t i = 0; i < sole_.layers.size(); ++i)
    {
      if (body_.region(i).area() > 0.995 * facts_.area)
        continue;
      const auto plan = plan_pieces(body_.region(i));
      const bool is_plate = sole_.layers[i].material.family == "plate";
      for (const auto &area : plan.areas)
        if (is_plate)
          sheet_.area(frame, area, look(i), false);
      for (const auto &edge : plan.edges)
        sheet_.line(frame, edge, is_plate ? SvgSheet::Line{} : SvgSheet::Line{0.2, "4 1.2", true});
    }
  }

  void lines_in_plan(const Frame &frame)
  {
    const auto &ball = body_.ball_line();
    const Point inner{mm * ball.medial[0], mm * ball.medial[1]},
      outer{mm * ball.lateral[0], mm * ball.lateral[1]};
    const auto beyond = [&](double share) {
      return Point{inner[0] + share * (outer[0] - inner[0]), inner[1] + share * (outer[1] - inner[1])};
    };
    sheet_.line(frame, {{-6, 0}, {length_ + 6, 0}}, {.width = 0.2, .dashes = "6 1.2 1 1.2", .faint = true});
    sheet_.line(frame, {beyond(-0.08), beyond(1.08)}, {.width = 0.35, .dashes = "6 1.2 1 1.2"});
    sheet_.text(frame, {beyond(1.12)[0] - 2, beyond(1.12)[1]}, "ball line", Anchor::end);
    const std::pair<const char *, double> cuts[] = {{"A", heel_}, {"B", ball_}};
    for (const auto &[name, x] : cuts)
    {
      const auto span = body_.outline().across(x);
      for (const double y : {mm * span.high, mm * span.low})
      {
        const double out = y > 0 ? 6 : -6;
        sheet_.line(frame, {{mm * x, y}, {mm * x, y + out}}, {.width = 0.5});
        sheet_.text(frame, {mm * x, y + (out > 0 ? out + 1 : out - 3.6)}, name, Anchor::middle, 3.6, true);
      }
    }
    sheet_.text(frame, {-8, -1}, "heel", Anchor::end);
    sheet_.text(frame, {length_ + 8, -1}, "toe");
    sheet_.text(frame, {0.42 * length_, outer_ + 3}, "outer side", Anchor::middle);
    sheet_.text(frame, {0.42 * length_, -inner_ - 5}, "inner side", Anchor::middle);
    sheet_.dimension(frame, {0, -inner_ - 10}, {length_, -inner_ - 10}, value_of(facts_.length));
    const double waist = geometry::waist_station * body_.length();
    const auto   across = body_.outline().across(waist);
    sheet_.dimension(frame, {mm * waist, mm * across.low}, {mm * waist, mm * across.high},
                     value_of(facts_.width_waist));
  }

  static Polygon closed(Polygon points)
  {
    points.push_back(points.front());
    return points;
  }

  void cut(const Frame &frame, const std::vector<CutPiece> &pieces)
  {
    for (const auto &piece : pieces)
      if (piece.kind == CutPiece::Kind::material)
        sheet_.area(frame, piece.outline, look(piece.layer));
      else
        sheet_.hollow(frame, piece.outline, piece.kind == CutPiece::Kind::gap, {});
  }

  double along(double top)
  {
    heading(top + 4, "Along the middle line");
    const auto pieces = cut_along(body_, 0);
    double     height = 0;
    for (const auto &piece : pieces)
      for (const auto &point : piece.outline)
        height = std::max(height, point[1]);
    const Frame frame{margin, top + 14 + height};
    cut(frame, pieces);
    sheet_.line(frame, {{-12, 0}, {length_ + 12, 0}}, {.width = 0.4});
    for (const auto &[x, value] :
         {std::pair(heel_, facts_.height_heel), std::pair(ball_, facts_.height_ball)})
    {
      const auto low = body_.bottom().placed(x, 0), high = body_.bottom().placed(x, body_.height(x));
      sheet_.dimension(frame, {mm * low[0], mm * low[1]}, {mm * high[0], mm * high[1]}, value_of(value));
    }
    gap_at(frame, length_ + 4, facts_.toe_spring, "toe spring", Anchor::start);
    gap_at(frame, -4, facts_.heel_bevel, "bevel", Anchor::end);
    for (double x = 0; x < length_; x += 50)
    {
      sheet_.line(frame, {{x, 0}, {x, -2}}, {});
      sheet_.text(frame, {x, -5.4}, fmt::format("{:g}", x), Anchor::middle, 2.8);
    }
    return frame.y + 10 + gap / 2;
  }

  void gap_at(const Frame &frame, double x, double rise, const std::string &word, Anchor anchor)
  {
    if (rise == 0)
      return;
    sheet_.line(frame, {{x, 0}, {x, mm * rise}}, {.width = 0.5});
    const double beside = anchor == Anchor::start ? 1.5 : -1.5;
    sheet_.text(frame, {x + beside, std::max(mm * rise / 2 - 1, 1.0)}, word, anchor, 2.8);
    sheet_.text(frame, {x + beside, std::max(mm * rise / 2 - 1, 1.0) + 3.4}, value_of(rise), anchor, 2.8);
  }

  double across(double top)
  {
    const double tallest = mm * std::max(body_.height(heel_), body_.height(ball_));
    double       left = margin;
    for (const auto &[name, x] :
         {std::pair("Across the heel, A", heel_), std::pair("Across the ball, B", ball_)})
    {
      const auto  span = body_.outline().across(x);
      const Frame frame{left + mm * span.high, top + 12 + tallest};
      sheet_.text({left, top + 4}, {0, 0}, name, Anchor::start, 3.6, true);
      cut(frame, cut_across(body_, x));
      const Point from{-mm * span.high, -4}, to{-mm * span.low, -4};
      sheet_.line(frame, {from, to}, {});
      for (const auto &end : {from, to})
        sheet_.line(frame, {{end[0], -5}, {end[0], -3}}, {});
      sheet_.text(frame, {(from[0] + to[0]) / 2, -8}, value_of(span.width()), Anchor::middle);
      left += mm * span.width() + 2 * gap;
    }
    sheet_.text({left, top + 12 + tallest / 2}, {0, 0}, "Both seen from behind:");
    sheet_.text({left, top + 16.5 + tallest / 2}, {0, 0}, "the outer side lies to the left.");
    return top + 24 + tallest;
  }

  double legend(double top)
  {
    double y = top + 6;
    for (std::size_t i = 0; i < sole_.layers.size(); ++i, y += 6.5)
    {
      const auto &part = facts_.parts[i];
      sheet_.area({margin, y}, {{0, -1}, {10, -1}, {10, 4}, {0, 4}}, look(i));
      const auto thickness =
        part.least_thickness == part.greatest_thickness
          ? value_of(part.least_thickness)
          : fmt::format("{} to {}", value_of(part.least_thickness), value_of(part.greatest_thickness));
      const auto plies = sole_.layers[i].plies.size();
      sheet_.text({margin + 13, y}, {0, 0},
                  fmt::format("{}: {}{}, {} mm, {:.0f} g", part.layer, part.material,
                              plies ? fmt::format(" in {} plies", plies) : "", thickness, 1e3 * part.mass));
    }
    sheet_.text({margin, y + 1}, {0, 0},
                fmt::format("About {:.0f} g together, without films and glue. Heel {}, ball {}: drop {}.",
                            1e3 * facts_.mass, value_of(facts_.height_heel), value_of(facts_.height_ball),
                            value_of(facts_.drop)));
    return y + 8;
  }

  const solver::Sole       &sole_;
  const geometry::SoleBody &body_;
  const SoleFacts          &facts_;
  Looks                     looks_;
  SvgSheet                  sheet_;
  double                    length_, heel_, ball_;  ///< [mm], [m], [m]
  double                    outer_ = 0, inner_ = 0; ///< greatest half widths [mm]
};
} // namespace

std::string sole_drawing(const solver::Sole &sole, const geometry::SoleBody &body, const SoleFacts &facts)
{
  return Drawing(sole, body, facts).text();
}
} // namespace solemech::tools
