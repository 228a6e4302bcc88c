// SPDX-License-Identifier: Apache-2.0
// Which layers answer to each other, which changes are named, and how mixtures are built.
#include "tests/support/catch.h"
#include "tests/unit/answers/compare/stacks.h"
#include "tools/answers/compare/mixtures.h"
#include "tools/language/case_text.h"

#include <set>

using namespace solemech;
using namespace solemech::tools;
using tests::forefoot;
using tests::heel;
using tests::layer;
using tests::material;

namespace
{
std::set<std::string> names_of(const ChangePlan &plan)
{
  std::set<std::string> names;
  for (const StackChange &change : plan.changes)
    names.insert(change.name);
  return names;
}

ChangeSet all_of(const ChangePlan &plan)
{
  return (1U << plan.changes.size()) - 1;
}
} // namespace

TEST_CASE("a foam core answers to the air unit, a carrier to the base, and what is left is added")
{
  const auto plan = planned_changes(heel(), forefoot());
  CHECK(names_of(plan) == std::set<std::string>{"topper added", "core -> air unit", "plate added",
                                                "carrier -> thinner base", "skin", "thinner stack",
                                                "wider plug"});
  const auto back = planned_changes(forefoot(), heel());
  CHECK(names_of(back) == std::set<std::string>{"topper taken out", "air unit -> core", "plate taken out",
                                                "base -> thicker carrier", "skin", "thicker stack",
                                                "narrower plug"});
}

TEST_CASE("equal stacks differ in nothing, whatever their layers and materials are called")
{
  auto other = heel();
  other.label = "other";
  for (auto &each : other.layers)
  {
    each.name += " of the other";
    each.material.name = "called otherwise";
  }
  CHECK(planned_changes(heel(), heel()).changes.empty());
  CHECK(planned_changes(heel(), other).changes.empty());
}

TEST_CASE("one thickness is one change, and the height of the stack is none")
{
  auto thicker = heel();
  thicker.layers[1].thickness += 2e-3;
  const auto plan = planned_changes(heel(), thicker);
  CHECK(names_of(plan) == std::set<std::string>{"thicker core"});
  CHECK_FALSE(plan.height_is_kept);
  REQUIRE(plan.changes[0].details.size() == 1);
  CHECK(plan.changes[0].details[0].from == "16 mm");
  CHECK(plan.changes[0].details[0].to == "18 mm");

  // A thicker core for a thinner carrier: two changes, the same height, which every mixture keeps.
  thicker.layers[2].thickness -= 2e-3;
  const auto traded = planned_changes(heel(), thicker);
  CHECK(names_of(traded) == std::set<std::string>{"thicker core", "thinner carrier"});
  for (ChangeSet set = 0; set < 4; ++set)
    CHECK(stack_height(mixture(traded, set).setup.layers) == Approx(26.5e-3).epsilon(1e-12));
}

TEST_CASE("foam thinned to make room for a plate is a change of the foam")
{
  auto with_plate = heel();
  with_plate.layers[2].thickness -= 1.2e-3;
  with_plate.layers.insert(with_plate.layers.begin() + 2,
                           layer("plate", material("glass", "plate", 8e9), 1.2));
  const auto plan = planned_changes(heel(), with_plate);
  CHECK(names_of(plan) == std::set<std::string>{"plate added", "thinner carrier"});
  CHECK_FALSE(plan.height_is_kept);
  // The plate alone leaves every foam as it is, and stands beside it.
  const auto plate = static_cast<ChangeSet>(plan.changes[0].name == "plate added" ? 1 : 2);
  const auto alone = mixture(plan, plate).setup;
  CHECK(stack_height(alone.layers) == Approx(stack_height(heel().layers) + 1.2e-3).epsilon(1e-12));
  for (const auto &each : alone.layers)
    if (each.name == "carrier")
      CHECK(each.thickness == Approx(7e-3).epsilon(1e-12));
}

TEST_CASE("air, build and surroundings of a pair of units are changes of their own")
{
  auto other = forefoot();
  other.layers[2].unit->gauge_pressure = 110e3;
  other.layers[2].unit->diameter = 0.058;
  other.temperature += 10;
  CHECK(names_of(planned_changes(forefoot(), other)) ==
        std::set<std::string>{"less pressure in unit", "build of unit", "surroundings"});
  std::get<solver::DropRig>(other.rig).height = 0.2;
  other.plug.base = solver::Base::clamped;
  CHECK(names_of(planned_changes(forefoot(), other)).count("drop height") == 1);
  CHECK(names_of(planned_changes(forefoot(), other)).count("base of the plug") == 1);
}

