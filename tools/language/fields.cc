// SPDX-License-Identifier: Apache-2.0
#include "tools/language/fields.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <sstream>

namespace solemech::materials
{
namespace
{
constexpr double not_a_value = std::numeric_limits<double>::quiet_NaN();

/// A scalar node as the person wrote it, without quotes.
std::string shown(const toml::node &node)
{
  if (const auto *text = node.as_string())
    return text->get();
  std::ostringstream out;
  if (const auto *integer = node.as_integer())
    out << integer->get();
  else if (const auto *floating = node.as_floating_point())
    out << floating->get();
  else if (const auto *boolean = node.as_boolean())
    out << (boolean->get() ? "true" : "false");
  else
    out << (node.is_table() ? "a block" : node.is_array() ? "a list" : "a date or time");
  return out.str();
}

bool has_unit(Dimension dimension)
{
  return dimension < Dimension::share;
}

std::string allowed_words(const Entry &entry)
{
  std::string text;
  for (const auto &word : word_list(entry))
    text += (text.empty() ? "\"" : ", \"") + word + "\"";
  return text;
}

std::string example_line(const Entry &entry)
{
  const bool quoted = entry.dimension != Dimension::number && entry.dimension != Dimension::count &&
                      entry.dimension != Dimension::flag && entry.dimension != Dimension::list;
  std::string example(dimension_example(entry.dimension));
  if (!entry.words.empty())
    example = word_list(entry).front();
  const char *quote = quoted ? "\"" : "";
  return fmt::format("{} = {}{}{}", entry.name, quote, example, quote);
}
} // namespace

Problem problem_at(const toml::source_region &region, std::string entry, std::string reason, std::string cure)
{
  const std::string file = region.path ? *region.path : std::string("case");
  const bool        line = region.begin.line > 0 && !file.starts_with("--set");
  return {file,
          line ? static_cast<int>(region.begin.line) : 0,
          line ? static_cast<int>(region.begin.column) : 0,
          std::move(entry),
          std::move(reason),
          std::move(cure)};
}

Fields::Fields(const toml::table &table, std::string_view section, std::string title,
               std::span<const Entry> schema, Problems &problems)
  : table_(table), section_(section), title_(std::move(title)), schema_(schema), problems_(problems)
{
  check_names();
}

void Fields::check_names() const
{
  std::vector<std::string> names;
  for (const auto &known : schema_)
    if (known.section == section_)
      names.emplace_back(known.name);
  for (const auto &[key, node] : table_)
  {
    const std::string name(key.str());
    const auto        known = std::find(names.begin(), names.end(), name);
    if (known == names.end())
    {
      const auto  near = nearest_name(name, names);
      std::string all;
      for (const auto &n : names)
        all += (all.empty() ? "" : ", ") + n;
      const auto &region = key.source().begin.line > 0 ? key.source() : node.source();
      problems_.add(
        problem_at(region, this->title(name), "there is no such entry",
                   near.empty() ? "Known here: " + all : fmt::format("Did you mean \"{}\"?", near)));
      continue;
    }
    const auto other = entry(name).instead_of;
    if (!other.empty() && table_.contains(other))
      problem(name, fmt::format("{} is given as well, and both set the same thing", other),
              "Keep one of the two");
  }
}

bool Fields::knows(std::string_view name) const
{
  return std::ranges::any_of(
    schema_, [&](const Entry &known) { return known.section == section_ && known.name == name; });
}

const Entry &Fields::entry(std::string_view name) const
{
  for (const auto &known : schema_)
    if (known.section == section_ && known.name == name)
      return known;
  throw std::logic_error(fmt::format("entry {}.{} is not in the schema", section_, name));
}

std::string Fields::title(std::string_view name) const
{
  return title_.empty() ? std::string(name) : fmt::format("{}.{}", title_, name);
}

void Fields::problem(std::string_view name, std::string reason, std::string cure) const
{
  const auto *node = table_.get(name);
  problems_.add(
    problem_at(node ? node->source() : table_.source(), title(name), std::move(reason), std::move(cure)));
}

void Fields::problem_of(const toml::node &node, const Entry &known, std::string reason,
                        std::string cure) const
{
  problems_.add(problem_at(node.source(), title(known.name), std::move(reason), std::move(cure)));
}

double Fields::checked(double value, const toml::node &node, const Entry &known,
                       const std::string &text) const
{
  const auto &range = known.range;
  if (!std::isfinite(value))
  {
    problem_of(node, known, fmt::format("{} is not a finite number", text), "Write a number");
    return not_a_value;
  }
  // Decimal values meet binary bounds: a relative 1e-12 keeps "0.2 mm" at a bound of 0.2 mm inside.
  const double slack = 1e-12 * std::abs(value);
  if (value < range.lowest - slack || value > range.highest + slack ||
      (range.above_lowest && value <= range.lowest))
  {
    const auto usual = range_text(known), as_written = range_text(known, written_unit(text, known.dimension));
    problem_of(node, known, fmt::format("\"{}\" is out of range", text),
               fmt::format("Allowed: {}{}", usual, as_written == usual ? "" : ", that is " + as_written));
    return not_a_value;
  }
  return value;
}

double Fields::value(std::string_view name) const
{
  const auto &known = entry(name);
  const auto *node = table_.get(name);
  if (!node)
  {
    if (known.fallback == required)
      problem(name, "is missing", fmt::format("Add a line such as: {}", example_line(known)));
    const auto list = word_list(known);
    if (known.fallback.empty() || known.fallback == required ||
        std::find(list.begin(), list.end(), known.fallback) != list.end())
      return not_a_value;
    return parse_quantity(known.fallback, known.dimension);
  }
  return value_of(*node, known);
}

double Fields::value_of(const toml::node &node, const Entry &known) const
{
  const auto written = shown(node);
  if (node.is_number())
  {
    if (has_unit(known.dimension))
    {
      const auto example = dimension_example(known.dimension);
      problem_of(node, known, fmt::format("{} has no unit", written),
                 fmt::format("Write {} = \"{} {}\", for example (known: {})", known.name, written,
                             example.substr(example.find(' ') + 1), unit_list(known.dimension)));
      return not_a_value;
    }
    return checked(*node.value<double>(), node, known, written);
  }
  if (!node.is_string())
  {
    problem_of(node, known,
               fmt::format("is {}, but a {} is needed", written, dimension_name(known.dimension)),
               fmt::format("Write {}, for example", example_line(known)));
    return not_a_value;
  }
  try
  {
    return checked(parse_quantity(written, known.dimension), node, known, written);
  }
  catch (const InvalidQuantity &error)
  {
    const auto list = word_list(known);
    if (std::find(list.begin(), list.end(), written) != list.end())
      return not_a_value;
    auto cure = error.cure;
    if (!list.empty())
    {
      const auto near = nearest_name(written, list);
      cure = near.empty() ? fmt::format("{}, or one of {}", cure, allowed_words(known))
                          : fmt::format("Did you mean \"{}\"?", near);
    }
    problem_of(node, known, error.what(), cure);
    return not_a_value;
  }
}

std::vector<double> Fields::row(std::string_view name, std::size_t n) const
{
  const auto &known = entry(name);
  const auto *node = table_.get(name);
  const auto *list = node ? node->as_array() : nullptr;
  if (!list)
    return std::vector<double>(n, value(name));
  if (list->size() != n)
  {
    problem_of(
      *node, known, fmt::format("lists {} values, but {} are needed", list->size(), n),
      fmt::format("Give one value for all, or {}. {}", n, known.meaning.substr(0, known.meaning.rfind('.'))));
    return std::vector<double>(n, not_a_value);
  }
  std::vector<double> values;
  for (const auto &element : *list)
    values.push_back(value_of(element, known));
  return values;
}

void Fields::take(double &target, std::string_view name, bool with_default) const
{
  if (!given(name) && !with_default)
    return;
  const double read = value(name);
  if (given(name) || !std::isnan(read))
    target = read;
}

std::string Fields::word(std::string_view name) const
{
  const auto &known = entry(name);
  const auto  list = word_list(known);
  const auto *node = table_.get(name);
  const auto  written =
    node ? (node->is_string() ? node->as_string()->get() : std::string()) : std::string(known.fallback);
  return std::find(list.begin(), list.end(), written) != list.end() ? written : std::string();
}

std::string Fields::text(std::string_view name) const
{
  const auto &known = entry(name);
  const auto *node = table_.get(name);
  if (!node)
  {
    if (known.fallback == required)
      problem(name, "is missing", fmt::format("Add a line such as: {}", example_line(known)));
    return known.fallback == required ? std::string() : std::string(known.fallback);
  }
  if (!node->is_string())
  {
    problem(name, fmt::format("is {}, but text in quotes is needed", shown(*node)),
            fmt::format("Write {}, for example", example_line(known)));
    return {};
  }
  const auto written = node->as_string()->get();
  const auto list = word_list(known);
  if (known.fallback == required && written.find_first_not_of(" \t\r\n") == std::string::npos)
  {
    problem(name, "is empty", fmt::format("Write {}, for example", example_line(known)));
    return {};
  }
  if (!list.empty() && std::find(list.begin(), list.end(), written) == list.end())
  {
    const auto near = nearest_name(written, list);
    problem(name, fmt::format("\"{}\" is not known here", written),
            near.empty() ? fmt::format("Use one of {}", allowed_words(known))
                         : fmt::format("Did you mean \"{}\"?", near));
    return {};
  }
  return written;
}

bool Fields::flag(std::string_view name) const
{
  const auto *node = table_.get(name);
  if (!node)
    return entry(name).fallback == "true";
  if (!node->is_boolean())
  {
    problem(name, fmt::format("is {}, but true or false is needed", shown(*node)),
            fmt::format("Write {} = true or {} = false, without quotes", name, name));
    return false;
  }
  return node->as_boolean()->get();
}

int Fields::count(std::string_view name) const
{
  const double number = value(name);
  if (std::isnan(number))
    return 0;
  if (number != std::floor(number) || std::abs(number) > 1e9)
  {
    problem(name, fmt::format("{:g} is not a whole number", number), "Write a whole number");
    return 0;
  }
  return static_cast<int>(number);
}

std::optional<GaugeReading> Fields::hardness(std::string_view name) const
{
  const auto *node = table_.get(name);
  if (!node)
    return {};
  if (node->is_number())
  {
    problem(name, fmt::format("{} does not name its hardness scale", shown(*node)),
            fmt::format("Write {} = \"{} ShoreA\", for example (known: ShoreA, ShoreD, ShoreOO, AskerC)",
                        name, shown(*node)));
    return {};
  }
  try
  {
    return parse_hardness(text(name));
  }
  catch (const InvalidQuantity &error)
  {
    problem(name, error.what(), error.cure);
    return {};
  }
}

const toml::table *Fields::block(std::string_view name) const
{
  const auto *node = table_.get(name);
  if (!node)
    return nullptr;
  if (!node->is_table())
    problem(name, "is not a block of entries", fmt::format("Begin it with this line: [{}]", title(name)));
  return node->as_table();
}

std::vector<const toml::table *> Fields::blocks(std::string_view name) const
{
  const auto *node = table_.get(name);
  if (!node)
    return {};
  std::vector<const toml::table *> list;
  if (const auto *one = node->as_table())
    list.push_back(one);
  else if (const auto *array = node->as_array())
  {
    for (const auto &element : *array)
      if (const auto *table = element.as_table())
        list.push_back(table);
      else
      {
        problems_.add(
          problem_at(element.source(), title(name), "is not a block of entries",
                     fmt::format("Begin each with [[{}]], or write {{name = value, ...}}", name)));
        return {};
      }
  }
  else
    problem(name, "is not a list of blocks",
            fmt::format("Begin each with [[{}]], or write [{{name = value, ...}}]", name));
  return list;
}

std::vector<std::string> Fields::texts(std::string_view name) const
{
  const auto *node = table_.get(name);
  if (!node)
  {
    if (entry(name).fallback == required)
      problem(name, "is missing", fmt::format("Add a line such as: {}", example_line(entry(name))));
    return {};
  }
  std::vector<std::string> list;
  if (const auto *array = node->as_array())
  {
    for (const auto &element : *array)
      if (element.is_array() || element.is_table() || element.is_date() || element.is_time() ||
          element.is_date_time())
        problems_.add(problem_at(element.source(), title(name),
                                 fmt::format("{} cannot stand in this list", shown(element)),
                                 "List plain values, each in quotes"));
      else
        list.push_back(shown(element));
  }
  else
    problem(name, "is not a list", fmt::format("Write {} = [\"2 J\", \"4 J\"], for example", name));
  return list;
}
} // namespace solemech::materials
