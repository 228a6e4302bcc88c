// SPDX-License-Identifier: Apache-2.0
// From sheets to resolved cases: every number where it belongs, series, changes, histories, fingerprints, the
// schema's own completeness and the committed cases.
#include "tests/support/catch.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/language/case_checks.h"
#include "tools/language/case_text.h"
#include "tools/language/library.h"
#include "tools/language/schema.h"

#include "sample_sheets.h"

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double rounding = 1e-14; // one unit conversion

solver::Case one(const std::string &text, std::vector<std::string> overrides = {})
{
  auto options = small_library();
  options.overrides = std::move(overrides);
  auto file = tools::read_case_text(text, "my.toml", options);
  REQUIRE(file.cases.size() == 1);
  return file.cases.front();
}

const std::string b1 = R"(
format = 1                          # the public benchmark of a foam cylinder under a flat tup
[[material]]
name = "benchmark-foam"
density = "200 kg/m3"
shear_modulus = "0.60 MPa"
exponent = 8
volumetric_exponent = 0.125
relaxing = [{ share = 0.30, time = "2 ms" }, { share = 0.20, time = "20 ms" }]
[[layer]]
name = "foam"
material = "benchmark-foam"
thickness = "25 mm"
[plug]
radius = "40 mm"
[drop]
mass = "8.5 kg"
energy = "5 J"
diameter = "45 mm"
edge_radius = "2 mm"
[surroundings]
gravity = "9.81 m/s2"
)";
} // namespace

TEST_CASE("the benchmark drop written by hand")
{
  const auto  data = one(b1);
  const auto &foam = std::get<materials::FoamData>(data.layers.at(0).material.data);
  REQUIRE(foam.network.size() == 1);
  CHECK(foam.network[0].shear_modulus == Approx(0.6e6).epsilon(rounding));
  CHECK(foam.network[0].exponent == 8);
  CHECK(foam.network[0].volumetric_exponent == 0.125);
  CHECK(foam.relative_density == 0);
  CHECK(foam.densification_modulus == 0);
  REQUIRE(foam.relaxing.size() == 2);
  CHECK(foam.relaxing[1].relaxation_time == Approx(0.02).epsilon(rounding));
  CHECK(foam.slipping.empty());
  CHECK(data.layers[0].material.density == 200);
  CHECK(data.layers[0].thickness == Approx(0.025).epsilon(rounding));
  CHECK(data.plug.radius == Approx(0.040).epsilon(rounding));
  CHECK(data.plug.base == solver::Base::bonded);
  const auto &drop = std::get<solver::DropRig>(data.rig);
  CHECK(drop.mass * 9.81 * drop.height == Approx(5).epsilon(rounding));
  CHECK(drop.tup.edge_radius == Approx(2e-3).epsilon(rounding));
  CHECK(data.gravity == 9.81);
  CHECK(data.atmospheric_pressure == Approx(101325).epsilon(rounding));
  CHECK(data.accuracy == Approx(0.01).epsilon(rounding));
}

TEST_CASE("all terms of a foam, several network terms")
{
  const auto  data = one(sheet() + R"(
[[material]]
name = "foam-x"
density = "0.2 g/cm3"
polymer_density = "1 g/cm3"
network = [{ shear_modulus = "0.3 MPa", exponent = 6, poisson = 0.2 }, { shear_modulus = "60 kPa", exponent = -2, volumetric_exponent = 0 }]
closed_cells = "60 %"
gas_exponent = 1.2
densification_modulus = "40 kPa"
densification_exponent = 4
slipping = [{ share = "20 %", cap = 0.02 }, { share = 0.1, cap = "10 %" }]
recovery_time = "8 s"
activation_energy = "40 kJ/mol"
modulus_per_kelvin = "-0.5 %/K"
)",
                         {"core.material=foam-x"});
  const auto &material = data.layers[0].material;
  const auto &foam = std::get<materials::FoamData>(material.data);
  REQUIRE(foam.network.size() == 2);
  CHECK(foam.network[0].volumetric_exponent == Approx(0.2 / 0.6).epsilon(rounding)); // beta = nu/(1 - 2 nu)
  CHECK(foam.network[1].volumetric_exponent == 0);
  CHECK(foam.network[1].exponent == -2);
  CHECK(foam.relative_density == Approx(0.2).epsilon(rounding));
  CHECK(foam.closed_cells == Approx(0.6).epsilon(rounding));
  CHECK(foam.gas_exponent == 1.2);
  CHECK(foam.densification_exponent == 4);
  REQUIRE(foam.slipping.size() == 2);
  CHECK(foam.slipping[1].cap == Approx(0.1).epsilon(rounding));
  CHECK(foam.recovery_time == 8);
  CHECK(material.thermal.activation_energy == Approx(4e4).epsilon(rounding));
  CHECK(material.thermal.modulus_per_kelvin == Approx(-0.005).epsilon(rounding));
}

