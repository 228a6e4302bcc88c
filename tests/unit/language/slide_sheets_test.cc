// SPDX-License-Identifier: Apache-2.0
// Sheets of a slide: every number where it belongs, courts by name, hardness in place of a rubber, what a
// person reads for a bad bar.
#include "materials/hardness.h"
#include "tests/support/catch.h"
#include "tools/language/case_text.h"
#include "tools/language/library.h"

#include "sample_sheets.h"

#include <numbers>

using namespace solemech;
using namespace solemech::tests;

namespace
{
const std::string bar = "width = \"4 mm\"\nheight = \"3 mm\"\nspacing = \"8 mm\"\n";

std::string slide_sheet(const std::string &lug, const std::string &slide)
{
  return "format = 1\n[lug]\n" + lug + "[slide]\n" + slide;
}

tools::ReadOptions full_library()
{
  static const auto  library = materials::Library::load(std::string(SOLEMECH_SOURCE) + "/materials/library");
  tools::ReadOptions options;
  options.library = library.source();
  return options;
}

solver::Case one(const std::string &text, std::vector<std::string> overrides = {},
                 std::vector<std::string> swaps = {})
{
  auto options = full_library();
  options.overrides = std::move(overrides), options.swaps = std::move(swaps);
  return tools::read_case_text(text, "my.toml", options).cases.at(0);
}

std::string slips(const std::string &text)
{
  try
  {
    one(text);
  }
  catch (const materials::CaseError &error)
  {
    return error.what();
  }
  return "";
}

const std::string sound = slide_sheet("rubber = \"rubber-64a\"\n" + bar, "court = \"hardwood\"\n");
} // namespace

TEST_CASE("a slide: bar, court and load where they belong")
{
  const auto data = one(
    slide_sheet("rubber = \"rubber-64a\"\nskin_rubber = \"rubber-60a\"\ndraft = \"6 deg\"\n" + bar,
                "court = \"hardwood\"\nstate = \"dusty\"\npressure = \"0.3 MPa\"\nheading = \"30 deg\"\n"));
  const auto &rig = std::get<solver::SlideRig>(data.rig);
  REQUIRE(data.layers.size() == 2);
  CHECK(data.layers[0].name == "skin");
  CHECK(data.layers[0].material.name == "rubber-60a");
  CHECK(data.layers[1].name == "lug");
  CHECK(data.layers[0].thickness == Approx(1.5e-3));
  CHECK(data.layers[1].thickness == Approx(3e-3));
  CHECK(rig.lug.draft == Approx(std::numbers::pi / 30));
  CHECK(rig.heading == Approx(std::numbers::pi / 6));
  CHECK(rig.pressure == Approx(0.3e6));
  CHECK(rig.friction.mu_ref * rig.friction.state == Approx(0.8 * 0.6)); // materials/courts/hardwood.toml
  CHECK(rig.friction_lowest == Approx(0.5 * 0.4));
  CHECK(rig.friction_highest == Approx(1.2 * 0.85));
  CHECK(rig.lug_heat.density == data.layers[1].material.density);
}

TEST_CASE("wavy bars and pads: the limits are straight bars, the numbers tell in the fingerprint")
{
  const auto rig = [](const std::string &pattern) {
    return std::get<solver::SlideRig>(
      one(slide_sheet("rubber = \"rubber-64a\"\n" + pattern + bar, "court = \"hardwood\"\n")).rig);
  };
  CHECK(rig("pattern = \"wavy-bar\"\nwave_length = \"20 mm\"\nswing = \"0 mm\"\n").heading ==
        Approx(0).margin(1e-7));
  CHECK(rig("pattern = \"wavy-bar\"\nwave_length = \"20 mm\"\nswing = \"3 mm\"\n").heading > 0.3);
  const auto pad = rig("pattern = \"pad\"\nlength = \"6 mm\"\n");
  CHECK(pad.pad_length == Approx(6e-3));
  CHECK(pad.pad_gap == Approx(4e-3)); // as between the sides
  const auto text = [](const char *length) {
    return tools::canonical_text(one(slide_sheet("rubber = \"rubber-64a\"\npattern = \"pad\"\nlength = \"" +
                                                   std::string(length) + "\"\n" + bar,
                                                 "court = \"hardwood\"\n")));
  };
  CHECK(text("6 mm") != text("7 mm"));
}

TEST_CASE("a player's mass scales the pressure; steps of play need a worn pair")
{
  const auto with_way = [](const std::string &more, const std::string &wear = "") {
    return slide_sheet("rubber = \"rubber-64a\"\n" + bar, "court = \"hardwood\"\n" + more) + wear;
  };
  CHECK(std::get<solver::SlideRig>(one(with_way("pressure = \"200 kPa\"\nplayer_mass = \"100 kg\"\n")).rig)
          .pressure == Approx(250e3));
  const std::string wear = "[wear]\ndepth = \"1 mm\"\nsteps_per_minute = 30\n";
  CHECK_THAT(slips(with_way("", wear)), Catch::Contains("wear.steps_per_minute: needs a worn pair"));
  const auto known = one(with_way("", wear + "known_hours = \"40 h\"\nknown_depth = \"0.5 mm\"\n"));
  CHECK(std::get<solver::SlideRig>(known.rig).wear->steps_per_second == Approx(0.5));
}

