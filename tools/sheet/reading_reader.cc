// SPDX-License-Identifier: Apache-2.0
#include "tools/sheet/reading_reader.h"

#include "materials/hardness.h"
#include "materials/sheet.h"
#include "tools/records/impact_record.h"
#include "tools/records/press_loop.h"
#include "tools/sheet/instruments.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace solemech::tools
{
using namespace materials;
namespace fs = std::filesystem;

namespace
{
using D = Dimension;

const Entry entries[] = {
  {"pair", "label", D::text, any_value, "", "What you call the pair."},
  {"pair", "part", D::choice, any_value, "", "Which part of it.", "heel|forefoot"},
  {"pair", "cut", D::text, any_value, "", "How the plug was cut."},
  {"reading", "kind", D::choice, any_value, required, "What was read.",
   "rebound|peak force|deceleration|compression|contact time|hardness|density|impact record|press loop|bend|"
   "abrasion|tread left"},
  {"reading", "value", D::text, any_value, "", "One value, with +- if you know it.", "", "values"},
  {"reading", "values", D::list, any_value, "", "Several hits or spots.", "", "value"},
  {"reading", "by", D::choice, any_value, "", "How the height was read.", "eye, rule|camera|sensor"},
  {"reading", "height", D::text, any_value, "", "Fall of this reading, when it is not that of the rig."},
  {"reading", "mass", D::text, any_value, "", "Drop weight of this reading, when it is not that of the rig."},
  {"reading", "rest", D::text, any_value, "",
   "Time between the hits; without it each hit found a rested stack."},
  {"reading", "layer", D::text, any_value, "", "Layer that a hardness or density belongs to."},
  {"reading", "where", D::choice, any_value, "", "A gauge: on a thick pad, or on the stack.", "pad|in place"},
  {"reading", "file", D::file, any_value, "", "CSV file of a sensor, beside the sheet."},
  {"reading", "diameter", D::text, any_value, "", "Of the flat head of a press."},
  {"reading", "duration", D::text, any_value, "", "Of one cycle of a press."},
  {"reading", "hold_out", D::flag, any_value, "false", "Compare only, never settle on it."},
  {"reading", "wore_through", D::flag, any_value, "false", "Abrasion: the depth is a least one."},
  {"reading", "note", D::text, any_value, "", "What else is to be said."},
};

struct DropKind
{
  const char *kind, *reading;
  Dimension   dimension;
  double      instrument; ///< half band of what is read by hand or sensor
  bool        relative;
  const char *instrument_name;
};
constexpr DropKind drop_kinds[] = {
  {"rebound", "rebound_height", D::length, instruments::height_by_eye, false,
   "a height read by eye on a rule"},
  {"peak force", "peak_force", D::force, instruments::force_sensor, true, "a force sensor"},
  {"deceleration", "peak_deceleration", D::number, instruments::acceleration_sensor, true,
   "an acceleration sensor"},
  {"compression", "greatest_compression", D::length, instruments::compression_by_camera, false,
   "a compression read by camera"},
  {"contact time", "contact_time", D::time, instruments::contact_time, false, "a contact time"},
};
constexpr double thinnest_for_gauge = 6e-3; // [m], ISO 48-4 (from memory)
constexpr double scales_apart = 2.5;        // ratio of moduli that two gauges on one spot cannot differ by
} // namespace

std::span<const Entry> reading_entries()
{
  return entries;
}

void ReadingReader::readings(const toml::table &tree)
{
  const auto *node = tree.get("reading");
  if (!node)
    return;
  if (const auto *list = node->as_array())
  {
    for (const auto &element : *list)
      if (const auto *table = element.as_table())
        reading(*table);
      else
        problems_.add(
          problem_at(element.source(), "reading", "is no block", "Write [[reading]] above its entries"));
  }
  else if (const auto *table = node->as_table())
    reading(*table);
  else
    problems_.add(
      problem_at(node->source(), "reading", "is no block", "Write [[reading]] above its entries"));
}

void ReadingReader::reading(const toml::table &table)
{
  const Fields fields(table, "reading", "reading", entries, problems_);
  const auto   kind = fields.text("kind");
  const bool   held_out = fields.flag("hold_out");
  if (kind == "hardness" || kind == "density")
  {
    const auto layer = fields.text("layer");
    if (layer.empty())
      fields.problem("layer", "is missing: a reading of a material belongs to a layer",
                     "Write layer = \"core\"");
    const auto *value = table.get("value");
    if (!value)
      fields.problem("value", "is missing",
                     kind == "hardness" ? "Write value = \"42 AskerC\"" : "Write value = \"170 kg/m3\"");
    if (layer.empty() || !value)
      return;
    if (kind == "hardness")
      hardness(fields.text("value"), layer, fields.text("where"), held_out, *value, "reading.value");
    else
      density(fields.text("value"), layer, held_out, *value, "reading.value");
  }
  else if (kind == "impact record")
    impact(fields);
  else if (kind == "press loop")
    press_loop(fields);
  else if (kind == "bend" || kind == "abrasion" || kind == "tread left")
  {
    const auto measured_text = fields.given("value") ? fields.text("value") : std::string("no value");
    sheet_.kept.push_back(fmt::format("{}: {}{}; kept on the sheet, the model of this rig does not use it",
                                      kind, fields.flag("wore_through") ? "at least " : "", measured_text));
  }
  else if (!kind.empty())
    drop_reading(fields, kind);
}

double ReadingReader::value_of(const Fields &fields, const char *name, Dimension dimension)
{
  try
  {
    const auto value = parse_doubted(fields.text(name), dimension).value;
    if (value > 0)
      return value;
    fields.problem(name, "must be above zero", "Write what the bench shows");
  }
  catch (const InvalidQuantity &error)
  {
    fields.problem(name, error.what(), error.cure);
  }
  return 1;
}

ReadingReader::Measured ReadingReader::measured(const Fields &fields, Dimension dimension, double instrument,
                                                bool relative, const std::string &instrument_name)
{
  Measured            out;
  std::vector<double> values;
  double              written = 0;
  const char         *entry = fields.given("values") ? "values" : "value";
  const auto          texts =
    fields.given("values") ? fields.texts("values") : std::vector<std::string>{fields.text("value")};
  if (!fields.given("values") && !fields.given("value"))
  {
    fields.problem("value", "is missing",
                   "Write value = \"...\", or values = [\"...\", \"...\"] for several hits");
    return out;
  }
  for (const auto &text : texts)
    try
    {
      const auto one = parse_doubted(text, dimension);
      if (!(one.value > 0))
        throw InvalidQuantity(fmt::format("\"{}\" is not above zero", text), "Write what the bench shows");
      values.push_back(one.value);
      written = std::max(written, one.half_band);
    }
    catch (const InvalidQuantity &error)
    {
      fields.problem(entry, error.what(), error.cure);
      return out;
    }
  if (values.empty())
    return out;
  const auto n = static_cast<double>(values.size());
  out.n = static_cast<int>(values.size());
  out.value = std::accumulate(values.begin(), values.end(), 0.0) / n;
  out.half_band = written > 0 ? written : relative ? instrument * out.value : instrument;
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
      fmt::format("{}: no +- written, taken as that of {}", fields.text("kind"), instrument_name);
    if (std::find(sheet_.assumptions.begin(), sheet_.assumptions.end(), told) == sheet_.assumptions.end())
      sheet_.assumptions.push_back(told);
  }
  if (out.half_band >= out.value)
  {
    fields.problem(entry, "the doubt of this reading is not smaller than the reading",
                   "Write a +- of your own");
    return out;
  }
  out.usable = true;
  return out;
}