TEST_CASE("a rubber from its hardness")
{
  const auto data =
    one(sheet() + "[[material]]\nname = \"r\"\nfamily = \"rubber\"\ndensity = \"1100 kg/m3\"\n"
                  "hardness = \"60 ShoreA\"\n",
        {"core.material=r"});
  const auto &rubber = std::get<materials::RubberData>(data.layers[0].material.data);
  // Gent 1958 prints E = 0.0981 (56 + 7.62336 S)/(0.137505 (254 - 2.54 S)) MPa; E = 6 c10 at small strain.
  CHECK(6 * rubber.c10 ==
        Approx(0.0981e6 * (56 + 7.62336 * 60) / (0.137505 * (254 - 2.54 * 60))).epsilon(1e-12));
}

TEST_CASE("the plug in the shoe, an air unit, words instead of values")
{
  CHECK(one(sheet()).plug.radius == Approx(0.020 + 0.016).epsilon(rounding)); // striker radius + stack height
  const std::string unit =
    "[layer.unit]\ndiameter = \"60 mm\"\nfilm = \"tpu-film\"\nfilm_thickness = \"0.6 mm\"\n"
    "gauge_pressure = \"20 psi\"\n";
  const auto air = [&](const std::string &lines) {
    const auto data = one(sheet("name = \"air\"\nmaterial = \"eva-firm\"\nthickness = \"10 mm\"\n",
                                unit + lines + "[plug]\nradius = \"40 mm\"\n"));
    return *data.layers.at(0).unit;
  };
  CHECK(air("").gauge_pressure == Approx(137895.2).epsilon(1e-6)); // NIST SP 811: 1 psi = 6.894757 kPa
  CHECK(air("").heat_time < 0);
  CHECK(air("").state == solver::ChamberState::sealed);
  CHECK(std::isinf(air("heat_time = \"adiabatic\"\n").heat_time));
  CHECK(air("heat_time = \"isothermal\"\n").heat_time == 0);
  CHECK(air("heat_time = \"50 ms\"\n").heat_time == Approx(0.05).epsilon(rounding));
  CHECK(air("state = \"open\"\nfibres = false\n").has_fibres == false);
  CHECK(air("state = \"leaking\"\nleak_diameter = \"0.4 mm\"\n").leak_diameter ==
        Approx(4e-4).epsilon(rounding));
}

TEST_CASE("changes and series reach layers, units and materials")
{
  const auto options = small_library();
  const auto file = tools::read_case_text(
    sheet() + "[[series]]\nvary = \"core.material\"\nvalues = [\"eva-soft\", \"eva-firm\"]\nlabels = "
              "[\"soft\", \"firm\"]\n"
              "[[series]]\nvary = \"drop.energy\"\nvalues = [\"2 J\", \"4 J\", \"6 J\"]\n"
              "[[expect]]\nlabel = \"firm-4J\"\nsource = \"invented\"\npeak_force = [\"1 kN\", \"2 kN\"]\n",
    "my.toml", options);
  REQUIRE(file.cases.size() == 6);
  CHECK(file.cases[4].label == "my-firm-4J");
  const auto &drop = std::get<solver::DropRig>(file.cases[4].rig);
  CHECK(drop.mass * drop.height * file.cases[4].gravity == Approx(4).epsilon(rounding));
  CHECK(file.cases[4].layers[0].material.name == "eva-firm");
  REQUIRE(file.expected.size() == 1);
  CHECK(file.expected[0].label == "my-firm-4J");
  CHECK(file.expected[0].high == Approx(2000).epsilon(rounding));

  const auto changed = one(sheet(), {"core.thickness=0.5 in", "eva-soft.exponent=5"});
  CHECK(changed.layers[0].thickness == Approx(0.0127).epsilon(rounding));
  CHECK(std::get<materials::FoamData>(changed.layers[0].material.data).network[0].exponent == 5);
}

