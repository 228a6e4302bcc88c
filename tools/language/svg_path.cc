// SPDX-License-Identifier: Apache-2.0
#include "tools/language/svg_path.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>

namespace solemech::tools
{
namespace
{
using Point = std::array<double, 2>;
using Points = std::vector<Point>;
constexpr int n_chords = 12; ///< of a curve

bool is_space(char c)
{
  return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
}

/// Walks through path data, command by command.
class PathReader
{
public:
  PathReader(std::string_view data, std::size_t most) : rest_(data), most_(most) {}

  Points points()
  {
    skip();
    while (!rest_.empty())
    {
      if (is_letter(rest_.front()))
      {
        command_ = rest_.front();
        rest_.remove_prefix(1);
      }
      else if (!command_ || command_ == 'Z' || command_ == 'z')
        refuse("the path data has numbers without a command");
      if (is_closed_)
        throw InvalidDrawing(
          "the path goes on after it was closed",
          "Keep one closed path, the edge of one sole; delete what lies inside or beside it");
      step();
      skip();
      if (points_.size() > most_)
        throw InvalidDrawing(fmt::format("the path has more than {} points", most_),
                             "Simplify it in the drawing program: a point every 5 to 10 mm is enough");
    }
    if (!is_closed_ && (points_.size() < 2 || distance(points_.front(), points_.back()) > 1e-6 * extent()))
      throw InvalidDrawing("the path is not closed",
                           "Close it in the drawing program, so that its data ends with Z");
    return std::move(points_);
  }

private:
  static bool is_letter(char c)
  {
    return std::isalpha(static_cast<unsigned char>(c)) != 0 && c != 'e' && c != 'E';
  }

  static double distance(const Point &a, const Point &b) { return std::hypot(a[0] - b[0], a[1] - b[1]); }

  double extent() const
  {
    double most = 0;
    for (const auto &point : points_)
      most = std::max(most, distance(point, points_.front()));
    return most;
  }

  [[noreturn]] static void refuse(const std::string &reason)
  {
    throw InvalidDrawing(reason, "Save the outline again as a plain SVG with one closed path");
  }

  void skip()
  {
    while (!rest_.empty() && (is_space(rest_.front()) || rest_.front() == ','))
      rest_.remove_prefix(1);
  }

  double number()
  {
    skip();
    if (!rest_.empty() && rest_.front() == '+')
      rest_.remove_prefix(1);
    double     value = 0;
    const auto read = std::from_chars(rest_.data(), rest_.data() + rest_.size(), value);
    if (read.ec != std::errc() || !std::isfinite(value))
      refuse("the path data lacks a number after " + std::string(1, command_));
    rest_.remove_prefix(static_cast<std::size_t>(read.ptr - rest_.data()));
    return value;
  }

  /// A point of the data; relative ones from where the command began.
  Point pair()
  {
    const double x = number(), y = number();
    return is_relative() ? Point{here_[0] + x, here_[1] + y} : Point{x, y};
  }

  bool is_relative() const { return std::islower(static_cast<unsigned char>(command_)) != 0; }

  void go(const Point &to)
  {
    here_ = to;
    points_.push_back(to);
  }

  /// Bezier curve of third order; one of second order is raised to it.
  void curve(const Point &b, const Point &c, const Point &d)
  {
    const Point a = here_;
    for (int i = 1; i <= n_chords; ++i)
    {
      const double t = static_cast<double>(i) / n_chords, s = 1 - t;
      const double w0 = s * s * s, w1 = 3 * s * s * t, w2 = 3 * s * t * t, w3 = t * t * t;
      go({w0 * a[0] + w1 * b[0] + w2 * c[0] + w3 * d[0], w0 * a[1] + w1 * b[1] + w2 * c[1] + w3 * d[1]});
    }
  }

  void quadratic(const Point &control, const Point &end)
  {
    const auto toward = [&](const Point &from) {
      return Point{from[0] + 2.0 / 3 * (control[0] - from[0]), from[1] + 2.0 / 3 * (control[1] - from[1])};
    };
    curve(toward(here_), toward(end), end);
  }

  /// The last control point seen from the other side, where the same kind of curve came before.
  Point mirrored(std::string_view kinds) const
  {
    if (kinds.find(last_) == std::string_view::npos)
      return here_;
    return {2 * here_[0] - control_[0], 2 * here_[1] - control_[1]};
  }