std::size_t ReadingReader::drop_bench(const Fields &fields)
{
  const double height = fields.given("height") ? value_of(fields, "height", D::length) : 0;
  const double mass = fields.given("mass") ? value_of(fields, "mass", D::mass) : 0;
  const double rest = fields.given("rest") ? value_of(fields, "rest", D::time) : 0;
  const int hits = rest > 0 && fields.given("values") ? static_cast<int>(fields.texts("values").size()) : 0;
  if (height == 0 && mass == 0 && hits == 0)
    return 0;
  sheet_.benches.push_back([=](solver::Case &setup) {
    auto &drop = std::get<solver::DropRig>(setup.rig);
    if (height > 0)
      drop.height = height;
    if (mass > 0)
      drop.mass = mass;
    if (hits > 0)
      drop.hits = hits, drop.rest = rest;
  });
  return sheet_.benches.size() - 1;
}

void ReadingReader::drop_reading(const Fields &fields, const std::string &kind)
{
  for (const auto &known : drop_kinds)
  {
    if (kind != known.kind)
      continue;
    auto        dimension = known.dimension;
    auto        instrument = known.instrument;
    auto        name = std::string(known.instrument_name);
    auto        reading = std::string(known.reading);
    const auto  first = fields.given("values") && !fields.texts("values").empty()
                          ? fields.texts("values").front()
                        : fields.given("value") ? fields.text("value")
                                                : std::string();
    const auto *drop = has_case_ ? std::get_if<solver::DropRig>(&sheet_.setup.rig) : nullptr;
    if (has_case_ && !drop)
    {
      fields.problem("kind", fmt::format("a {} needs a drop weight, and the rig of this sheet is none", kind),
                     "Give rig = \"guided-rod-1200\" or a block [drop]");
      return;
    }
    const double height = fields.given("height") ? value_of(fields, "height", D::length)
                          : drop                 ? drop->height
                                                 : 0;
    if (kind == "rebound" && fields.text("by") == "camera")
      instrument = instruments::height_by_camera, name = "a height read by camera";
    if (kind == "rebound" && split_doubted(first).value.ends_with('%'))
    {
      dimension = D::share;
      reading = "rebound_by_height";
      instrument = height > 0 ? instrument / height : 0.015;
    }
    const auto found = measured(fields, dimension, instrument, known.relative, name);
    if (!found.usable)
      return;
    if (kind == "rebound" && has_case_ && found.value >= (dimension == D::share ? 1 : height))
    {
      fields.problem(fields.given("values") ? "values" : "value",
                     fmt::format("the weight cannot rise to its own drop height ({:.0f} mm)", 1e3 * height),
                     "Read the rise above first touch, not the loss");
      return;
    }
    const bool own_bench = fields.given("height") || fields.given("mass");
    Probe      probe{kind, dimension, "", drop_bench(fields), reading, "", {}};
    if (own_bench)
      probe.name +=
        fmt::format(", {}{}{}", fields.text("height"),
                    fields.given("height") && fields.given("mass") ? ", " : "", fields.text("mass"));
    add(std::move(probe), found.value, found.half_band, fields.flag("hold_out"));
  }
}

