// SPDX-License-Identifier: Apache-2.0
// The catalogue of readings in itself, and made-up results against it: they may hold only what the program
// gives. What every rig really gives is in tests/verification/rig_readings_test.cc.
#include "solver/results/catalogue.h"
#include "solver/rig.h"
#include "tests/support/catch.h"
#include "tests/unit/output/results/synthetic.h"

#include <set>

using namespace solemech;
using namespace solemech::tests;

namespace
{
/// No two rows may claim one place.
template <typename Place>
bool places_are_unique(Place place)
{
  std::set<int> taken;
  const auto    kinds = solver::in_order(place);
  for (const auto *kind : kinds)
    taken.insert(place(*kind));
  return !kinds.empty() && taken.size() == kinds.size();
}
} // namespace

TEST_CASE("the names of readings are unique, and a row names only rows")
{
  std::set<std::string_view> names;
  for (const auto &kind : solver::all_readings())
  {
    INFO(kind.name);
    CHECK(names.insert(kind.name).second);
    CHECK(solver::find_reading(kind.name)->name == kind.name);
    CHECK(kind.given_by.bits != 0);
    CHECK_FALSE(kind.label.empty());
    for (const auto other : {kind.beside, kind.follows})
      CHECK((other.empty() || solver::find_reading(other)));
    CHECK((kind.label.find("{}") != std::string_view::npos) == kind.is_family());
    if (kind.line.form == solver::LineForm::range)
      CHECK_FALSE(kind.beside.empty());
  }
  CHECK(solver::find_reading("compression.core")->name == solver::catalogue.compression_of_layer);
  CHECK_FALSE(solver::find_reading("no_such_reading"));
}

TEST_CASE("every list of readings has one order")
{
  using Kind = solver::ReadingKind;
  CHECK(places_are_unique([](const Kind &kind) { return kind.compared.place; }));
  CHECK(places_are_unique([](const Kind &kind) { return kind.tried.place; }));
  CHECK(places_are_unique([](const Kind &kind) { return kind.main.told; }));
  CHECK(places_are_unique([](const Kind &kind) { return kind.main.charted; }));
}

TEST_CASE("what is compared, tried or usual has its words")
{
  for (const auto &kind : solver::all_readings())
  {
    INFO(kind.name);
    if (kind.compared.place > 0)
      CHECK((!kind.compared.label.empty() && !kind.compared.more.empty() && !kind.compared.less.empty()));
    if (kind.tried.place > 0)
      CHECK(
        (!kind.tried.name.empty() && !kind.tried.higher.empty() && kind.line.form != solver::LineForm::none));
    if (kind.main.told > 0)
      CHECK_FALSE(kind.main.words.empty());
    CHECK(kind.usual.lowest < kind.usual.highest);
    if (!kind.on_sheet.empty())
      CHECK(kind.given_by.has(solver::RigKind::drop));
  }
}

TEST_CASE("made-up results of tests hold what the program gives, in its units")
{
  for (const auto &run : {synthetic_heel(), synthetic_forefoot(), synthetic_press()})
  {
    for (const auto &reading : run.result.readings)
    {
      INFO(reading.name);
      const auto &kind = solver::kind_of(reading);
      CHECK(kind.unit == reading.unit);
      CHECK(kind.given_by.has(solver::rig_kind(run.setup.rig)));
    }
    for (const auto &curve : run.result.curves)
      CHECK((curve.name == "force" ||
             curve.name == "tup_displacement")); // as solver/results/recorder.cc records them
  }
}
