// SPDX-License-Identifier: Apache-2.0
// Every kind of rig is in the registry once and answers what any page asks; the numbers are made up.
#include "tests/support/catch.h"
#include "tests/support/rigs.h"
#include "tools/language/reading_measure.h"
#include "tools/rigs/registry.h"

#include <set>
#include <utility>
#include <vector>

using namespace solemech;
using tools::rigs::kind_of;

namespace
{
/// A case of every kind.
std::vector<solver::Case> one_of_each()
{
  std::vector<solver::Case> cases;
  for (const auto &rig : tests::one_of_each_rig())
    cases.emplace_back().rig = rig;
  return cases;
}

solver::Case case_of(solver::RigKind kind)
{
  for (const auto &setup : one_of_each())
    if (rig_kind(setup.rig) == kind)
      return setup;
  return {};
}

solver::DropRig drop_from(double height)
{
  solver::DropRig rig;
  rig.mass = 5, rig.height = height;
  return rig;
}
} // namespace

TEST_CASE("every kind of rig is in the registry once, and each case finds its own")
{
  std::set<solver::RigKind> ids;
  for (const auto *kind : tools::rigs::kinds())
    CHECK(ids.insert(kind->id()).second);
  std::set<solver::RigKind> found;
  for (const auto &setup : one_of_each())
  {
    CHECK(kind_of(setup).id() == rig_kind(setup.rig));
    found.insert(kind_of(setup).id());
  }
  CHECK(found == ids);
}

TEST_CASE("every kind says what it is and who touches the stack")
{
  for (auto &setup : one_of_each())
  {
    setup.layers.resize(2);
    CHECK(!kind_of(setup).text(setup, tools::Lengths::millimetre).empty());
    CHECK(!kind_of(setup).striker(setup).empty());
    CHECK(tools::rigs::differences(setup, setup).empty());
  }
}

TEST_CASE("a reading that a kind does not give is refused")
{
  for (const auto *kind : tools::rigs::kinds())
  {
    const std::vector<tools::NamedRun> runs{{"", kind->id(), true, {}}};
    for (const auto &name : tools::measured_readings())
      if (!tools::rig_gives(name, kind->id()))
        CHECK_THROWS_AS(tools::read_measure(name, runs), tools::InvalidMeasure);
  }
}

TEST_CASE("only a drop has a weight that falls, and it may be changed")
{
  for (auto &setup : one_of_each())
  {
    auto *fall = tools::rigs::fall_of(setup);
    CHECK((fall != nullptr) == (rig_kind(setup.rig) == solver::RigKind::drop));
    if (fall)
    {
      fall->height = 0.3;
      CHECK(tools::rigs::fall_of(std::as_const(setup))->height == 0.3);
    }
  }
}

TEST_CASE(
  "slides of one bar, of its life and of a whole sole are set against each other, a drop and a press are not")
{
  using solver::RigKind;
  const auto slide = case_of(RigKind::slide), drop = case_of(RigKind::drop), press = case_of(RigKind::press);
  CHECK(tools::rigs::are_of_one_family(slide, case_of(RigKind::wear)));
  CHECK(tools::rigs::are_of_one_family(slide, case_of(RigKind::tread)));
  CHECK_FALSE(tools::rigs::are_of_one_family(drop, press));
  const auto whole = tools::rigs::differences(drop, press);
  REQUIRE(whole.size() == 1);
  CHECK(whole[0].details[0].from == "drop");
  CHECK(whole[0].details[0].to == "press");
}

TEST_CASE("a rig takes over what differs and nothing else is left")
{
  solver::Case a, b;
  a.rig = drop_from(0.1);
  b.rig = drop_from(0.2);
  const auto differences = tools::rigs::differences(a, b);
  REQUIRE(differences.size() == 1);
  CHECK(differences[0].name == "drop height");
  CHECK(differences[0].details[0].from == "100 mm");
  differences[0].take(a, b);
  CHECK(tools::rigs::differences(a, b).empty());
}