  void step()
  {
    switch (std::toupper(static_cast<unsigned char>(command_)))
    {
    case 'M':
      if (!points_.empty())
        throw InvalidDrawing(
          "the path has several pieces",
          "Keep one closed path, the edge of one sole; delete what lies inside or beside it");
      go(pair());
      command_ = is_relative() ? 'l' : 'L'; // further pairs are lines
      last_ = 'M';
      return;
    case 'L':
      go(pair());
      break;
    case 'H':
      go({number() + (is_relative() ? here_[0] : 0), here_[1]});
      break;
    case 'V':
      go({here_[0], number() + (is_relative() ? here_[1] : 0)});
      break;
    case 'C': {
      const Point b = pair();
      control_ = pair();
      curve(b, control_, pair());
      break;
    }
    case 'S': {
      const Point b = mirrored("CS");
      control_ = pair();
      curve(b, control_, pair());
      break;
    }
    case 'Q':
      control_ = pair();
      quadratic(control_, pair());
      break;
    case 'T':
      control_ = mirrored("QT");
      quadratic(control_, pair());
      break;
    case 'Z':
      is_closed_ = true;
      break;
    case 'A':
      throw InvalidDrawing("the path has circular arcs",
                           "Turn them into curves in the drawing program, and save the drawing again");
    default:
      refuse(fmt::format("the path data has an unknown command {}", command_));
    }
    last_ = static_cast<char>(std::toupper(static_cast<unsigned char>(command_)));
  }

  std::string_view rest_;
  std::size_t      most_;
  char             command_ = 0, last_ = 0;
  Point            here_{}, control_{};
  Points           points_;
  bool             is_closed_ = false;
};

int line_of(std::string_view text, std::size_t at)
{
  return 1 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

/// Value of an attribute of a tag, if it has it.
std::optional<std::string_view> attribute(std::string_view tag, std::string_view name)
{
  for (std::size_t at = tag.find(name); at != std::string_view::npos; at = tag.find(name, at + 1))
  {
    std::size_t after = at + name.size();
    while (after < tag.size() && is_space(tag[after]))
      ++after;
    if (at == 0 || !is_space(tag[at - 1]) || after >= tag.size() || tag[after] != '=')
      continue;
    for (++after; after < tag.size() && is_space(tag[after]);)
      ++after;
    if (after >= tag.size() || (tag[after] != '"' && tag[after] != '\''))
      return std::nullopt;
    const auto end = tag.find(tag[after], after + 1);
    if (end == std::string_view::npos)
      return std::nullopt;
    return tag.substr(after + 1, end - after - 1);
  }
  return std::nullopt;
}

/// Moving and even scaling do not change a shape that is scaled to a stated length.
bool keeps_shape(std::string_view transform)
{
  const auto turns = [&](std::string_view word) { return transform.find(word) != std::string_view::npos; };
  if (turns("rotate") || turns("skew") || turns("matrix") ||
      transform.find('-', transform.find("scale")) != std::string_view::npos)
    return false;
  if (const auto at = transform.find("scale"); at != std::string_view::npos)
    return transform.substr(at, transform.find(')', at) - at).find_first_of(", ", 6) ==
           std::string_view::npos;
  return true;
}

/// Where a tag ends: the first > outside quotes.
std::size_t end_of_tag(std::string_view text, std::size_t at)
{
  char quote = 0;
  for (; at < text.size(); ++at)
    if (quote ? text[at] == quote : text[at] == '"' || text[at] == '\'')
      quote = quote ? 0 : text[at];
    else if (!quote && text[at] == '>')
      return at;
  throw InvalidDrawing("a tag of the drawing has no end", "Save the drawing again as a plain SVG");
}
} // namespace

Points path_points(std::string_view data, std::size_t most)
{
  return PathReader(data, most).points();
}

Points svg_outline(std::string_view text, std::size_t most)
{
  if (text.find("<svg") == std::string_view::npos)
    throw InvalidDrawing("the file is not an SVG drawing",
                         "Save the outline as SVG, or give points = \"trace.csv\"");
  std::optional<std::string_view> path;
  int                             line = 0;
  for (std::size_t at = text.find('<'); at != std::string_view::npos; at = text.find('<', at))
  {
    if (text.substr(at).starts_with("<!--"))
    {
      at = text.find("-->", at);
      continue;
    }
    const auto end = end_of_tag(text, at);
    const auto tag = text.substr(at + 1, end - at - 1);
    const auto name = tag.substr(0, std::min(tag.find_first_of(" \t\r\n/"), tag.size()));
    if (const auto transform = attribute(tag, "transform"); transform && !keeps_shape(*transform))
      throw InvalidDrawing("a part of the drawing is turned, mirrored or stretched (transform)",
                           "Ungroup the path and save it again without transforms", line_of(text, at));
    if (name == "path" || name == "svg:path")
    {
      if (path)
        throw InvalidDrawing("the drawing has several paths", "Keep the edge of the sole alone",
                             line_of(text, at));
      path = attribute(tag, "d");
      line = line_of(text, at);
    }
    at = end;
  }
  if (!path)
    throw InvalidDrawing("the drawing has no path",
                         "Turn the outline into one closed path in the drawing program, and save it as SVG");
  try
  {
    return path_points(*path, most);
  }
  catch (const InvalidDrawing &error)
  {
    throw InvalidDrawing(error.what(), error.cure, line);
  }
}
} // namespace solemech::tools
