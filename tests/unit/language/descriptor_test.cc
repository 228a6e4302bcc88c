// SPDX-License-Identifier: Apache-2.0
// Whatever a description lists, a run sees: changing any one member of any struct changes the canonical text
// of the case, its fingerprint, and equality of the piece; and what a person writes for a member is read into
// it.
#include "tests/support/catch.h"
#include "tests/support/rigs.h"
#include "tools/language/case_text.h"
#include "tools/language/described_sole.h"
#include "tools/language/member_reader.h"
#include "tools/language/schema.h"
#include "tools/language/sheet.h"
#include "tools/language/sole_entries.h"
#include "tools/language/sole_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <concepts>
#include <span>
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

/// Puts something into everything that may be empty or does not count while it is 0.
template <typename Value>
void fill(Value &value)
{
  if constexpr (Described<Value>)
    for_each_member<Value>([&](const auto &each) { fill(value.*each.at); });
  else if constexpr (std::floating_point<Value>)
    value = 1;
  else if constexpr (detail::is_optional<Value>)
    fill(value.emplace());
  else if constexpr (requires { value.index(); })
    std::visit([](auto &kind) { fill(kind); }, value);
  else if constexpr (!std::same_as<Value, std::string> && requires { value.resize(1); })
  {
    value.resize(1);
    fill(value[0]);
  }
}

solver::AbrasionRig drum()
{
  solver::AbrasionRig rig;
  rig.tool = solver::AbrasionTool::drum;
  return rig;
}

std::vector<solver::Case> full_cases()
{
  auto rigs = tests::one_of_each_rig();
  rigs.emplace_back(drum());
  std::vector<solver::Case> cases;
  for (auto &rig : rigs)
  {
    fill(rig);
    cases.push_back(full_case(rig));
  }
  return cases;
}

/// Calls `look` after changing each number, word and choice below `object`, one at a time, and puts it back;
/// with `shown` also those that only people see.
template <bool shown, typename Value, typename Look>
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
  {
    for_each_member<Value>([&](const auto &each) {
      // A choice that decides which other members count is tested by those.
      if (!each.applies || each.applies(object))
        change_each<shown>(object.*each.at, where + "." + std::string(each.name), look);
    });
    if constexpr (shown)
      for_each_shown<Value>([&](const auto &each) {
        change_each<shown>(object.*each.at, where + "." + std::string(each.name), look);
      });
  }
  else if constexpr (requires { object.has_value(); })
    change_each<shown>(*object, where, look);
  else if constexpr (requires { object.index(); })
    std::visit([&](auto &kind) { change_each<shown>(kind, where, look); }, object);
  else
    for (auto &element : object)
      if constexpr (requires { std::get<1>(element); })
      {
        change_each<shown>(std::get<0>(element), where + ".first", look);
        change_each<shown>(std::get<1>(element), where + ".second", look);
      }
      else
        change_each<shown>(element, where, look);
}

/// A value of an entry as a person writes it, in the first unit of its kind that needs no offset.
std::string written(double value, const materials::Entry &entry)
{
  for (const auto &unit : materials::units())
    if (unit.dimension == entry.dimension && unit.offset == 0)
      return fmt::format("\"{:.17g} {}\"", value / unit.factor, unit.name);
  return fmt::format("{:.17g}", value);
}

/// Puts the first or the second of two values that the entry allows into the member. @return the value as
/// written
template <typename Value>
std::string put_value(Value &value, const materials::Entry &entry, bool second)
{
  const auto inside = [&] {
    return entry.range.lowest + (second ? 0.75 : 0.25) * (entry.range.highest - entry.range.lowest);
  };
  if constexpr (std::same_as<Value, bool>)
    return (value = second) ? "true" : "false";
  else if constexpr (std::floating_point<Value>)
    return written(value = inside(), entry);
  else if constexpr (detail::is_row<Value>)
  {
    std::string list;
    for (std::size_t i = 0; i < value.size(); ++i)
    {
      value[i] = inside() * (1 + 0.01 * static_cast<double>(i));
      list += (list.empty() ? "[" : ", ") + written(value[i], entry);
    }
    return list + "]";
  }
  else if constexpr (std::integral<Value>)
    return fmt::format("{}", value = static_cast<Value>(inside()));
  else if constexpr (std::is_enum_v<Value>)
  {
    const auto words = materials::word_list(entry);
    value = static_cast<Value>(second ? words.size() - 1 : 0);
    return '"' + words.at(static_cast<std::size_t>(value)) + '"';
  }
  else
    return '"' + (value = second ? "b" : "a") + '"';
}