TEST_CASE("a friction of one's own takes the place of the court's law")
{
  const auto  data = one(sound, {"slide.friction=0.9"});
  const auto &friction = std::get<solver::SlideRig>(data.rig).friction;
  CHECK(materials::CourtFriction(friction).at(0.1e6, 0.1, 280).mu == Approx(0.9).epsilon(1e-12));
  CHECK(materials::CourtFriction(friction).at(2e6, 3, 310).mu == Approx(0.9).epsilon(1e-12));
}

TEST_CASE("a hardness in place of a rubber")
{
  const auto  data = one(slide_sheet("hardness = \"64 ShoreA\"\n" + bar, "court = \"asphalt\"\n"));
  const auto &rubber = std::get<materials::RubberData>(data.layers[1].material.data);
  CHECK(6 * rubber.c10 == Approx(materials::modulus_gent(64)));
}

TEST_CASE("a bar takes another rubber and height as a layer does")
{
  const auto data = one(sound, {}, {"lug = rubber-67a 2.5 mm", "skin = 2 mm"});
  CHECK(data.layers[1].material.name == "rubber-67a");
  CHECK(std::get<solver::SlideRig>(data.rig).lug.height == Approx(2.5e-3));
  CHECK(std::get<solver::SlideRig>(data.rig).lug.skin == Approx(2e-3));
}

TEST_CASE("a zone of a tread takes another rubber by a swap")
{
  const std::string tread = sound + "[tread]\nforce = \"700 N\"\n[[zone]]\nname = \"ball\"\nx = \"200 "
                                    "mm\"\nlength = \"60 mm\"\nwidth = \"60 mm\"\n";
  const auto        data = one(tread, {}, {"ball = rubber-60a"});
  CHECK(std::get<solver::SlideRig>(data.rig).tread->zones[0].rubber->name == "rubber-60a");
  const auto slip = [&](const char *swap) {
    try
    {
      one(tread, {}, {swap});
    }
    catch (const materials::CaseError &error)
    {
      return std::string(error.what());
    }
    return std::string();
  };
  CHECK_THAT(slip("bal = rubber-60a"), Catch::Contains("Did you mean \"ball\"?"));
  CHECK_THAT(slip("ball = rubber-60a 2 mm"), Catch::Contains("can only get another rubber"));
}

TEST_CASE("every number of a slide tells in the fingerprint")
{
  const auto before = tools::canonical_text(one(sound));
  for (const char *change :
       {"lug.width=4.1 mm", "lug.height=3.1 mm", "lug.spacing=8.1 mm", "lug.skin=1.6 mm", "lug.draft=4 deg",
        "lug.edge_radius=0.3 mm", "lug.fillet=0.6 mm", "lug.neighbours=none", "lug.conductivity=0.3 W/(m K)",
        "lug.specific_heat=1800 J/(kg K)", "lug.rubber=rubber-60a", "lug.skin_rubber=rubber-60a",
        "slide.court=asphalt", "slide.state=wet", "slide.friction=0.8", "slide.pressure=210 kPa",
        "slide.speed=0.6 m/s", "slide.distance=21 mm", "slide.heading=1 deg"})
  {
    INFO(change);
    CHECK(tools::canonical_text(one(sound, {change})) != before);
  }
}

