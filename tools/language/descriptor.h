// SPDX-License-Identifier: Apache-2.0
// What a struct of a case consists of, told once: its members in order, with their names. Canonical text,
// fingerprint and equality are loops over these lists. A description that forgets a member does not compile.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <tuple>
#include <utility>

namespace solemech::tools
{
/// One member of a struct.
template <typename Struct, typename Value>
struct Member
{
  Value Struct::*at;
  std::string_view name;                    ///< in the canonical text; empty: the members of the value stand in its place
  std::string_view first = {}, second = {}; ///< of a table: names of the two numbers of a row; of a variant: what says the kind
  bool             is_quiet = false;        ///< left out while it is as in a new struct
  bool (*applies)(const Struct &) = nullptr; ///< whether it says something; none: always

  /// Left out while it has its first value: for members added later, so that older records stay comparable.
  constexpr Member quietly() const
  {
    Member changed = *this;
    changed.is_quiet = true;
    return changed;
  }
  /// Says something only where the condition holds.
  constexpr Member when(bool (*condition)(const Struct &)) const
  {
    Member changed = *this;
    changed.applies = condition;
    return changed;
  }
};

template <typename Struct, typename Value>
constexpr Member<Struct, Value> member(Value Struct::*at, std::string_view name)
{
  return {at, name};
}

/// A struct inside whose members stand among those of the outer one.
template <typename Struct, typename Value>
constexpr Member<Struct, Value> part(Value Struct::*at)
{
  return {at, ""};
}

/// Rows of two numbers.
template <typename Struct, typename Value>
constexpr Member<Struct, Value> rows(Value Struct::*at, std::string_view name, std::string_view first, std::string_view second)
{
  return {at, name, first, second};
}

/// One of several structs: a line `kind_name` says which, its members follow; without a name among those of the outer one.
template <typename Struct, typename Value>
constexpr Member<Struct, Value> one_of(Value Struct::*at, std::string_view name, std::string_view kind_name)
{
  return {at, name, kind_name};
}

/// The list of a struct: `members`, a tuple of Member; `left_out`, how many members do not belong to what a run
/// sees (titles, sources); and `kind`, its name where it is one of several.
template <typename Struct>
struct Description;

template <typename Struct>
concept Described = requires { Description<Struct>::members; };

namespace detail
{
template <typename T>
constexpr bool is_optional = false;
template <typename T>
constexpr bool is_optional<std::optional<T>> = true;

/// Stands for a value of any type where members of an aggregate are counted.
struct Anything
{
  template <typename T>
    requires(!is_optional<T>)
  operator T() const; // never called
};
template <std::size_t>
using AnythingAt = Anything;

template <typename Struct, std::size_t... i>
constexpr bool takes(std::index_sequence<i...>)
{
  return requires { Struct{AnythingAt<i>{}...}; };
}

constexpr std::size_t most_members = 40;
} // namespace detail

/// Number of members of an aggregate.
template <typename Struct, std::size_t n = detail::most_members>
constexpr std::size_t n_members()
{
  static_assert(n > 0, "not an aggregate that can be counted");
  if constexpr (detail::takes<Struct>(std::make_index_sequence<n>()))
    return n;
  else
    return n_members<Struct, n - 1>();
}

/// Calls `visit` with each Member of a described struct, in order.
template <Described Struct, typename Visit>
constexpr void for_each_member(Visit &&visit)
{
  using List = Description<Struct>;
  static_assert(std::tuple_size_v<std::remove_cvref_t<decltype(List::members)>> + List::left_out == n_members<Struct>(),
                "the description and the struct have not the same members");
  std::apply([&](const auto &...each) { (visit(each), ...); }, List::members);
}
} // namespace solemech::tools
