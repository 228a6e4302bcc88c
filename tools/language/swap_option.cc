// SPDX-License-Identifier: Apache-2.0
#include "tools/language/swap_option.h"

#include "tools/language/addresses.h"
#include "tools/language/shown_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>

namespace solemech::tools
{
using materials::Problems;

namespace
{
constexpr const char *swap_example = "Write --swap \"insert = pp-semirigid 2 mm\", for example";
constexpr const char *range_example = "Write --range gauge_pressure=\"80..200 kPa\", for example";
constexpr std::size_t most_points = 100;
constexpr int         usual_points = 7;

/// A piece of an option's text, with its place.
struct Piece
{
  std::string_view whole; ///< the option
  std::size_t      begin = 0, end = 0;
  int              line = 1;

  std::string_view text() const { return whole.substr(begin, end - begin); }
  bool             empty() const { return begin == end; }

  Piece part(std::size_t from, std::size_t to) const
  {
    Piece piece{whole, std::min(from, end), std::min(to, end), line};
    while (piece.begin < piece.end && whole[piece.begin] == ' ')
      ++piece.begin;
    while (piece.end > piece.begin && whole[piece.end - 1] == ' ')
      --piece.end;
    return piece;
  }

  PlacedText placed() const
  {
    return {std::string(text()), line, static_cast<int>(materials::characters(whole.substr(0, begin))) + 1};
  }
};

/// Blanks for tabs and what else does not print; quotes that came through the shell mean nothing here.
std::string cleaned(std::string text, bool keep_quotes)
{
  for (char &c : text)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f || (c == '"' && !keep_quotes))
      c = ' ';
  return text;
}

void note(Problems &problems, const char *option, const PlacedText &at, std::string entry, std::string reason,
          std::string cure)
{
  problems.add({option, at.line, at.column, std::move(entry), std::move(reason), std::move(cure)});
}

bool begins_a_number(std::string_view text)
{
  const auto digit = [&](std::size_t i) {
    return i < text.size() && std::isdigit(static_cast<unsigned char>(text[i])) != 0;
  };
  return digit(0) || (!text.empty() && (text[0] == '.' || text[0] == '-' || text[0] == '+') && digit(1));
}

/// One sheet: the material is what stands before the first number.
Ply ply_of(const Piece &piece)
{
  Ply         ply{piece.placed(), {}, {}};
  std::size_t number = piece.begin;
  while (number < piece.end && !((number == piece.begin || piece.whole[number - 1] == ' ') &&
                                 begins_a_number(piece.whole.substr(number, piece.end - number))))
    ++number;
  if (const auto material = piece.part(piece.begin, number); !material.empty())
    ply.material = material.placed();
  if (const auto thickness = piece.part(number, piece.end); !thickness.empty())
    ply.thickness = thickness.placed();
  return ply;
}

std::vector<Ply> plies_of(const Piece &piece, Problems &problems, const std::string &layer)
{
  std::vector<Ply> plies;
  for (std::size_t from = piece.begin; from <= piece.end;)
  {
    const auto plus = std::min(piece.whole.find('+', from), piece.end);
    const auto part = piece.part(from, plus);
    if (part.empty())
      note(problems, swap_option, part.placed(), layer, "nothing is written beside the +",
           "Write pp-semirigid 2 mm + eva-soft 2 mm, for example");
    else
      plies.push_back(ply_of(part));
    from = plus + 1;
  }
  return plies;
}

/// One entry set; nothing when the value cannot be read.
/// @param file  the option, for messages
std::optional<Change> change_of(const std::string &address, const PlacedText &value, const std::string &file)
{
  auto holder = option_value(value, file);
  if (!holder)
    return std::nullopt;
  Change change;
  change.address = split_address(address);
  change.written = address;
  change.holder = std::move(*holder);
  return change;
}

std::optional<Variant::value_type> swap_of(const Piece &option, Problems &problems)
{
  const auto equals = option.whole.find('=');
  const auto left = option.part(0, std::min(equals, option.end));
  const auto right = option.part(std::min(equals, option.end) + 1, option.end);
  if (equals == std::string_view::npos || left.empty() || right.empty())
  {
    note(problems, swap_option,
         (left.empty()                       ? option
          : equals == std::string_view::npos ? left
                                             : right)
           .placed(),
         "",
         equals == std::string_view::npos ? "there is no = in it"
         : left.empty()                   ? "no layer is named before the ="
                                          : "nothing is written after the =",
         swap_example);
    return std::nullopt;
  }
  const auto layer = left.placed();
  if (left.text().find('.') == std::string_view::npos)
    return LayerSwap{layer,
                     right.text() == "none" ? std::vector<Ply>() : plies_of(right, problems, layer.text)};

  auto change = change_of(layer.text, right.placed(), swap_option);
  if (!change)
  {
    note(problems, swap_option, right.placed(), layer.text, "the value cannot be read",
         "Write --swap \"core.thickness = 18 mm\", for example");
    return std::nullopt;
  }
  return std::move(*change);
}

/// A number at the start of a text, and how many characters it takes; 0: none.
std::pair<double, std::size_t> leading_number(std::string_view text)
{
  double     number = 0;
  const auto begins = text.data() + (text.starts_with('+') ? 1 : 0);
  const auto [rest, error] = std::from_chars(begins, text.data() + text.size(), number);
  return error == std::errc() && std::isfinite(number)
           ? std::pair{number, static_cast<std::size_t>(rest - text.data())}
           : std::pair{0.0, std::size_t{0}};
}

/// Distance of about `usual_points` points at 1, 2, 2.5 or 5 times a power of ten.
double round_step(double width)
{
  const double wished = width / (usual_points - 1), ten = std::pow(10.0, std::floor(std::log10(wished)));
  double       best = ten;
  for (const double factor : {1.0, 2.0, 2.5, 5.0, 10.0})
    if (std::abs(std::log(factor * ten / wished)) < std::abs(std::log(best / wished)))
      best = factor * ten;
  return best;
}

struct Number
{
  Piece       piece;
  double      value = 0;
  std::string unit;
};

std::optional<Number> number_of(const Piece &piece, const char *what, const std::string &entry,
                                Problems &problems)
{
  const auto [value, length] = leading_number(piece.text());
  if (length == 0)
  {
    note(problems, range_option, piece.placed(), entry, fmt::format("the {} is not a number", what),
         range_example);
    return std::nullopt;
  }
  return Number{piece, value, std::string(piece.part(piece.begin + length, piece.end).text())};
}

void fill(EntryRange &range, const Number &low, const Number &high, double step)
{
  const double width = high.value - low.value;
  const auto   n_steps = static_cast<std::size_t>(std::floor(width / step * (1 + 1e-9)));
  for (std::size_t i = 0; i <= n_steps; ++i)
    range.numbers.push_back(low.value + static_cast<double>(i) * step);
  if (high.value - range.numbers.back() > 1e-6 * step)
    range.numbers.push_back(high.value);
  else
    range.numbers.back() = high.value;
  for (std::size_t i = 0; i < range.numbers.size(); ++i)
  {
    auto value = (i + 1 == range.numbers.size() ? high : low).piece.placed();
    value.text = fmt::format("{:.10g}{}{}", range.numbers[i], range.unit.empty() ? "" : " ", range.unit);
    range.values.push_back(value);
  }
}
} // namespace