std::string ReadingReader::file_text(const Fields &fields, fs::path &path)
{
  const auto name = fields.text("file");
  if (name.empty())
  {
    if (!fields.given("file"))
      fields.problem("file", "is missing: the readings are taken from a sensor's CSV file",
                     "Write file = \"impact.csv\"");
    return {};
  }
  path = fs::path(name).is_absolute() ? fs::path(name) : sheet_.path.parent_path() / name;
  std::error_code error;
  if (!fs::is_regular_file(path, error))
  {
    fields.problem("file", fmt::format("there is no file \"{}\" beside the sheet", name),
                   "Give the name of a CSV file");
    return {};
  }
  // A million rows of two numbers is some 30 MB; more is no record of one hit.
  if (fs::file_size(path, error) > 64'000'000)
  {
    fields.problem("file", "is larger than 64 MB", "Cut the record down to the hit");
    return {};
  }
  std::string text;
  std::FILE  *stream = std::fopen(path.c_str(), "rb");
  char        buffer[65536];
  std::size_t n = 0;
  while (stream && (n = std::fread(buffer, 1, sizeof buffer, stream)) > 0)
    text.append(buffer, n);
  if (stream)
    std::fclose(stream);
  sheet_.data += text;
  return text;
}

void ReadingReader::impact(const Fields &fields)
{
  fs::path   path;
  const auto text = file_text(fields, path);
  if (text.empty())
    return;
  const auto  n_before = problems_.list().size();
  const auto  record = records::read_record(path, text, problems_);
  const auto *drop = has_case_ ? std::get_if<solver::DropRig>(&sheet_.setup.rig) : nullptr;
  if (has_case_ && !drop)
    fields.problem("kind", "an impact record needs a drop weight, and the rig of this sheet is none",
                   "Give rig = \"guided-rod-1200\" or a block [drop]");
  if (!drop || problems_.list().size() > n_before)
    return;
  const double         height = fields.given("height") ? value_of(fields, "height", D::length) : drop->height;
  const double         mass = fields.given("mass") ? value_of(fields, "mass", D::mass) : drop->mass;
  const double         speed = std::sqrt(2 * sheet_.setup.gravity * height * (1 - drop->guide_loss));
  records::ImpactSetup setup;
  setup.mass = {mass, 0.005 * mass};
  setup.speed = {speed, 0.01 * speed};
  const auto found = records::read_impact(record, setup, path.string(), problems_);
  for (const auto &note : record.notes)
    sheet_.assumptions.push_back(fmt::format("{}: {}", path.filename().string(), note));
  for (const auto &note : found.notes)
    sheet_.assumptions.push_back(fmt::format("{}: {}", path.filename().string(), note));
  const auto bench = drop_bench(fields);
  const auto take = [&](const records::Reading &reading, const char *name, const char *machine, D dimension) {
    if (!reading.known || !(reading.doubt > 0))
      return;
    add({fmt::format("{}, record", name), dimension, "", bench, machine, "", {}}, reading.value,
        reading.doubt * doubts_in_half_band, fields.flag("hold_out"));
    if (reading.at_least)
      sheet_.readings.back().observation.meaning = settle::Meaning::at_least;
  };
  take(found.peak_force, "peak force", "peak_force", D::force);
  take(found.contact_time, "contact time", "contact_time", D::time);
  take(found.compression, "compression", "greatest_compression", D::length);
}