TEST_CASE("slips of a slide are told with their cure")
{
  using Catch::Contains;
  CHECK(slips(sound) == "");
  CHECK_THAT(slips(slide_sheet("rubber = \"rubber-64a\"\n" + bar, "court = \"hardwod\"\n")),
             Contains("my.toml:8:9: slide.court: there is no court \"hardwod\". Did you mean \"hardwood\"?"));
  CHECK_THAT(
    slips(slide_sheet("rubber = \"rubber-64a\"\n" + bar, "court = \"hardwood\"\nstate = \"dustry\"\n")),
    Contains("slide.state: hardwood is not known \"dustry\". Did you mean \"dusty\"?"));
  CHECK_THAT(slips(slide_sheet("hardness = 64\n" + bar, "court = \"hardwood\"\n")), Contains("lug.hardness"));
  CHECK_THAT(slips(slide_sheet("hardness = \"64\"\n" + bar, "court = \"hardwood\"\n")),
             Contains("does not name its hardness scale"));
  CHECK_THAT(
    slips(slide_sheet("rubber = \"rubber-64a\"\nwidth = \"1 mm\"\nheight = \"5 mm\"\nspacing = \"8 mm\"\n",
                      "court = \"hardwood\"\n")),
    Contains("lug.height: 5 mm on a width of 1 mm is too slender. Give at most 3 mm"));
  CHECK_THAT(
    slips(slide_sheet("rubber = \"rubber-64a\"\nwidth = \"4 mm\"\nheight = \"3 mm\"\nspacing = \"4 mm\"\n",
                      "court = \"hardwood\"\n")),
    Contains("lug.spacing: the clearance between the bars is negative"));
  CHECK_THAT(slips(slide_sheet("rubber = \"eva-soft\"\n" + bar, "court = \"hardwood\"\n")),
             Contains("is not a rubber"));
  CHECK_THAT(slips(slide_sheet(bar, "court = \"hardwood\"\n")), Contains("lug.rubber: is missing"));
  CHECK_THAT(slips(slide_sheet("rubber = \"rubber-64a\"\npattern = \"herringbone\"\n" + bar,
                               "court = \"hardwood\"\n")),
             Contains("lug.arm_angle: is missing"));
  CHECK_THAT(slips(slide_sheet("rubber = \"rubber-64a\"\npattern = \"wavy-bar\"\nswing = \"2 mm\"\n" + bar,
                               "court = \"hardwood\"\n")),
             Contains("lug.wave_length: is missing"));
  CHECK_THAT(
    slips(slide_sheet("rubber = \"rubber-64a\"\nlength = \"6 mm\"\n" + bar, "court = \"hardwood\"\n")),
    Contains("lug.length: has no meaning for pattern \"straight-bar\""));
  CHECK_THAT(slips(slide_sheet("rubber = \"rubber-64a\"\npattern = \"pads\"\nlength = \"6 mm\"\n" + bar,
                               "court = \"hardwood\"\n")),
             Contains("Did you mean \"pad\""));
  CHECK_THAT(slips("format = 1\n[slide]\ncourt = \"hardwood\"\n"), Contains("the case has no [lug]"));
  CHECK_THAT(slips(sound + "[drop]\nmass = \"1 kg\"\n"), Contains("cannot be combined with a slide"));
}

TEST_CASE("a whole tread: zones where they belong, what is wrong all at once")
{
  const std::string tread = sound + "[tread]\nforce = \"700 N\"\n";
  const auto        zone = [](const std::string &name, const std::string &more) {
    return "[[zone]]\nname = \"" + name + "\"\nlength = \"60 mm\"\nwidth = \"60 mm\"\n" + more;
  };
  const auto data = one(
    tread + zone("heel", "x = \"40 mm\"\n") +
      zone(
        "ball",
        "x = \"200 mm\"\nbars = \"90 deg\"\narm_angle = \"30 deg\"\nrubber = \"rubber-60a\"\npush_off = 3\n"),
    {"ball.side_cut=2"});
  const auto &rig = std::get<solver::SlideRig>(data.rig);
  REQUIRE(rig.tread);
  CHECK(rig.tread->force == Approx(700));
  CHECK(rig.tread->n_headings == 24);
  REQUIRE(rig.tread->zones.size() == 2);
  CHECK(!rig.tread->zones[0].rubber);
  const auto &ball = rig.tread->zones[1];
  CHECK(ball.rubber->name == "rubber-60a");
  CHECK(ball.x == Approx(0.2));
  CHECK(ball.bar_heading == Approx(std::numbers::pi / 2));
  CHECK(ball.arm_angle == Approx(std::numbers::pi / 6));
  CHECK(ball.push_off == Approx(3));
  CHECK(ball.side_cut == Approx(2));
  // Another zone is another case for the store.
  CHECK(tools::canonical_text(data) != tools::canonical_text(one(tread + zone("heel", "x = \"40 mm\"\n") +
                                                                 zone("ball", "x = \"200 mm\"\n"))));

  const auto bad = slips(tread + zone("heel", "x = \"40 mm\"\n") + zone("arch", "x = \"80 mm\"\n") +
                         zone("toe", "x = \"280 mm\"\n"));
  CHECK(bad.find("arch.x") != std::string::npos);
  CHECK(bad.find("overlaps the zone heel") != std::string::npos);
  CHECK(bad.find("toe.x") != std::string::npos);
  CHECK(bad.find("extends beyond the edge of the foot") != std::string::npos);
  CHECK(slips(tread).find("has no zones") != std::string::npos);
  CHECK(slips(sound + zone("heel", "x = \"40 mm\"\n")).find("is missing its [tread]") != std::string::npos);
  CHECK(slips(tread + zone("heel", "x = \"40 mm\"\nbraking = 0\n")).find("no zone carries this load") !=
        std::string::npos);
  CHECK(slips(tread + "[[zone]]\nname = \"stud\"\nx = \"40 mm\"\nlength = \"8 mm\"\nwidth = \"8 mm\"\n")
          .find("presses the bars of stud") != std::string::npos);
}
