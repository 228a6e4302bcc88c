// SPDX-License-Identifier: Apache-2.0
#include "tools/language/court_reader.h"

#include "tools/language/case_errors.h"
#include "tools/language/sheet.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::materials
{
namespace
{
using D = Dimension;

constexpr std::string_view bases = "published|from memory|user data";

constexpr Entry entries[] = {
  {"court", "name", D::text, any_value, required, "Name used in sheets."},
  {"court", "title", D::text, any_value, "", "Title, one line."},
  {"court", "source", D::text, any_value, required, "Source of its numbers."},
  {"court", "friction", D::number, above_to(0, 3), required,
   "Friction coefficient of court rubber on the clean surface, at the reference pressure, speed and "
   "temperature."},
  {"court", "friction_lowest", D::number, above_to(0, 3), required, "Lower end of its band."},
  {"court", "friction_highest", D::number, above_to(0, 3), required, "Upper end of its band."},
  {"court", "friction_basis", D::choice, any_value, "user data", "Basis of the coefficient.", bases},
  {"court", "reference_pressure", D::pressure, above(0), "300 kPa",
   "Pressure at which the coefficient was found."},
  {"court", "pressure_exponent", D::number, within(0, 0.9), "0",
   "m: friction varies with pressure to the power -m."},
  {"court", "reference_speed", D::speed, above(0), "0.3 m/s",
   "Slip speed at which the coefficient was found."},
  {"court", "speed_exponent", D::number, within(-0.5, 0.5), "0",
   "n: friction varies with slip speed to the power n."},
  {"court", "reference_temperature", D::temperature, within(250, 350), "23 °C",
   "Temperature at which the coefficient was found."},
  {"court", "friction_per_kelvin", D::per_kelvin, within(-0.05, 0.05), "0 %/K",
   "Relative change of friction per kelvin of the face."},
  {"court", "conductivity", D::conductivity, above(0), required, "Thermal conductivity of the floor."},
  {"court", "density", D::density, above(0), required, "Density of the floor."},
  {"court", "specific_heat", D::specific_heat, above(0), required, "Specific heat of the floor."},
  {"court", "states", D::blocks, any_value, required,
   "States of the surface. \"clean\" must be one of them."},

  {"court.states", "name", D::text, any_value, required, "Name of the state."},
  {"court.states", "factor", D::number, above_to(0, 2), "1", "Factor on the friction of the clean court."},
  {"court.states", "lowest", D::number, above_to(0, 2), "", "Lower end of the factor's band."},
  {"court.states", "highest", D::number, above_to(0, 2), "", "Upper end of the factor's band."},
  {"court.states", "basis", D::choice, any_value, "user data", "Basis of the factor.", bases},
};

Banded banded(const Fields &fields, const char *value, const char *lowest, const char *highest,
              const char *basis)
{
  Banded out{fields.value(value), 0, 0, fields.text(basis)};
  out.lowest = fields.given(lowest) ? fields.value(lowest) : out.value;
  out.highest = fields.given(highest) ? fields.value(highest) : out.value;
  if (out.lowest > out.value)
    fields.problem(lowest, "lies above the value itself", fmt::format("Give at most {:g}", out.value));
  if (out.highest < out.value)
    fields.problem(highest, "lies below the value itself", fmt::format("Give at least {:g}", out.value));
  return out;
}

Court read_court(const toml::table &block, Problems &problems)
{
  const auto  *name = block.get_as<std::string>("name");
  const Fields fields(block, "court", name ? name->get() : std::string("court"), court_entries(), problems);
  Court        court;
  court.name = fields.text("name");
  court.title = fields.given("title") ? fields.text("title") : court.name;
  court.source = fields.text("source");
  court.friction = banded(fields, "friction", "friction_lowest", "friction_highest", "friction_basis");
  fields.value("friction_lowest"),
    fields.value("friction_highest"); // required: an uncertain number needs its band
  court.law.mu_ref = court.friction.value;
  court.law.reference_pressure = fields.value("reference_pressure");
  court.law.pressure_exponent = fields.value("pressure_exponent");
  court.law.reference_speed = fields.value("reference_speed");
  court.law.speed_exponent = fields.value("speed_exponent");
  court.law.reference_temperature = fields.value("reference_temperature");
  court.law.per_kelvin = fields.value("friction_per_kelvin");
  court.heat = {fields.value("conductivity"), fields.value("density"), fields.value("specific_heat")};
  for (const auto *part : fields.blocks("states"))
  {
    const Fields state(*part, "court.states", fields.title("states"), court_entries(), problems);
    court.states.push_back({state.text("name"), banded(state, "factor", "lowest", "highest", "basis")});
  }
  const auto clean = std::find_if(court.states.begin(), court.states.end(),
                                  [](const SurfaceState &state) { return state.name == "clean"; });
  if (clean == court.states.end())
    fields.problem("states", "include no \"clean\"", "Add the state { name = \"clean\" }");
  return court;
}
} // namespace

const SurfaceState &Court::state(const std::string &wanted) const
{
  std::vector<std::string> names;
  for (const auto &known : states)
  {
    if (known.name == wanted)
      return known;
    names.push_back(known.name);
  }
  const auto near = nearest_name(wanted, names);
  throw UnknownSurfaceState(fmt::format("{} has no state \"{}\". {}", name, wanted,
                                        near.empty() ? fmt::format("Use one of {}", fmt::join(names, ", "))
                                                     : fmt::format("Did you mean \"{}\"?", near)));
}

CourtFriction Court::friction_when(const std::string &state_name) const
{
  auto data = law;
  data.state = state(state_name).factor.value;
  return CourtFriction(data);
}

std::pair<double, double> Court::friction_band(const std::string &state_name) const
{
  const auto &factor = state(state_name).factor;
  return {friction.lowest * factor.lowest, friction.highest * factor.highest};
}

std::span<const Entry> court_entries()
{
  return entries;
}

std::vector<Court> read_court_text(const std::string &text, const std::string &file)
{
  Problems           problems;
  std::vector<Court> courts;
  const auto         table = parse_sheet(text, file, problems);
  for (const auto &[key, node] : table)
    if (key.str() != "format" && key.str() != "court")
      problems.add(problem_at(key.source(), std::string(key.str()), "there is no such entry",
                              "A court file holds format = 1 and [[court]] blocks"));
  if (const auto *blocks = table.get_as<toml::array>("court"))
    for (const auto &node : *blocks)
      if (node.is_table())
      {
        courts.push_back(read_court(*node.as_table(), problems));
        for (std::size_t i = 0; i + 1 < courts.size(); ++i)
          if (courts[i].name == courts.back().name)
            problems.add(
              problem_at(node.source(), courts.back().name, "is given twice", "Rename one of the two"));
      }
  problems.throw_if_any();
  return courts;
}

std::vector<Court> read_court_folder(const std::filesystem::path &folder)
{
  std::vector<Court> courts;
  CaseErrors         errors;
  for (const auto &file : sheet_files(folder))
    try
    {
      Problems   problems;
      const auto text = read_sheet_text(file, problems);
      problems.throw_if_any();
      for (auto &court : read_court_text(text, file.string()))
      {
        for (const auto &known : courts)
          if (known.name == court.name)
            problems.add(
              {file.string(), 0, 0, court.name, "another file has this name too", "Rename one of the two"});
        courts.push_back(std::move(court));
      }
      problems.throw_if_any();
    }
    catch (const CaseError &error)
    {
      errors.add(error);
    }
  errors.throw_if_any();
  return courts;
}

const Court &find_court(const std::vector<Court> &courts, const std::string &name)
{
  std::vector<std::string> names;
  for (const auto &court : courts)
  {
    if (court.name == name)
      return court;
    names.push_back(court.name);
  }
  const auto near = nearest_name(name, names);
  throw InvalidQuantity(fmt::format("there is no court \"{}\"", name),
                        near.empty() ? fmt::format("Use one of {}", fmt::join(names, ", "))
                                     : fmt::format("Did you mean \"{}\"?", near));
}
} // namespace solemech::materials