Change change_from_option(const std::string &option, Problems &problems)
{
  constexpr std::size_t longest = 1000;
  const auto            slip = [&](const std::string &shown, const char *reason) {
    problems.add({"--set " + shown, 0, 0, "", reason, "Write --set insert.thickness=\"2 mm\", for example"});
    return Change();
  };
  if (option.size() > longest)
    return slip(option.substr(0, 40) + "...", "this is too long");
  const auto equals = option.find('=');
  if (equals == std::string::npos || equals == 0 || equals + 1 == option.size())
    return slip(option, "this is not a change");
  const Piece whole{option, 0, option.size()};
  auto        change = change_of(std::string(whole.part(0, equals).text()),
                                 {std::string(whole.part(equals + 1, option.size()).text())}, "--set " + option);
  return change ? std::move(*change) : slip(option, "the value cannot be read"); // moved: it keeps its place
}

std::string swap_text(const std::string &option)
{
  std::string text;
  for (const char c : cleaned(option, false))
    if (c == '=' || c == '+')
      text += text.ends_with(' ') ? std::string(1, c) + " " : fmt::format(" {} ", c);
    else if (c != ' ' || !(text.empty() || text.ends_with(' ')))
      text += c;
  while (text.ends_with(' '))
    text.pop_back();
  return text;
}

