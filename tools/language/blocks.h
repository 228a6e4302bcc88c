// SPDX-License-Identifier: Apache-2.0
// What a block of values that leaves the program consists of, described once: `block_of(const S *)`, found
// beside the struct, lists its members with the key that readers see, what each means and its unit. JSON and
// the types of the page are loops over these lists. A description with another number of members than the
// struct does not compile.
#pragma once

#include "tools/language/descriptor.h"

#include <array>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <vector>

namespace solemech::tools::blocks
{
/// One entry: a member, or what a function makes of the block.
template <typename From>
struct Field
{
  From             from;
  std::string_view key, meaning, unit;
};

/// A member that only the program itself needs.
template <typename From>
struct Kept
{
  From from;
};

template <typename From>
constexpr Field<From> field(From from, std::string_view key, std::string_view meaning = "",
                            std::string_view unit = "")
{
  return {from, key, meaning, unit};
}

template <typename From>
constexpr Kept<From> kept(From member)
{
  return {member};
}

template <typename... Items>
struct Block
{
  std::string_view     name, about;
  std::tuple<Items...> items;
};

template <typename Struct, typename... Items>
constexpr auto block(std::string_view name, std::string_view about, Items... items)
{
  static_assert((0 + ... + (std::is_member_pointer_v<decltype(items.from)> ? 1 : 0)) == n_members<Struct>(),
                "the description and the struct have not the same members");
  return Block<Items...>{name, about, {items...}};
}

/// Calls `visit` with each entry that is handed on, in order.
template <typename Struct, typename Visit>
constexpr void for_each_field(Visit &&visit)
{
  const auto visit_one = [&]<typename Item>(const Item &item) {
    if constexpr (requires { item.key; })
      visit(item);
  };
  std::apply([&](const auto &...each) { (visit_one(each), ...); },
             block_of(static_cast<const Struct *>(nullptr)).items);
}

template <typename Value>
concept IsBlock = requires(const Value *none)
{
  block_of(none).name;
};

/// An enumeration whose `words_of` lists the words of its values, counted from 0.
template <typename Value>
concept IsChoice = std::is_enum_v<Value> && requires(Value value)
{
  words_of(value)[0];
};

template <typename Value>
inline constexpr bool is_list = false;
template <typename Value>
inline constexpr bool is_list<std::vector<Value>> = true;
template <typename Value, std::size_t n>
inline constexpr bool is_list<std::array<Value, n>> = true;

template <typename Value>
inline constexpr bool is_pair = false;
template <typename Value>
inline constexpr bool is_pair<std::array<Value, 2>> = true;
} // namespace solemech::tools::blocks