TEST_CASE("of a slide, court, shape of the bar, way and rubber are changes of their own")
{
  solver::Case     maple;
  solver::SlideRig slide;
  slide.court = "hardwood", slide.court_state = "clean";
  slide.friction.mu_ref = 0.8;
  slide.lug.width = 4e-3, slide.lug.spacing = 8e-3;
  slide.pressure = 200e3;
  maple.plug.section = solver::Section::plane_strain;
  maple.plug.radius = 4e-3;
  const auto rubber = material("rubber-60a", "rubber", 0.6e6);
  maple.layers = {layer("skin", rubber, 1), layer("lug", rubber, 3)};
  slide.lug_heat.density = rubber.density;
  maple.rig = slide;

  auto  yard = maple;
  auto &other = std::get<solver::SlideRig>(yard.rig);
  other.court = "asphalt";
  other.friction.mu_ref = 1.0;
  CHECK(names_of(planned_changes(maple, yard)) == std::set<std::string>{"court"});
  other.lug.width = 5e-3, other.lug.spacing = 10e-3;
  yard.plug.radius = 5e-3;
  other.pressure = 300e3;
  yard.layers[1].thickness = 2.5e-3;
  const auto plan = planned_changes(maple, yard);
  CHECK(names_of(plan) == std::set<std::string>{"court", "shape of the bar", "pressure", "thinner lug"});
  CHECK(canonical_text(mixture(plan, 0).setup) == canonical_text(maple));
  CHECK(canonical_text(mixture(plan, all_of(plan)).setup) == canonical_text(yard));
  // The section stays as wide as the bars lie apart, whatever else is mixed.
  for (ChangeSet set = 0; set <= all_of(plan); ++set)
  {
    const auto mixed = mixture(plan, set).setup;
    CHECK(2 * mixed.plug.radius == Approx(std::get<solver::SlideRig>(mixed.rig).lug.spacing));
  }
}

TEST_CASE("with no change a mixture is A, with all of them it is B")
{
  const auto plan = planned_changes(heel(), forefoot());
  CHECK(canonical_text(mixture(plan, 0).setup) == canonical_text(heel()));
  CHECK(canonical_text(mixture(plan, all_of(plan)).setup) == canonical_text(forefoot()));
}

TEST_CASE("every mixture has the cushion height of one of the two stacks and fits together")
{
  const auto   plan = planned_changes(heel(), forefoot());
  const double a = cushion_height(heel().layers), b = cushion_height(forefoot().layers);
  CHECK(a == Approx(stack_height(heel().layers) - 1.5e-3));
  for (ChangeSet set = 0; set <= all_of(plan); ++set)
  {
    const auto mixed = mixture(plan, set);
    CHECK(mixed.impossible == "");
    const bool has_size_of_b = set >> static_cast<unsigned>(plan.size) & 1U;
    CHECK(cushion_height(mixed.setup.layers) == Approx(has_size_of_b ? b : a).epsilon(1e-12));
    const bool has_plug_of_b = set >> static_cast<unsigned>(plan.radius) & 1U;
    CHECK(mixed.setup.plug.radius == (has_plug_of_b ? 0.042 : 0.037));
    std::set<std::string> layers;
    for (const auto &each : mixed.setup.layers)
      CHECK(layers.insert(each.name).second);
  }
}

TEST_CASE("the height of the stack is the shoe, the width of the plug is the saw: two changes")
{
  const auto names = names_of(planned_changes(heel(), forefoot()));
  CHECK(names.count("thinner stack") == 1);
  CHECK(names.count("wider plug") == 1);
}

TEST_CASE("from B to A the same mixtures are passed")
{
  const auto plan = planned_changes(heel(), forefoot()), back = planned_changes(forefoot(), heel());
  REQUIRE(plan.changes.size() == back.changes.size());
  for (ChangeSet set = 1; set < all_of(plan); ++set)
    CHECK(canonical_text(mixture(plan, set).setup) ==
          canonical_text(mixture(back, all_of(plan) & ~set).setup));
}

TEST_CASE("a mixture that cannot be built says why")
{
  // Thin stack with a unit against a thick one: the unit leaves no room for foam in the height of the thin
  // one.
  auto        thin = tests::drop_on("thin", {layer("foam", material("firm", "foam", 0.8e6), 8),
                                             layer("skin", material("rubber", "rubber", 0.6e6), 2)});
  const auto  plan = planned_changes(thin, forefoot());
  std::size_t n_impossible = 0;
  for (ChangeSet set = 0; set <= all_of(plan); ++set)
    if (const auto mixed = mixture(plan, set); !mixed.impossible.empty())
    {
      ++n_impossible;
      CHECK(mixed.impossible.find("mm") != std::string::npos);
      CHECK(mixed.setup.label.find("thin with") == 0);
    }
  CHECK(n_impossible > 0);

  // A unit wider than the plug of the other stack.
  auto narrow = heel();
  narrow.plug.radius = 0.030;
  narrow.layers[1].core_diameter = 0;
  narrow.layers[1].ring.reset();
  const auto wide = planned_changes(narrow, forefoot());
  bool       is_told = false;
  for (ChangeSet set = 0; set <= all_of(wide); ++set)
    is_told =
      is_told || mixture(wide, set).impossible.find("does not fit into the plug") != std::string::npos;
  CHECK(is_told);
}
