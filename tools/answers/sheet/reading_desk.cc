// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/reading_desk.h"

#include "tools/answers/sheet/plausible.h"
#include "tools/answers/sheet/value_words.h"
#include "tools/language/file_text.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace solemech::tools
{
using namespace materials;
namespace fs = std::filesystem;
using D = Dimension;

double ReadingDesk::value_of(const Fields &fields, const char *name, Dimension dimension)
{
  try
  {
    const auto value = parse_doubted(fields.text(name), dimension).value;
    if (value > 0)
      return value;
    fields.problem(name, "must be above zero", "Write what you read on the bench");
  }
  catch (const InvalidQuantity &error)
  {
    fields.problem(name, error.what(), error.cure);
  }
  return 1;
}

namespace
{
/// "94 +- 5" for "94 g +- 5 g".
std::string without_unit(const std::string &text, const std::string &unit)
{
  const auto strip = [&](std::string part) {
    if (!unit.empty() && part.ends_with(unit))
      part.resize(part.size() - unit.size());
    return part;
  };
  const auto parts = split_doubted(text);
  return strip(parts.value) + (parts.doubt.empty() ? "" : " +- " + strip(parts.doubt));
}
} // namespace

Measured ReadingDesk::measured(const Fields &fields, Dimension dimension, const Instrument &instrument)
{
  Measured            out;
  std::vector<double> values;
  double              written = 0;
  bool                slips = false;
  const char         *entry = fields.given("values") ? "values" : "value";
  const auto          texts =
    fields.given("values") ? fields.texts("values") : std::vector<std::string>{fields.text("value")};
  if (!fields.given("values") && !fields.given("value"))
  {
    fields.problem("value", "is missing",
                   "Give value = \"...\", or values = [\"...\", \"...\"] for several hits");
    return out;
  }
  const auto source_of = [&](std::size_t i) {
    const auto *list = fields.table()[entry].as_array();
    return list ? list->get(i)->source() : fields.table().get(entry)->source();
  };
  for (std::size_t i = 0; i < texts.size(); ++i)
    try
    {
      const auto one = parse_doubted(
        instrument.unit.empty() ? texts[i] : without_unit(texts[i], instrument.unit), dimension);
      if (!(one.value > 0))
        throw InvalidQuantity(fmt::format("\"{}\" is not above zero", texts[i]),
                              "Write what you read on the bench");
      values.push_back(one.value);
      written = std::max(written, one.half_band);
    }
    catch (const InvalidQuantity &error)
    {
      problems.add(problem_at(source_of(i), fields.title(entry), error.what(), error.cure));
      slips = true;
    }
  if (slips || values.empty())
    return out;
  const auto n = static_cast<double>(values.size());
  out.n = static_cast<int>(values.size());
  out.value = std::accumulate(values.begin(), values.end(), 0.0) / n;
  const double own = instrument.relative ? instrument.half_band * out.value : instrument.half_band;
  out.half_band = written > 0 ? written : own;
  if (const auto odd = odd_hit(values, out.half_band, dimension, instrument.unit))
  {
    problems.add(problem_at(source_of(odd->index), fields.title(entry), odd->reason, odd->cure));
    return out;
  }
  if (values.size() > 1)
  {
    double squares = 0;
    for (const double value : values)
      squares += (value - out.value) * (value - out.value);
    // Scatter of the mean; the instrument's own doubt is the same for all hits and does not average out.
    out.half_band = std::hypot(out.half_band, doubts_in_half_band * std::sqrt(squares / (n - 1) / n));
  }
  if (written == 0)
  {
    const auto told =
      fmt::format("{}: no ± given, that of {} assumed, ±{}{}", fields.text("kind"), instrument.name,
                  half_text(own, out.value, dimension, instrument.unit),
                  out.n > 1 ? fmt::format("; with the scatter of {} hits ±{}", out.n,
                                          half_text(out.half_band, out.value, dimension, instrument.unit))
                            : "");
    if (std::find(sheet.assumptions.begin(), sheet.assumptions.end(), told) == sheet.assumptions.end())
      sheet.assumptions.push_back(told);
  }
  if (out.half_band >= out.value)
  {
    fields.problem(entry, "the ± of this reading is not smaller than the reading", "Give a smaller +-");
    return out;
  }
  out.usable = true;
  return out;
}

std::size_t ReadingDesk::add_bench(Bench bench)
{
  sheet.benches.push_back(std::move(bench));
  return sheet.benches.size() - 1;
}

std::size_t ReadingDesk::drop_bench(const Fields &fields)
{
  const double height = fields.given("height") ? value_of(fields, "height", D::length) : 0;
  const double mass = fields.given("mass") ? value_of(fields, "mass", D::mass) : 0;
  const double rest = fields.given("rest") ? value_of(fields, "rest", D::time) : 0;
  const int hits = rest > 0 && fields.given("values") ? static_cast<int>(fields.texts("values").size()) : 0;
  if (height == 0 && mass == 0 && hits == 0)
    return 0;
  return add_bench([=](solver::Case &setup) {
    auto &drop = *rigs::fall_of(setup);
    if (height > 0)
      drop.height = height;
    if (mass > 0)
      drop.mass = mass;
    if (hits > 0)
      drop.hits = hits, drop.rest = rest;
  });
}

std::string ReadingDesk::file_text(const Fields &fields, fs::path &path)
{
  const auto name = fields.text("file");
  if (name.empty())
  {
    if (!fields.given("file"))
      fields.problem("file", "is missing: this kind of reading comes from a sensor's CSV file",
                     "Write file = \"impact.csv\"");
    return {};
  }
  path = sheet.path.parent_path() / name;
  // A million rows of two numbers is some 30 MB; more is no record of one hit.
  constexpr std::size_t largest_record = 64'000'000;
  auto                  found = file_text_below(sheet.path.parent_path(), name, largest_record);
  if (found.state != FileText::State::read)
  {
    const bool is_missing = found.state == FileText::State::missing;
    fields.problem("file",
                   is_missing ? fmt::format("there is no file \"{}\" in the folder of the sheet", name)
                              : fmt::format("\"{}\": {}", name, found.reason),
                   is_missing ? "Give the name of a CSV file" : found.cure);
    return {};
  }
  sheet.data += found.text;
  sheet.file.sheets.push_back({"reading", name, found.text});
  return std::move(found.text);
}

const solver::Layer *ReadingDesk::find_layer(const std::string &name, const toml::node &node,
                                             const std::string &title)
{
  if (!has_case)
    return nullptr;
  std::vector<std::string> names;
  for (const auto &layer : sheet.setup.layers)
  {
    if (layer.name == name)
      return &layer;
    names.push_back(layer.name);
  }
  const auto near = nearest_name(name, names);
  problems.add(problem_at(node.source(), title, fmt::format("there is no layer \"{}\"", name),
                          near.empty() ? "Give the name of a layer of the sheet"
                                       : fmt::format("Did you mean \"{}\"?", near)));
  return nullptr;
}

void ReadingDesk::add(Probe probe, double value, double half_band, bool held_out, const std::string &layer)
{
  SheetReading reading;
  const auto   same =
    std::count_if(sheet.readings.begin(), sheet.readings.end(), [&](const SheetReading &other) {
      return other.probe.name == probe.name || other.probe.name.starts_with(probe.name + " (");
    });
  if (same > 0)
    probe.name += fmt::format(" ({})", same + 1);
  reading.observation.name = probe.name;
  reading.observation.value = value;
  reading.observation.doubt = half_band / doubts_in_half_band;
  reading.observation.held_out = held_out;
  reading.probe = std::move(probe);
  reading.layer = layer;
  sheet.readings.push_back(std::move(reading));
}
} // namespace solemech::tools