void ReadingReader::press_loop(const Fields &fields)
{
  for (const char *name : {"diameter", "duration"})
    if (!fields.given(name))
      fields.problem(
        name, "is missing: the press has to be known to compute its loop",
        fmt::format("Write {} = \"{}\"", name, name == std::string("diameter") ? "40 mm" : "1 s"));
  fs::path   path;
  const auto text = file_text(fields, path);
  if (text.empty() || !fields.given("diameter") || !fields.given("duration"))
    return;
  const double diameter = value_of(fields, "diameter", D::length),
               duration = value_of(fields, "duration", D::time);
  const auto n_before = problems_.list().size();
  const auto record = records::read_record(path, text, problems_);
  if (problems_.list().size() > n_before)
    return;
  const auto found = records::read_loop(record, {}, path.string(), problems_);
  for (const auto &note : found.notes)
    sheet_.assumptions.push_back(fmt::format("{}: {}", path.filename().string(), note));
  if (!found.compression.known)
    return;
  sheet_.benches.push_back([=, peak = found.compression.value, cycles = found.n_cycles](solver::Case &setup) {
    solver::PressRig press;
    press.tup.diameter = diameter;
    press.tup.edge_radius = 1e-3;
    press.peak = peak;
    press.duration = duration;
    press.cycles = std::clamp(cycles, 1, 5);
    setup.rig = press;
  });
  const auto bench = sheet_.benches.size() - 1;
  const auto take = [&](const records::Reading &reading, const char *name, const char *machine, D dimension) {
    if (reading.known && reading.doubt > 0)
      add({name, dimension, "", bench, machine, "", {}}, reading.value, reading.doubt * doubts_in_half_band,
          fields.flag("hold_out"));
  };
  take(found.loop_return, "press loop, energy return", "loop_return", D::share);
  take(found.peak_force, "press loop, peak force", "peak_force", D::force);
}

