// SPDX-License-Identifier: Apache-2.0
// The committed material library against the relations and class figures it is made from.
#include "materials/pad_hardness.h"
#include "tests/support/catch.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/language/library.h"
#include "tools/language/missing_material.h"
#include "tools/language/problem.h"
#include "tools/program/material_facts.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>

using namespace solemech;
using namespace solemech::materials;

namespace
{
Library committed_library()
{
  return Library::load(std::filesystem::path(SOLEMECH_SOURCE) / "materials" / "library");
}
} // namespace

TEST_CASE("every material has a density, a title and a source")
{
  const Library library = committed_library();
  CHECK(library.materials().size() >= 41);
  for (const Material &material : library.materials())
  {
    INFO(material.name);
    CHECK(material.density > 50);
    CHECK(material.title != material.name);
    CHECK(material.source.size() > 8);
    CHECK(tools::slow_modulus(material) > 1e5);
  }
}

TEST_CASE("a file whose remarks say that numbers are invented or from memory says so to the program")
{
  const auto folder = std::filesystem::path(SOLEMECH_SOURCE) / "materials" / "library";
  for (const auto &file : std::filesystem::directory_iterator(folder))
  {
    if (file.path().extension() != ".toml")
      continue;
    std::ostringstream text;
    text << std::ifstream(file.path()).rdbuf();
    INFO(file.path());
    const auto says = [&](const char *words) { return text.str().find(words) != std::string::npos; };
    CHECK((!says("from memory") || says("from_memory = true")));
    CHECK((!says("# invented") || says("invented = true")));
  }
}

TEST_CASE("rubber moduli follow Gent's relation")
{
  // A.N. Gent, Trans. IRI 34 (1958): E = 0.0981 (56 + 7.62336 S)/(0.137505 (254 - 2.54 S)) MPa.
  const Library library = committed_library();
  int           n_named = 0; // by their hardness: "rubber-60a"
  for (const Material &rubber : library.materials())
  {
    int  shore = 0;
    char scale = ' ';
    if (std::sscanf(rubber.name.c_str(), "rubber-%d%c", &shore, &scale) != 2 || scale != 'a')
      continue;
    ++n_named;
    INFO(rubber.name);
    const double expected = 0.0981e6 * (56 + 7.62336 * shore) / (0.137505 * (254 - 2.54 * shore));
    CHECK(tools::slow_modulus(rubber) == Approx(expected).epsilon(0.002)); // files keep three digits
  }
  CHECK(n_named >= 7);
}

TEST_CASE("what the library does not hold is answered by meaning, not by letters")
{
  const Library library = committed_library();
  const auto    known = library.source();
  CHECK(instead_of_material("eva-sotf", known) == "Did you mean \"eva-soft\"?");
  const auto steel = instead_of_material("steel-plate", known);
  CHECK(steel == "The library holds no steel, about 200 GPa (from memory); nearest in stiffness is "
                 "\"carbon-laminate-plate\", 52.4 GPa. "
                 "Or define a [[material]] of your own");
  CHECK(instead_of_material("polycarbonate", known).find("nearest in stiffness is \"nylon-plate\"") !=
        std::string::npos);
  CHECK(instead_of_material("unobtainium", known) == "See the list: solemech materials");
  // Letters near, meaning another: no name is suggested.
  for (const char *other : {"steel-plate", "copper-plate", "silk-sock", "eps-bead"})
  {
    INFO(other);
    CHECK(instead_of_material(other, known).find("Did you mean") == std::string::npos);
  }
}

TEST_CASE("foams read in the hardness range of moulded midsoles")
{
  // Court and running studies use 45 to 60 Asker C (Alonzo et al. 2020, Appl. Sci. 10:3594; Yang et al. 2022,
  // Front. Bioeng. Biotechnol. 10:959842), soft midsoles go down to 40 (from memory).
  const Library library = committed_library();
  for (const char *name : {"eva-soft", "eva-firm", "tpu-bead", "peba-supercritical", "pu-cast"})
  {
    const Material *foam = library.find(name);
    REQUIRE(foam != nullptr);
    const std::string reading = tools::hardness_text(*foam);
    INFO(name << " reads " << reading);
    CHECK(reading.ends_with(" AskerC"));
    CHECK(std::stod(reading) >= 38);
    CHECK(std::stod(reading) <= 60);
  }
}

