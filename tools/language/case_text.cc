// SPDX-License-Identifier: Apache-2.0
#include "tools/language/case_text.h"

#include <fmt/format.h>
#include <openssl/evp.h>

#include <stdexcept>

namespace solemech::tools
{
namespace
{
/// Collects lines below a prefix that grows and shrinks with the nesting of the data.
class CanonicalWriter
{
public:
  std::string text;

  void number(const char *name, double value) { line(name, fmt::format("{:.17g}", value + 0.0)); }
  void whole(const char *name, long value) { line(name, fmt::format("{}", value)); }
  void word(const char *name, const std::string &value) { line(name, value); }

  template <typename Write>
  void inside(const std::string &name, const Write &write)
  {
    const auto length = prefix_.size();
    prefix_ += name + ".";
    write();
    prefix_.resize(length);
  }

  void material(const std::string &name, const materials::Material &material)
  {
    inside(name, [&] {
      number("density", material.density);
      number("reference_temperature", material.thermal.reference_temperature);
      number("activation_energy", material.thermal.activation_energy);
      number("modulus_per_kelvin", material.thermal.modulus_per_kelvin);
      std::visit([this](const auto &data) { law(data); }, material.data);
    });
  }

  void tup(const solver::Tup &tup)
  {
    whole("shape", static_cast<int>(tup.shape));
    number("diameter", tup.diameter);
    number("edge_radius", tup.edge_radius);
    number("end_radius", tup.end_radius);
    if (tup.shape == solver::TupShape::cone)
      number("half_angle", tup.half_angle);
    number("friction", tup.friction);
  }

private:
  void line(const char *name, const std::string &value) { text += prefix_ + name + " = " + value + "\n"; }

  void relaxing(const std::vector<materials::RelaxingTerm> &terms)
  {
    for (const auto &term : terms)
      inside("relaxing", [&] {
        number("share", term.share);
        number("time", term.relaxation_time);
      });
  }

  void law(const materials::FoamData &foam)
  {
    word("law", "foam");
    for (const auto &term : foam.network)
      inside("network", [&] {
        number("shear_modulus", term.shear_modulus);
        number("exponent", term.exponent);
        number("volumetric_exponent", term.volumetric_exponent);
      });
    number("relative_density", foam.relative_density);
    number("closed_cells", foam.closed_cells);
    number("gas_exponent", foam.gas_exponent);
    number("densification_modulus", foam.densification_modulus);
    number("densification_exponent", foam.densification_exponent);
    relaxing(foam.relaxing);
    for (const auto &term : foam.slipping)
      inside("slipping", [&] {
        number("share", term.share);
        number("cap", term.cap);
      });
    number("recovery_time", foam.recovery_time);
  }

  void law(const materials::RubberData &rubber)
  {
    word("law", "rubber");
    number("c10", rubber.c10);
    number("c20", rubber.c20);
    number("c30", rubber.c30);
    number("c01", rubber.c01);
    number("bulk_modulus", rubber.bulk_modulus);
    relaxing(rubber.relaxing);
  }

  void law(const materials::PlateData &plate)
  {
    word("law", "plate");
    number("youngs_modulus", plate.youngs_modulus);
    number("poisson", plate.poisson_ratio);
    relaxing(plate.relaxing);
  }