const solver::Layer *ReadingReader::find_layer(const std::string &name, const toml::node &node,
                                               const std::string &title)
{
  if (!has_case_)
    return nullptr;
  std::vector<std::string> names;
  for (const auto &layer : sheet_.setup.layers)
  {
    if (layer.name == name)
      return &layer;
    names.push_back(layer.name);
  }
  const auto near = nearest_name(name, names);
  problems_.add(
    problem_at(node.source(), title, fmt::format("there is no layer \"{}\"", name),
               near.empty() ? "Name a layer of the sheet" : fmt::format("Did you mean \"{}\"?", near)));
  return nullptr;
}

void ReadingReader::layer_note(const std::string &layer, const std::string &entry, const toml::node &node)
{
  const auto title = layer + "." + entry;
  const auto text = node.is_string() ? node.as_string()->get() : std::string();
  if (text.empty())
    problems_.add(problem_at(node.source(), title, "is no text in quotes",
                             entry == "hardness" ? "Write for instance \"42 AskerC\""
                                                 : "Write for instance \"170 kg/m3\""));
  else if (entry == "hardness")
    hardness(text, layer, "", false, node, title);
  else
    density(text, layer, false, node, title);
}

void ReadingReader::hardness(const std::string &text, const std::string &layer, const std::string &where,
                             bool held_out, const toml::node &node, const std::string &title)
{
  Doubted reading;
  try
  {
    reading = parse_doubted(text, D::hardness);
  }
  catch (const InvalidQuantity &error)
  {
    problems_.add(problem_at(node.source(), title, error.what(), error.cure));
    return;
  }
  const Gauge &gauge = gauge_named(reading.scale);
  const auto   reliable = reliable_readings(gauge.scale);
  if (reading.value < reliable.lowest || reading.value > reliable.highest)
  {
    problems_.add(problem_at(
      node.source(), title,
      fmt::format("{} of {:.0f} is outside {:.0f} to {:.0f}, where the gauge can be read", reading.scale,
                  reading.value, reliable.lowest, reliable.highest),
      reading.value > reliable.highest ? "Take a harder scale: ShoreA above AskerC, ShoreD above ShoreA"
                                       : "Take a softer scale: ShoreA below ShoreD, AskerC below ShoreA"));
    return;
  }
  if (reading.half_band == 0)
  {
    reading.half_band = instruments::gauge_by_hand;
    sheet_.assumptions.push_back(fmt::format("{} has no +-: taking +-{:.0f} {} for a hand-held gauge", title,
                                             instruments::gauge_by_hand, reading.scale));
  }
  const auto *known = find_layer(layer, node, title);
  if (!known)
    return;
  const double poisson = slow_stiffness(known->material).poisson_ratio;
  const double modulus = modulus_from_reading(gauge, reading.value, poisson);
  for (const auto &other : sheet_.readings)
    if (other.layer == layer && !other.probe.unit.empty() && other.probe.unit != reading.scale)
    {
      const double there =
        modulus_from_reading(gauge_named(other.probe.unit), other.observation.value, poisson);
      if (std::max(there / modulus, modulus / there) > scales_apart)
        problems_.add(problem_at(node.source(), title,
                                 fmt::format("{:.0f} {} and {:.0f} {} on the same layer contradict: the "
                                             "stiffness behind them differs {:.1f}-fold",
                                             reading.value, reading.scale, other.observation.value,
                                             other.probe.unit, std::max(there / modulus, modulus / there)),
                                 "Look up which gauge it was; one of the two scales is wrong"));
    }
  const bool is_last = known == &sheet_.setup.layers.back(), is_first = known == &sheet_.setup.layers.front();
  const bool thin_rubber =
    where.empty() && is_last && known->material.family == "rubber" && known->thickness < thinnest_for_gauge;
  const bool in_place = where == "in place" || thin_rubber;
  if (in_place && !is_last && !is_first)
  {
    problems_.add(problem_at(node.source(), title, fmt::format("a gauge cannot reach {} in place", layer),
                             "Write where = \"pad\" when it was read on a cut piece"));
    return;
  }
  if (in_place && gauge.scale == HardnessScale::shore_d)
  {
    problems_.add(problem_at(node.source(), title, "the sharp tip of Shore D is not simulated on a stack",
                             "Read it in ShoreA, or write where = \"pad\""));
    return;
  }
  Probe  probe{fmt::format("hardness of {}{}", layer, in_place ? " in place" : ""),
              D::number,
              reading.scale,
              0,
              "",
              "",
              {}};
  double half_band = reading.half_band;
  if (in_place)
  {
    sheet_.benches.push_back([gauge, is_last](solver::Case &setup) {
      if (is_last)
        std::reverse(setup.layers.begin(), setup.layers.end());
      solver::DurometerRig rig;
      rig.gauge = gauge;
      rig.tup = solver::gauge_tip(gauge);
      setup.rig = rig;
    });
    probe.bench = sheet_.benches.size() - 1;
    probe.reading = "hardness";
    if (thin_rubber)
      sheet_.assumptions.push_back(fmt::format(
        "{}: read on the stack, as the rubber is thinner than 6 mm; the gauge feels what lies under it",
        title));
  }
  else
  {
    half_band = instruments::hardness_on_pad(half_band, gauge, modulus, poisson);
    probe.direct = pad_hardness(gauge, layer);
  }
  if (half_band >= reading.value)
    half_band = 0.99 * reading.value;
  add(std::move(probe), reading.value, half_band, held_out, layer);
}