TEST_CASE("a gauge has the tip of its scale and a plug as wide as the standard asks for")
{
  const std::string stack =
    "format = 1\n[[layer]]\nname = \"core\"\nmaterial = \"eva-soft\"\nthickness = \"6 mm\"\n";
  const auto data =
    one(stack + "[durometer]\nscale = \"AskerC\"\nread_after = \"15 s\"\nwanted = \"50 AskerC\"\n");
  const auto &rig = std::get<solver::DurometerRig>(data.rig);
  CHECK(rig.gauge.scale == materials::HardnessScale::asker_c);
  CHECK(rig.tup.edge_radius ==
        Approx(2.54e-3).epsilon(rounding)); // half of 5.08 mm, JIS K 7312 (from memory)
  CHECK(rig.read_after == 15);
  CHECK(rig.wanted == 50);
  CHECK(data.plug.radius == Approx(12e-3).epsilon(rounding)); // ISO 48-4 (from memory)

  CHECK_THROWS_WITH(one(stack + "[durometer]\nscale = \"AskerC\"\nwanted = \"60 ShoreA\"\n"),
                    Catch::Matchers::Contains("another scale than that of the gauge"));
  CHECK_THROWS_WITH(
    one("format = 1\n[[layer]]\nname = \"core\"\nmaterial = \"eva-soft\"\nthickness = \"2 mm\"\n"
        "[durometer]\nscale = \"ShoreA\"\n"),
    Catch::Matchers::Contains("would reach through a stack of 2 mm"));
  CHECK_THROWS_WITH(one(stack + "[durometer]\nscale = \"ShorA\"\n"),
                    Catch::Matchers::Contains("Did you mean \"ShoreA\"?"));
}

TEST_CASE("press: pulses by body mass and a history from a file")
{
  const std::string stack =
    "format = 1\n[[layer]]\nname = \"core\"\nmaterial = \"eva-soft\"\nthickness = \"20 mm\"\n";
  const auto pulse =
    one(stack + "[press]\ndiameter = \"60 mm\"\npeak_body_weights = 2.5\nbody_mass = \"80 kg\"\n"
                "wave = \"half-sine\"\nduration = \"185 ms\"\n");
  const auto &press = std::get<solver::PressRig>(pulse.rig);
  CHECK(press.control == solver::PressControl::force);
  CHECK(press.wave == solver::PressWave::half_sine);
  CHECK(press.peak == Approx(2.5 * 80 * 9.80665).epsilon(rounding));

  const tests::TemporaryFolder scratch;
  const auto                  &folder = scratch.path;
  std::ofstream(folder / "step.csv") << "time_s,body_weights\n0,0\n0.1,1.5\n0.2,0\n";
  std::ofstream(folder / "my.toml") << stack + "[press]\ndiameter = \"60 mm\"\nhistory = \"step.csv\"\n"
                                               "history_of = \"body weights\"\nbody_mass = \"50 kg\"\n";
  const auto  file = tools::read_case_file(folder / "my.toml", small_library());
  const auto &table = std::get<solver::PressRig>(file.cases.at(0).rig).table;
  REQUIRE(table.size() == 3);
  CHECK(table[1].first == 0.1);
  CHECK(table[1].second == Approx(1.5 * 50 * 9.80665).epsilon(rounding));
  std::ofstream(folder / "step.csv") << "0,0\n0.1,x\n";
  CHECK_THROWS_WITH(tools::read_case_file(folder / "my.toml", small_library()),
                    (folder / "step.csv").string() +
                      ":2:1: this line does not hold two numbers with a comma between them. Write the time "
                      "in s, a comma, and the value, for example 0.015,1.25.\n    0.1,x\n    ^\n");
}

TEST_CASE("the fingerprint follows the physics, not the spelling")
{
  const auto hash = [](const solver::Case &data) { return tools::case_hash(data, "1"); };
  const auto base = hash(one(b1));
  auto       other = b1;
  other.replace(other.find("\"25 mm\""), 7, "\"2.5 cm\" # same");
  other.replace(other.find("\"8.5 kg\""), 8, "\"8500 g\"");
  CHECK(hash(one(other)) == base);
  CHECK(hash(one(b1, {"foam.thickness=25.000000000001 mm"})) != base);
  CHECK(hash(one(b1, {"benchmark-foam.exponent=8.5"})) != base);
  CHECK(hash(one(b1, {"surroundings.temperature=24 C"})) != base);
  CHECK(tools::case_hash(one(b1), "2") != base);
  CHECK(base.size() == 64);
}