  std::string prefix_;
};

void write(CanonicalWriter &out, const solver::AirUnit &unit)
{
  out.number("diameter", unit.diameter);
  out.number("film_thickness", unit.film_thickness);
  out.material("film", unit.film);
  out.whole("state", static_cast<int>(unit.state));
  out.number("gauge_pressure", unit.gauge_pressure);
  out.number("outside_volume", unit.outside_volume);
  out.number("heat_time", unit.heat_time);
  out.number("leak_diameter", unit.leak_diameter);
  out.whole("fibres", unit.has_fibres);
  out.number("fibre_spacing", unit.fibre_spacing);
  out.number("fibre_stiffness", unit.fibre_stiffness);
  out.number("fibre_radius", unit.fibre_radius);
  out.number("filament_spacing", unit.filament_spacing);
  out.number("packed_share", unit.packed_share);
}

void write(CanonicalWriter &out, const solver::Plug &plug)
{
  out.whole("section", static_cast<int>(plug.section));
  out.number("radius", plug.radius);
  out.whole("side", static_cast<int>(plug.side));
  if (plug.side == solver::Side::ring)
    out.material("side_material", plug.side_material);
  out.number("side_thickness", plug.side_thickness);
  out.number("shell_stiffness", plug.shell_stiffness);
  out.whole("base", static_cast<int>(plug.base));
  out.number("base_friction", plug.base_friction);
}

void write(CanonicalWriter &out, const solver::DropRig &rig)
{
  out.word("kind", "drop");
  out.tup(rig.tup);
  out.number("mass", rig.mass);
  out.number("height", rig.height);
  out.number("guide_loss", rig.guide_loss);
  out.whole("hits", rig.hits);
  out.whole("discarded", rig.discarded);
  out.number("rest", rig.rest);
  out.whole("conditioned", rig.conditioned);
  out.number("base_mass", rig.base_mass);
  out.number("base_stiffness", rig.base_stiffness);
  out.number("base_damping", rig.base_damping);
}

void write(CanonicalWriter &out, const solver::DurometerRig &rig)
{
  const auto &gauge = rig.gauge;
  out.word("kind", "durometer");
  out.word("scale", std::string(gauge.name));
  out.tup(rig.tup);
  out.number("base_force", gauge.base_force);
  out.number("force_slope", gauge.force_slope);
  out.number("travel", gauge.travel);
  out.number("set_on_time", rig.set_on_time);
  out.number("read_after", rig.read_after);
  out.number("wanted", rig.wanted);
}

void write(CanonicalWriter &out, const materials::HeatProperties &heat)
{
  out.number("conductivity", heat.conductivity);
  out.number("density", heat.density);
  out.number("specific_heat", heat.specific_heat);
}

void write(CanonicalWriter &out, const materials::FrictionData &friction)
{
  out.number("mu_ref", friction.mu_ref);
  out.number("state", friction.state);
  out.number("reference_pressure", friction.reference_pressure);
  out.number("pressure_exponent", friction.pressure_exponent);
  out.number("pressure_onset", friction.pressure_onset);
  out.number("reference_speed", friction.reference_speed);
  out.number("speed_exponent", friction.speed_exponent);
  out.number("speed_onset", friction.speed_onset);
  out.number("reference_temperature", friction.reference_temperature);
  out.number("per_kelvin", friction.per_kelvin);
  out.number("standard_temperature", friction.standard_temperature);
}

void write(CanonicalWriter &out, const solver::SlideRig &rig)
{
  const auto &lug = rig.lug;
  out.word("kind", "slide");
  out.number("width", lug.width);
  out.number("spacing", lug.spacing);
  out.number("draft", lug.draft);
  out.number("edge_radius", lug.edge_radius);
  out.number("fillet", lug.fillet);
  for (const auto &[x, z] : lug.worn_face)
    out.inside("worn_face", [&, x = x, z = z] {
      out.number("x", x);
      out.number("z", z);
    });
  out.whole("neighbours", static_cast<int>(rig.neighbours));
  if (rig.pad_length > 0)
  {
    out.number("pad_length", rig.pad_length);
    out.number("pad_gap", rig.pad_gap);
  }
  out.word("court", rig.court);
  out.word("court_state", rig.court_state);
  out.inside("friction", [&] { write(out, rig.friction); });
  out.number("friction_lowest", rig.friction_lowest);
  out.number("friction_highest", rig.friction_highest);
  out.inside("court_heat", [&] { write(out, rig.court_heat); });
  out.inside("lug_heat", [&] { write(out, rig.lug_heat); });
  out.number("pressure", rig.pressure);
  out.number("speed", rig.speed);
  out.number("distance", rig.distance);
  out.number("heading", rig.heading);
  if (rig.wear)
    out.inside("wear", [&] {
      out.word("reference", rig.wear->reference);
      out.number("reference_modulus", rig.wear->reference_modulus);
      out.number("coefficient", rig.wear->coefficient);
      out.number("lowest", rig.wear->lowest);
      out.number("highest", rig.wear->highest);
      out.number("depth", rig.wear->depth);
      out.number("slip", rig.wear->slip);
      out.whole("to_and_fro", rig.wear->to_and_fro ? 1 : 0);
      out.number("known_hours", rig.wear->known_hours);
      out.number("known_depth", rig.wear->known_depth);
      if (rig.wear->steps_per_second > 0)
        out.number("steps_per_second", rig.wear->steps_per_second);
    });
  if (rig.tread)
    out.inside("tread", [&] {
      const auto &tread = *rig.tread;
      out.number("force", tread.force);
      out.number("foot_length", tread.foot_length);
      out.number("foot_width", tread.foot_width);
      out.number("ball", tread.ball);
      out.number("give", tread.give);
      out.whole("headings", tread.n_headings);
      out.number("lowest_moment", tread.lowest_moment);
      out.number("highest_moment", tread.highest_moment);
      for (const auto &zone : tread.zones)
        out.inside("zone", [&] {
          out.word("name", zone.name);
          if (zone.rubber)
            out.material("rubber", *zone.rubber);
          out.number("x", zone.x);
          out.number("y", zone.y);
          out.number("length", zone.length);
          out.number("width", zone.width);
          out.number("bars", zone.bar_heading);
          out.number("arm_angle", zone.arm_angle);
          out.number("push_off", zone.push_off);
          out.number("braking", zone.braking);
          out.number("side_cut", zone.side_cut);
        });
    });
}

void write(CanonicalWriter &out, const solver::AbrasionRig &rig)
{
  out.word("kind", "abrasion");
  if (rig.tool == solver::AbrasionTool::sleeve)
  {
    out.number("sleeve_diameter", rig.sleeve.sleeve_diameter);
    out.number("sleeve_width", rig.sleeve.sleeve_width);
    out.number("turning", rig.sleeve.speed);
    out.number("force", rig.sleeve.force);
    out.number("seconds", rig.seconds);
    out.number("heat_share", rig.heat_share);
    out.number("conductivity", rig.conductivity);
    out.number("specific_heat", rig.specific_heat);
    out.number("found_depth", rig.found_depth);
  }
  else
  {
    out.number("drum_diameter", rig.drum.drum_diameter);
    out.number("turning", rig.drum.speed);
    out.number("load", rig.drum.load);
    out.number("way", rig.drum.way);
    out.number("piece_diameter", rig.drum.piece_diameter);
    out.number("mass_lost", rig.mass_lost);
    out.number("cloth_loss", rig.cloth_loss);
  }
  out.word("reference", rig.reference);
  out.number("reference_modulus", rig.reference_modulus);
  out.number("coefficient", rig.coefficient);
  out.number("lowest", rig.lowest);
  out.number("highest", rig.highest);
  out.number("friction", rig.friction);
}

void write(CanonicalWriter &out, const solver::PressRig &rig)
{
  out.word("kind", "press");
  out.tup(rig.tup);
  out.whole("control", static_cast<int>(rig.control));
  out.whole("wave", static_cast<int>(rig.wave));
  out.number("peak", rig.peak);
  out.number("duration", rig.duration);
  out.whole("cycles", rig.cycles);
  out.number("rest", rig.rest);
  for (const auto &row : rig.table)
    out.inside("table", [&] {
      out.number("time", row.first);
      out.number("value", row.second);
    });
}
} // namespace

std::string canonical_text(const solver::Case &data)
{
  CanonicalWriter out;
  out.text = "solemech case, SI\n";
  for (const auto &layer : data.layers)
    out.inside("layer", [&] {
      out.word("name", layer.name);
      out.material("material", layer.material);
      out.number("thickness", layer.thickness);
      out.number("area_share", layer.area_share);
      out.number("core_diameter", layer.core_diameter);
      if (layer.abraded > 0)
        out.number("abraded", layer.abraded);
      if (layer.ring)
        out.material("ring", *layer.ring);
      if (layer.unit)
        out.inside("unit", [&] { write(out, *layer.unit); });
    });
  out.inside("plug", [&] { write(out, data.plug); });
  out.inside("rig", [&] { std::visit([&](const auto &rig) { write(out, rig); }, data.rig); });
  out.number("temperature", data.temperature);
  out.number("gravity", data.gravity);
  out.number("atmospheric_pressure", data.atmospheric_pressure);
  out.number("accuracy", data.accuracy);
  for (const auto &doubt : data.doubts)
    out.inside("doubt", [&] {
      out.whole("number", static_cast<int>(doubt.number));
      out.word("of", doubt.of);
      out.number("spread", doubt.spread);
      for (const double together : doubt.together)
        out.number("together", together);
    });
  return std::move(out.text);
}

std::string case_hash(const solver::Case &data, const std::string &result_version)
{
  const auto    text = canonical_text(data) + "result version = " + result_version + "\n";
  unsigned char digest[EVP_MAX_MD_SIZE];
  unsigned int  n_bytes = 0;
  if (EVP_Digest(text.data(), text.size(), digest, &n_bytes, EVP_sha256(), nullptr) != 1)
    throw std::runtime_error("the fingerprint of the case could not be made");
  std::string hash;
  for (unsigned int i = 0; i < n_bytes; ++i)
    hash += fmt::format("{:02x}", digest[i]);
  return hash;
}
} // namespace solemech::tools