TEST_CASE("solid fraction and density of a foam agree with a known polymer")
{
  // Densities of the polymers from memory: EVA 940, TPU and PU 1150, PEBA 1000 kg/m3; +-3 %.
  const Library library = committed_library();
  for (const auto &[name, polymer] :
       std::vector<std::pair<const char *, double>>{{"eva-soft", 940},
                                                    {"eva-firm", 940},
                                                    {"tpu-bead", 1150},
                                                    {"peba-supercritical", 1000},
                                                    {"pu-cast", 1150},
                                                    {"eva-moulded-medium", 940},
                                                    {"pu-cushion", 1150}})
  {
    const Material *foam = library.find(name);
    REQUIRE(foam != nullptr);
    CHECK(foam->density / std::get<FoamData>(foam->data).relative_density == Approx(polymer).epsilon(0.03));
  }
}

TEST_CASE("the library covers what is under feet")
{
  // Asked of it: Asker C 30 to 65, rubbers of 50 to 75 Shore A, ball rebound of foams 35 to 85 %; half of
  // what is printed counts as met.
  double     ball[2] = {1, 0}, asker_c[2] = {100, 0}, shore_a[2] = {100, 0};
  const auto widen = [](double(&range)[2], double value) {
    range[0] = std::min(range[0], value), range[1] = std::max(range[1], value);
  };
  const Library library = committed_library();
  for (const Material &material : library.materials())
  {
    INFO(material.name);
    if (material.family == "foam")
    {
      widen(ball, material.readings.ball_rebound);
      widen(asker_c, *tools::gauge_points(material, "AskerC"));
    }
    if (material.family == "rubber")
      widen(shore_a, std::stod(material.hardness));
    if (material.family == "foam")
      CHECK(material.readings.ball_rebound > 0);
  }
  CHECK(ball[0] <= 0.355);
  CHECK(ball[1] >= 0.85);
  CHECK(asker_c[0] <= 30.5);
  CHECK(asker_c[1] >= 64.5);
  CHECK(shore_a[0] <= 50);
  CHECK(shore_a[1] >= 75);
}

TEST_CASE("what a gauge reads on a pad follows from the stiffness that branches still hold")
{
  // The stored readings are those of a gauge pressed on in the model, a solution of its own. A gauge by hand
  // is good for three points (common practice, no source).
  constexpr double band = 3;
  std::size_t      n = 0;
  const Library    library = committed_library();
  for (const Material &material : library.materials())
    if (material.readings.asker_c > 0)
    {
      INFO(material.name);
      CHECK(std::abs(pad_reading(asker_c_gauge, material) - material.readings.asker_c) <= band);
      ++n;
    }
  CHECK(n >= 20);
}

TEST_CASE("moduli of the laminates are those of many plies turned evenly")
{
  // Invariants of a ply, U1 and U4 (Tsai & Pagano 1968; Jones, Mechanics of Composite Materials, 1975): E =
  // (U1 - U4) (U1 + U4)/U1, nu = U4/U1. Plies from memory of textbooks.
  struct Ply
  {
    const char *name;
    double      e1, e2, g12, nu12; // [GPa]
  };
  const Library library = committed_library();
  for (const Ply &ply :
       {Ply{"carbon-laminate-plate", 135, 10, 5, 0.3}, Ply{"glass-laminate-plate", 41, 10.4, 4.3, 0.28}})
  {
    INFO(ply.name);
    const double d = 1 - ply.nu12 * ply.nu12 * ply.e2 / ply.e1;
    const double q11 = ply.e1 / d, q22 = ply.e2 / d, q12 = ply.nu12 * ply.e2 / d, q66 = ply.g12;
    const double u1 = (3 * q11 + 3 * q22 + 2 * q12 + 4 * q66) / 8, u4 = (q11 + q22 + 6 * q12 - 4 * q66) / 8;
    REQUIRE(library.find(ply.name) != nullptr);
    const auto &plate = std::get<PlateData>(library.find(ply.name)->data);
    CHECK(plate.youngs_modulus == Approx(1e9 * (u1 - u4) * (u1 + u4) / u1).epsilon(0.002)); // three digits
    CHECK(plate.poisson_ratio == Approx(u4 / u1).epsilon(0.02));                            // two digits
  }
}

TEST_CASE("a name given by two files is reported with the file")
{
  const solemech::tests::TemporaryFolder scratch;
  const auto                            &folder = scratch.path;
  for (const char *file : {"a.toml", "b.toml"})
    std::ofstream(folder / file) << "format = 1\n[[material]]\nname = \"x\"\nfamily = \"plate\"\n"
                                    "density = \"900 kg/m3\"\nyoungs_modulus = \"1 GPa\"\n";
  try
  {
    Library::load(folder);
    FAIL("accepted");
  }
  catch (const CaseError &error)
  {
    REQUIRE(error.problems().size() == 1);
    CHECK(error.problems().front().file == (folder / "b.toml").string());
    CHECK(error.problems().front().reason == "another file of the library has this name too");
  }
}
