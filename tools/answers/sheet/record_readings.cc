// SPDX-License-Identifier: Apache-2.0
// Whole records of a sensor: an impact, a press loop. What they hold goes in as readings of its own each.
#include "solver/results/catalogue.h"
#include "tools/answers/sheet/reading_kinds.h"
#include "tools/language/records/impact_record.h"
#include "tools/language/records/press_loop.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
using namespace materials;
namespace fs = std::filesystem;
using D = Dimension;

void read_impact_record(ReadingDesk &desk, const Fields &fields)
{
  fs::path   path;
  const auto text = desk.file_text(fields, path);
  if (text.empty())
    return;
  const auto  n_before = desk.problems.n_noted();
  const auto  record = records::read_record(path, text, desk.problems);
  const auto *drop = desk.has_case ? rigs::fall_of(desk.sheet.setup) : nullptr;
  if (desk.has_case && !drop)
    fields.problem("kind", "an impact record needs a drop weight, and this sheet has another rig",
                   "Give rig = \"guided-rod-1200\" or a block [drop]");
  if (!drop || desk.problems.n_noted() > n_before)
    return;
  const double height = fields.given("height") ? desk.value_of(fields, "height", D::length) : drop->height;
  const double mass = fields.given("mass") ? desk.value_of(fields, "mass", D::mass) : drop->mass;
  const double speed = std::sqrt(2 * desk.sheet.setup.gravity * height * (1 - drop->guide_loss));
  records::ImpactSetup setup;
  setup.mass = {mass, 0.005 * mass};
  setup.speed = {speed, 0.01 * speed};
  const auto found = records::read_impact(record, setup, path.string(), desk.problems);
  for (const auto &note : found.notes)
    desk.sheet.assumptions.push_back(fmt::format("{}: {}", path.filename().string(), note));
  const auto bench = desk.drop_bench(fields);
  const auto take = [&](const records::Reading &reading, const solver::ReadingKind &kind) {
    if (!reading.known || !(reading.doubt > 0))
      return;
    desk.add(probe_of(kind, bench, fmt::format("{}, record", kind.on_sheet)), reading.value,
             reading.doubt * doubts_in_half_band, fields.flag("hold_out"));
    if (reading.at_least)
      desk.sheet.readings.back().observation.meaning = settle::Meaning::at_least;
  };
  take(found.peak_force, solver::catalogue.peak_force);
  take(found.contact_time, solver::catalogue.contact_time);
  take(found.compression, solver::catalogue.greatest_compression);
}

void read_press_loop(ReadingDesk &desk, const Fields &fields)
{
  for (const char *name : {"diameter", "duration"})
    if (!fields.given(name))
      fields.problem(
        name, "is missing: the loop cannot be computed without it",
        fmt::format("Write {} = \"{}\"", name, name == std::string("diameter") ? "40 mm" : "1 s"));
  fs::path   path;
  const auto text = desk.file_text(fields, path);
  if (text.empty() || !fields.given("diameter") || !fields.given("duration"))
    return;
  const double diameter = desk.value_of(fields, "diameter", D::length),
               duration = desk.value_of(fields, "duration", D::time);
  const auto n_before = desk.problems.n_noted();
  const auto record = records::read_record(path, text, desk.problems);
  if (desk.problems.n_noted() > n_before)
    return;
  const auto found = records::read_loop(record, {}, path.string(), desk.problems);
  for (const auto &note : found.notes)
    desk.sheet.assumptions.push_back(fmt::format("{}: {}", path.filename().string(), note));
  if (!found.compression.known)
    return;
  const auto bench =
    desk.add_bench([=, peak = found.compression.value, cycles = found.n_cycles](solver::Case &setup) {
      solver::PressRig press;
      press.tup.diameter = diameter;
      press.tup.edge_radius = 1e-3;
      press.peak = peak;
      press.duration = duration;
      press.cycles = std::clamp(cycles, 1, 5);
      setup.rig = press;
    });
  const auto take = [&](const records::Reading &reading, const solver::ReadingKind &kind, const char *name) {
    if (reading.known && reading.doubt > 0)
      desk.add(probe_of(kind, bench, name), reading.value, reading.doubt * doubts_in_half_band,
               fields.flag("hold_out"));
  };
  take(found.loop_return, solver::catalogue.loop_return, "press loop, energy return");
  take(found.peak_force, solver::catalogue.peak_force, "press loop, peak force");
}
} // namespace solemech::tools
