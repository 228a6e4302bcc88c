// SPDX-License-Identifier: Apache-2.0
#include "tests/unit/output/results/synthetic.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/output/picture/charts.h"
#include "tools/output/picture/pictures.h"
#include "tools/output/picture/section.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdlib>
#include <iostream>
#include <map>
#include <set>

using namespace solemech;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;
using Runs = std::vector<const tools::Run *>;

TEST_CASE("the section at rest is the stack itself: areas, sizes, cavity")
{
  const auto                     run = tests::synthetic_forefoot();
  const std::vector<tools::Look> looks(run.result.picture.part_names.size(), {0, 8});
  const auto drawing = tools::draw_section(run.result.picture, run.result.picture.snapshots[0], looks);
  CHECK(drawing.width == Approx(84));
  CHECK(drawing.height == Approx(23.2));
  CHECK(drawing.touch == Approx(23.2));
  REQUIRE(drawing.cavities.size() == 1);
  for (const auto &part : drawing.parts)
  {
    const auto &name = run.result.picture.part_names[static_cast<std::size_t>(part.part)];
    INFO(name);
    CHECK(part.outlines.size() == (name == "unit ring" ? 2 : 1));
    CHECK_FALSE(part.hatch.empty());
    if (name == "outsole")
      CHECK(part.area == Approx(84 * 4.0));
    if (name == "unit film")
      CHECK(part.area == Approx(62 * 8.0)); // outline of the unit, cavity included
  }
}

TEST_CASE("hatch lines at rest are straight and fill the part that they are drawn in")
{
  constexpr int                  rising = 0;
  const auto                     run = tests::synthetic_heel();
  const auto                    &picture = run.result.picture;
  const std::vector<tools::Look> looks(picture.part_names.size(), {0, rising});
  const auto                     drawing = tools::draw_section(picture, picture.snapshots[0], looks);
  for (const auto &part : drawing.parts)
  {
    double length = 0;
    for (const auto &stroke : part.hatch)
    {
      REQUIRE(stroke.size() == 2);
      CHECK(stroke[1][1] - stroke[0][1] == Approx(stroke[1][0] - stroke[0][0]).margin(1e-9));
      length += std::hypot(stroke[1][0] - stroke[0][0], stroke[1][1] - stroke[0][1]);
    }
    // One diagonal of a square tile of 4 mm: a length of root 2 over 4 a square millimetre; a layer some
    // tiles high is off by the part of a tile at its faces.
    const double area = part.area * static_cast<double>(part.outlines.size()); // a ring shows twice
    CHECK(length == Approx(area * std::sqrt(2.) / 4).epsilon(0.1));
  }
}

TEST_CASE("a material looks the same beside any other, and no two that stand together look alike")
{
  const auto                         heel = tests::synthetic_heel(), forefoot = tests::synthetic_forefoot();
  const tools::Looks                 alone(Runs{&heel}), together(Runs{&heel, &forefoot});
  std::map<std::string, tools::Look> seen;
  for (const auto &part : tools::parts_of(heel))
  {
    CHECK(alone.of(part).tone == together.of(part).tone);
    CHECK(alone.of(part).hatch == together.of(part).hatch);
  }
  for (const auto *run : {&heel, &forefoot})
    for (const auto &part : tools::parts_of(*run))
      seen[part.material_name] = together.of(part);
  std::set<std::pair<int, int>> different;
  for (const auto &[name, look] : seen)
    different.insert({look.tone, look.hatch});
  CHECK(different.size() == seen.size());
}

TEST_CASE("pictures are drawn, or the reader is told why not")
{
  const tests::TemporaryFolder  folder;
  const std::vector<tools::Run> runs = {tests::synthetic_heel(), tests::synthetic_forefoot()};

  SECTION("without gnuplot the script stays")
  {
    const std::string path = std::getenv("PATH") ? std::getenv("PATH") : "";
    setenv("PATH", "/nowhere", 1);
    const auto said = tools::draw_pictures(folder.path, runs, nullptr);
    setenv("PATH", path.c_str(), 1);
    CHECK(said == "no pictures: gnuplot is not installed (package gnuplot-nox); the curves are in data/");
    CHECK(fs::is_regular_file(folder.path / "data" / "pictures.gp"));
    CHECK(fs::is_empty(folder.path / "pictures"));
  }
  if (tools::find_gnuplot().empty())
  {
    std::cout << "gnuplot is not installed: the drawing itself was not tested\n";
    return;
  }
  SECTION("side by side")
  {
    CHECK(tools::draw_pictures(folder.path, runs, nullptr) == "");
    for (const char *name :
         {"force-time", "force-compression", "energy", "section-heel-drop", "section-forefoot-drop"})
    {
      INFO(name);
      CHECK(tests::text_of(folder.path / "pictures" / (std::string(name) + ".png")).substr(1, 3) == "PNG");
      CHECK_THAT(tests::text_of(folder.path / "pictures" / (std::string(name) + ".svg")),
                 Contains("<svg") && Contains("model, not a measurement"));
    }
  }
  SECTION("a series, and labels with quotes")
  {
    auto odd = runs;
    for (int i = 0; i < 2; ++i)
      for (const auto &run : runs)
        odd.push_back(run);
    odd[0].label = "it's \"odd\" $d0 {a} %s\n";
    const tools::Series series{
      "drop energy", "J", {2, 2, 4, 4, 6, 6}, {"heel", "fore's", "heel", "fore's", "heel", "fore's"}};
    CHECK(tools::draw_pictures(folder.path, odd, &series) == "");
    CHECK(fs::file_size(folder.path / "pictures" / "series.png") > 1000);
  }
  SECTION("a run without curves or picture draws what it can")
  {
    tools::Run bare = tests::synthetic_press();
    bare.result.curves.clear();
    bare.result.picture = {};
    CHECK(tools::draw_pictures(folder.path, {bare}, nullptr) == "");
    CHECK(fs::exists(folder.path / "pictures" / "energy.png"));
    CHECK_FALSE(fs::exists(folder.path / "pictures" / "force-time.png"));
  }
}

TEST_CASE("a sole has its grip drawn all round, a worn lug its faces, a slide its pressure")
{
  solver::SlideRig rig;
  rig.tread = solver::Tread();
  rig.tread->n_headings = 4;
  tools::Run sole{"sole", {}, {}};
  sole.setup.rig = rig;
  sole.result.curves = {{"heading", "rad", "", {0, M_PI / 2, M_PI, 1.5 * M_PI}},
                        {"grip", "1", "", {0.8, 0.6, 0.8, 0.7}}};
  const auto map = tools::grip_map_chart({sole});
  CHECK_THAT(map, Contains("grip-map.png"));
  CHECK_THAT(map, Contains("size 1 fillstyle empty")); // the outermost circle is beyond the greatest grip
  CHECK_THAT(map, Contains("0.6 "));                   // outwards: to the right
  CHECK(tools::worn_face_chart({sole}).empty());

  tools::Run lug{"lug", {}, {}};
  lug.result.faces = {{0, {-1e-3, 1e-3}, {4e-3, 4e-3}, {2e5, 1e5}},
                      {1000, {-1e-3, 1e-3}, {3e-3, 3e-3}, {1e5, 1e5}}};
  CHECK_THAT(tools::worn_face_chart({lug}), Contains("after 1 km"));
  CHECK_THAT(tools::face_pressure_chart({lug}), Contains("face-pressure.svg"));
  CHECK(tools::grip_map_chart({lug}).empty());
}