/// Writes each entry of `object` with two values, reads it into another struct and compares the members.
template <Described Struct>
int write_and_read(std::string_view section, const Struct &object = {},
                   std::span<const materials::Entry> schema = case_entries())
{
  const auto is_near = [](double a, double b) { return std::abs(a - b) <= 1e-12 * std::abs(b); };
  int        n_entries = 0;
  const auto each_entry = [&]<typename Inner>(const auto &self, const auto &inner_of,
                                              const Inner &inner) -> void {
    for_each_member<Inner>([&](const auto &item) {
      if (item.applies && !item.applies(inner))
        return;
      using Value = std::remove_cvref_t<decltype(inner.*item.at)>;
      if constexpr (Flattened<Value>)
      {
        if (item.name.empty() && !item.is_resolved)
          self(
            self, [&](Struct &outer) -> Value & { return inner_of(outer).*item.at; }, inner.*item.at);
      }
      else if constexpr (std::is_arithmetic_v<Value> || std::is_enum_v<Value> ||
                         std::same_as<Value, std::string> || detail::is_row<Value>)
        for (const bool second : {false, true})
          if (!item.entry.meaning.empty())
          {
            Struct     wanted = object, read = object;
            auto      &value = inner_of(wanted).*item.at;
            const auto text = fmt::format("{} = {}", item.entry.name, put_value(value, item.entry, second));
            INFO(section << ": " << text);
            materials::Problems others; // entries that are missing
            const auto          table = materials::parse_sheet(text, "block.toml", others);
            read_members(materials::Fields(table, section, "", schema, others), read);
            if constexpr (std::floating_point<Value>)
              CHECK(is_near(inner_of(read).*item.at, value));
            else if constexpr (detail::is_row<Value>)
              CHECK(std::ranges::equal(inner_of(read).*item.at, value, is_near));
            else
              CHECK(inner_of(read).*item.at == value);
            ++n_entries;
          }
    });
  };
  each_entry(
    each_entry, [](Struct &outer) -> Struct & { return outer; }, object);
  return n_entries;
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
    change_each<false>(data, "case", [&](const std::string &where) {
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

TEST_CASE("every described member, also one that only people see, shows in the text of answers")
{
  int n_looked_at = 0;
  for (solver::Case &data : full_cases())
  {
    const auto text = answer_text(data), of_run = canonical_text(data);
    change_each<true>(data, "case", [&](const std::string &where) {
      INFO(where);
      ++n_looked_at;
      CHECK(answer_text(data) != text);
    });
    CHECK(answer_text(data) == text);
    data.layers[0].laid_in = !data.layers[0].laid_in;
    CHECK(canonical_text(data) == of_run);
  }
  CHECK(n_looked_at > 500);
}

TEST_CASE("what is written for a member is read into it")
{
  int n = write_and_read<solver::Layer>("layer") + write_and_read<solver::AirUnit>("layer.unit") +
          write_and_read<solver::Plug>("plug") + write_and_read<solver::AbrasionRig>("abrasion", drum()) +
          write_and_read<solver::Case>("surroundings");
  for_each_rig_block(
    [&]<typename Struct>() { n += write_and_read<Struct>(Description<Struct>::block.name); });
  CHECK(n > 150);
}

TEST_CASE("every described member of a sole shows in its canonical text, and what is written is read into it")
{
  solver::Sole sole;
  sole.layers.resize(1);
  sole.pockets.resize(1);
  fill(sole);
  sole.patches[0].kind = geometry::PatchShape::Kind::pod;
  int        n_looked_at = 0;
  const auto text = canonical_text(sole);
  change_each<false>(sole, "sole", [&](const std::string &where) {
    INFO(where);
    ++n_looked_at;
    CHECK(canonical_text(sole) != text);
  });
  CHECK(canonical_text(sole) == text);
  CHECK(n_looked_at > 100);

  const auto schema = sole_entries();
  int        n = write_and_read<geometry::OutlineShape>("outline", {}, schema);
  n += write_and_read<geometry::BottomShape>("bottom", {}, schema);
  n += write_and_read<solver::SoleLayer>("layer", {}, schema);
  n += write_and_read<geometry::SlotShape>("layer.slot", {}, schema);
  n += write_and_read<materials::Ply>("layer.ply", {}, schema);
  n += write_and_read<materials::FlexuralData>("layer.flexural", {}, schema);
  n += write_and_read<solver::SolePocket>("layer.pocket", {}, schema);
  n += write_and_read<geometry::PatchShape>("pod", sole.patches[0], schema);
  n += write_and_read<geometry::PatchShape>("groove", {}, schema);
  CHECK(n > 90);
}

TEST_CASE("members are counted as the compiler sees them")
{
  struct Pair
  {
    double                     a;
    std::optional<std::string> b;
  };
  static_assert(n_members<Pair>() == 2);
  static_assert(n_members<materials::HeatProperties>() == 3);
}