Variant read_swaps(const std::vector<std::string> &texts, Problems &problems)
{
  std::string source;
  Variant     swaps;
  for (const auto &text : texts)
  {
    // Quotes belong to a value such as core.material = "eva-firm", not to material and thickness of a layer.
    const bool is_entry = text.substr(0, text.find('=')).find('.') != std::string::npos;
    source += cleaned(text, is_entry) + "\n";
  }
  problems.add_source(swap_option, source);
  std::size_t from = 0;
  for (std::size_t i = 0; i < texts.size(); ++i)
  {
    const auto  to = source.find('\n', from);
    const Piece option{std::string_view(source).substr(from, to - from), 0, to - from,
                       static_cast<int>(i) + 1};
    if (auto swap = swap_of(option, problems))
      swaps.push_back(std::move(*swap));
    from = to + 1;
  }
  return swaps;
}

Change change_of_range(const EntryRange &range, std::size_t value)
{
  auto change = change_of(range.entry.text, range.values[value], range_option).value_or(Change());
  if (change.address.size() == 1)
  {
    change.address.clear();
    change.called = range.entry;
  }
  return change;
}

EntryRange read_range(const std::string &text, Problems &problems)
{
  EntryRange        range;
  const std::string source = cleaned(text, false);
  problems.add_source(range_option, source);
  const Piece whole{source, 0, source.size()};
  const auto  equals = source.find('='), dots = source.find("..", equals == std::string::npos ? 0 : equals);
  const auto  left = whole.part(0, std::min(equals, source.size()));
  if (equals == std::string::npos || left.empty() || dots == std::string::npos)
  {
    note(problems, range_option, (left.empty() ? whole : left).placed(), "",
         equals == std::string::npos || left.empty() ? "there is no entry with a = after it"
                                                     : "there is no .. in it",
         range_example);
    return range;
  }
  range.entry = left.placed();
  const auto &entry = range.entry.text;
  const auto  by = source.find(" by ", dots);
  const auto  low = number_of(whole.part(equals + 1, dots), "lowest value", entry, problems);
  const auto  high =
    number_of(whole.part(dots + 2, std::min(by, source.size())), "highest value", entry, problems);
  auto step = by == std::string::npos ? std::optional<Number>()
                                      : number_of(whole.part(by + 4, source.size()), "step", entry, problems);
  if (!low || !high || (by != std::string::npos && !step))
    return range;
  range.unit = high->unit;
  for (const auto *other : {&*low, step ? &*step : &*low})
    if (!other->unit.empty() && other->unit != high->unit)
    {
      note(
        problems, range_option, other->piece.placed(), entry,
        fmt::format("the units differ: \"{}\" and \"{}\"", other->unit, high->unit),
        fmt::format("Give all of it in one unit, such as {}", high->unit.empty() ? other->unit : high->unit));
      return range;
    }
  if (low->value >= high->value)
    note(problems, range_option, low->piece.placed(), entry, "the lowest value is not below the highest",
         "Swap the two");
  else if (step && step->value <= 0)
    note(problems, range_option, step->piece.placed(), entry, "the step is not above 0",
         fmt::format("Write by {:g} {}, for example", round_step(high->value - low->value), range.unit));
  else if (step && step->value > high->value - low->value)
    note(problems, range_option, step->piece.placed(), entry, "the step is wider than the range",
         fmt::format("Write by {:g} {}, for example", round_step(high->value - low->value), range.unit));
  else if (step && (high->value - low->value) / step->value > static_cast<double>(most_points))
    note(problems, range_option, step->piece.placed(), entry,
         fmt::format("the step gives more than {} points", most_points), "Give a larger step");
  else
    fill(range, *low, *high, step ? step->value : round_step(high->value - low->value));
  return range;
}
} // namespace solemech::tools