void ReadingReader::density(const std::string &text, const std::string &layer, bool held_out,
                            const toml::node &node, const std::string &title)
{
  Doubted reading;
  try
  {
    reading = parse_doubted(text, D::density);
    if (!(reading.value >= 10 && reading.value <= 9000))
      throw InvalidQuantity(fmt::format("\"{}\" is no density of a sole material", text),
                            "Weigh a cut cube: mass over volume, such as 170 kg/m3");
  }
  catch (const InvalidQuantity &error)
  {
    problems_.add(problem_at(node.source(), title, error.what(), error.cure));
    return;
  }
  if (reading.half_band == 0)
  {
    reading.half_band = instruments::weighed_cube * reading.value;
    sheet_.assumptions.push_back(fmt::format("{} has no +-: taking +-{:.0f} % for a weighed cube", title,
                                             100 * instruments::weighed_cube));
  }
  if (!find_layer(layer, node, title))
    return;
  Probe probe{
    fmt::format("density of {}", layer), D::density, "", 0, "", "", [layer](const solver::Case &setup) {
      for (const auto &one : setup.layers)
        if (one.name == layer)
          return one.material.density;
      return 0.0;
    }};
  add(std::move(probe), reading.value, reading.half_band, held_out, layer);
}

void ReadingReader::add(Probe probe, double value, double half_band, bool held_out, const std::string &layer)
{
  SheetReading reading;
  const auto   same =
    std::count_if(sheet_.readings.begin(), sheet_.readings.end(), [&](const SheetReading &other) {
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
  sheet_.readings.push_back(std::move(reading));
}
} // namespace solemech::tools