TEST_CASE("the energy that a stack takes")
{
  // A foam without cells, exponent 2 and no lateral strain at a tenth of its height: the closed form
  // W = mu/2 [l^2 - 1 - 2 ln l] for beta = 0, over the loaded area and height.
  const auto data =
    one(sheet() + "[[material]]\nname = \"m\"\ndensity = \"200 kg/m3\"\nshear_modulus = \"1 MPa\"\n"
                  "exponent = 2\npoisson = 0\n[plug]\nradius = \"22 mm\"\n",
        {"core.material=m"});
  const double closed = 0.5e6 * (0.01 - 1 - 2 * std::log(0.1)) * M_PI * 0.022 * 0.022 * 0.016;
  CHECK(tools::energy_capacity(data) == Approx(closed).epsilon(1e-3)); // stops a hair above the tenth
}

TEST_CASE("the schema is complete: meaning, kind and readable default for each entry, none twice")
{
  std::set<std::string> names;
  for (const auto &entry : tools::case_entries())
  {
    const auto name = std::string(entry.section) + "." + std::string(entry.name);
    INFO(name);
    CHECK(names.insert(name).second);
    CHECK(entry.meaning.size() > 10);
    CHECK(entry.meaning.ends_with("."));
    CHECK(!materials::dimension_name(entry.dimension).empty());
    if (entry.dimension <= materials::Dimension::count)
    {
      const auto words = materials::word_list(entry);
      if (!entry.fallback.empty() && entry.fallback != materials::required &&
          std::find(words.begin(), words.end(), entry.fallback) == words.end())
        CHECK_NOTHROW(materials::parse_quantity(entry.fallback, entry.dimension));
      if (entry.dimension < materials::Dimension::share)
        CHECK(!materials::unit_list(entry.dimension).empty());
    }
    if (!entry.instead_of.empty())
      CHECK(tools::find_entry(entry.section, entry.instead_of) != nullptr);
  }
  std::set<std::string> sections;
  for (const auto &section : tools::case_sections())
    sections.insert(std::string(section.name));
  for (const auto &entry : tools::case_entries())
    CHECK(sections.contains(std::string(entry.section)));
}

TEST_CASE("the committed reference page is what the program writes")
{
  // To write it anew: SOLEMECH_REWRITE=1 test_input "the committed reference page*"
  const auto path = std::string(SOLEMECH_SOURCE) + "/cases/REFERENCE.md";
  if (std::getenv("SOLEMECH_REWRITE"))
    std::ofstream(path) << tools::reference_page();
  std::ifstream     file(path);
  std::stringstream committed;
  committed << file.rdbuf();
  const bool same = committed.str() == tools::reference_page(); // a bool: the pages are too long to print
  CHECK(same);
}

TEST_CASE("every committed case is sound, short, and says what it asks")
{
  const auto         root = std::filesystem::path(SOLEMECH_SOURCE);
  const auto         library = materials::Library::load(root / "materials" / "library");
  tools::ReadOptions options;
  options.case_roots = {root / "cases"};
  options.library = library.source();
  const auto            headings = tools::case_headings(options.case_roots);
  std::set<std::string> labels;
  for (const auto &heading : headings)
  {
    INFO(heading.path.string());
    labels.insert(heading.label);
    CHECK(heading.question.ends_with("?"));
    const auto file = tools::read_case_file(heading.path, options);
    CHECK(!file.cases.empty());
    CHECK(file.text.size() < (file.lesson ? 4500u : 3000u)); // a lesson explains itself
    CHECK((file.text.find("nvented") != std::string::npos ||
           file.text.find("library foams") != std::string::npos));
    for (const auto &range : file.expected)
      CHECK(range.source.size() > 5);
  }
  for (const char *label :
       {"heel-drop", "forefoot-drop", "energy-ladder", "punctured-unit", "ball-rebound", "impact-heel",
        "impact-forefoot", "press-loop", "body-pulse", "plug-edge", "predecessor", "other-design"})
    CHECK(labels.contains(label));
}
