// SPDX-License-Identifier: Apache-2.0
// Whatever a description lists, a run sees: changing any one member of any struct changes the canonical text of the
// case, its fingerprint, and equality of the piece.
#include "tests/support/catch.h"
#include "tools/language/case_text.h"
#include "tools/language/described_case.h"

#include <concepts>
#include <string>
#include <type_traits>
#include <vector>

namespace
{
using namespace solemech;
using namespace solemech::tools;

solver::Case full_case(solver::Rig rig)
{
  materials::Material foam;
  foam.data = materials::FoamData{.network = {{}}, .relaxing = {{}}, .slipping = {{}}};
  solver::Case data;
  data.layers.resize(1);
  data.layers[0].material = foam;
  data.layers[0].ring = foam;
  data.layers[0].unit = solver::AirUnit();
  data.layers[0].unit->film.data = materials::RubberData{.relaxing = {{}}};
  data.plug.side = solver::Side::ring;
  data.plug.side_material.data = materials::PlateData{.relaxing = {{}}};
  data.rig = std::move(rig);
  data.doubts = {{solver::DoubtedNumber::thickness, "core", 0.1, {0.5}}};
  return data;
}

std::vector<solver::Case> full_cases()
{
  solver::PressRig press;
  press.table = {{0, 0}, {1, 1}};
  solver::SlideRig slide;
  slide.pad_length = 1;
  slide.lug.worn_face = {{0, 0}};
  slide.wear = solver::WearLife();
  slide.tread = solver::Tread();
  slide.tread->zones.resize(1);
  slide.tread->zones[0].rubber.emplace().data = materials::RubberData{};
  solver::AbrasionRig sleeve, drum;
  drum.tool = solver::AbrasionTool::drum;
  std::vector<solver::Case> cases;
  for (const solver::Rig &rig : std::vector<solver::Rig>{solver::DropRig(), press, solver::DurometerRig(), slide, sleeve, drum})
    cases.push_back(full_case(rig));
  return cases;
}

/// Calls `look` after changing each number, word and choice below `object`, one at a time, and puts it back.
template <typename Value, typename Look>
void change_each(Value &object, const std::string &where, const Look &look)
{
  if constexpr (std::is_enum_v<Value> || std::is_arithmetic_v<Value> || std::same_as<Value, std::string>)
  {
    const Value before = object;
    if constexpr (std::is_enum_v<Value>)
      object = static_cast<Value>(static_cast<int>(object) + 1);
    else if constexpr (std::same_as<Value, std::string>)
      object += "x";
    else if constexpr (std::same_as<Value, bool>)
      object = !object;
    else
      object += 1;
    look(where);
    object = before;
  }
  else if constexpr (std::same_as<Value, std::string_view>)
  {
    const Value before = object;
    object = "another";
    look(where);
    object = before;
  }
  else if constexpr (Described<Value>)
    for_each_member<Value>([&](const auto &each) {
      // A choice that decides which other members count is tested by those.
      if (!each.applies || each.applies(object))
        change_each(object.*each.at, where + "." + std::string(each.name), look);
    });
  else if constexpr (requires { object.has_value(); })
    change_each(*object, where, look);
  else if constexpr (requires { object.index(); })
    std::visit([&](auto &kind) { change_each(kind, where, look); }, object);
  else
    for (auto &element : object)
      if constexpr (requires { std::get<1>(element); })
      {
        change_each(std::get<0>(element), where + ".first", look);
        change_each(std::get<1>(element), where + ".second", look);
      }
      else
        change_each(element, where, look);
}
} // namespace

TEST_CASE("every described member shows in the canonical text, the fingerprint and equality")
{
  int n_looked_at = 0;
  for (solver::Case &data : full_cases())
  {
    const auto text = canonical_text(data), hash = case_hash(data, "1");
    const auto rig = data.rig;
    const auto layer = data.layers[0];
    const auto plug = data.plug;
    change_each(data, "case", [&](const std::string &where) {
      INFO(where);
      ++n_looked_at;
      CHECK(canonical_text(data) != text);
      CHECK(case_hash(data, "1") != hash);
      const bool same_rig = same_to_a_run(rig, data.rig), same_layer = same_to_a_run(layer, data.layers[0]),
                 same_plug = same_to_a_run(plug, data.plug);
      CHECK(same_rig == !where.starts_with("case.rig"));
      CHECK(same_layer == !where.starts_with("case.layer"));
      CHECK(same_plug == !where.starts_with("case.plug"));
    });
    CHECK(canonical_text(data) == text);
  }
  CHECK(n_looked_at > 400);
}

TEST_CASE("members are counted as the compiler sees them")
{
  struct Pair
  {
    double                      a;
    std::optional<std::string>  b;
  };
  static_assert(n_members<Pair>() == 2);
  static_assert(n_members<materials::HeatProperties>() == 3);
}
