// SPDX-License-Identifier: Apache-2.0
// What a struct of a case consists of, told once: its members in order, with their names and, where a person
// may write them, the entry of the file (dimension, range, default, meaning). Reading (member_reader.h), the
// reference page, addresses, canonical text, fingerprint and equality are loops over these lists. A
// description that forgets a member does not compile.
#pragma once

#include "solver/doubt.h"
#include "tools/language/entries.h"

#include <concepts>
#include <cstddef>
#include <optional>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>

namespace solemech::tools
{
// The vocabulary of entries, so that descriptions read as tables.
using materials::above_to;
using materials::any_value;
using materials::Dimension;
using materials::required;
using materials::within;

/// An entry of a file that is no member: it says a member in another way, or something that a reader
/// resolves.
struct Said
{
  materials::Entry entry;
};

constexpr Said said(std::string_view key, Dimension dimension, materials::Range range,
                    std::string_view fallback, std::string_view meaning, std::string_view words = "",
                    std::string_view instead_of = "")
{
  return {{"", key, dimension, range, fallback, meaning, words, instead_of}};
}

/// What a block says something of: the stack, the one bench that a case with a stack has, the slide of a lug,
/// or the surroundings. A stack file holds the first, a rig file the others; what is of the case stands in no
/// other file.
enum class BlockOf { the_case, stack, bench, slide, surroundings };

/// The block of a file that the entries of a struct stand in.
struct Block
{
  std::string_view name;  ///< "drop"
  std::string_view entry; ///< what it is, in the list of blocks
  std::string_view about; ///< sentence over its entries
  BlockOf          of = BlockOf::the_case;
  bool             is_list = false; ///< there may be several
};

/// Of two entries that say the same one has to be there.
struct OneOf
{
  std::string_view first, second, cure;
};

/// One member of a struct.
template <typename Struct, typename Value>
struct Member
{
  Value Struct::*at;

  std::string_view name; ///< in the canonical text; empty: the members of the value stand in its place
  std::string_view first = {}, second = {}; ///< of the two numbers of a row; of a variant: what says the kind
  bool             is_quiet = false;        ///< left out while it is as in a new struct
  bool             is_resolved = false; ///< its own entries are not asked for here: it follows from others
  bool (*applies)(const Struct &) = nullptr;       ///< whether it says something; none: always
  materials::Entry                     entry = {}; ///< in files; no meaning: not an entry
  std::optional<solver::DoubtedNumber> doubt = {}; ///< a file may say how sure it is
  std::string_view told_as = {}, told_in = {};     ///< where two cases differ; none: key, usual unit
  std::string_view told_zero = {};                 ///< there instead of a number that is 0

  /// As a person writes it, under the member's own name.
  constexpr Member as(Dimension dimension, materials::Range range, std::string_view fallback,
                      std::string_view meaning, std::string_view words = "",
                      std::string_view instead_of = "") const
  {
    return as(name, dimension, range, fallback, meaning, words, instead_of);
  }
  /// The same under another name.
  constexpr Member as(std::string_view key, Dimension dimension, materials::Range range,
                      std::string_view fallback, std::string_view meaning, std::string_view words = "",
                      std::string_view instead_of = "") const
  {
    Member changed = *this;
    changed.entry = {"", key, dimension, range, fallback, meaning, words, instead_of};
    return changed;
  }
  /// What people call it where two cases differ in it, the unit they use there, and what none of it is
  /// called.
  constexpr Member called(std::string_view name_for_people, std::string_view unit_for_people = {},
                          std::string_view word_for_zero = {}) const
  {
    Member changed = *this;
    changed.told_as = name_for_people;
    changed.told_in = unit_for_people;
    changed.told_zero = word_for_zero;
    return changed;
  }
  /// As an entry that other structs have as well.
  constexpr Member as(const Said &common) const
  {
    Member changed = *this;
    changed.entry = common.entry;
    return changed;
  }
  /// A number that a file may know with a doubt only.
  constexpr Member doubted(solver::DoubtedNumber number) const
  {
    Member changed = *this;
    changed.doubt = number;
    return changed;
  }
  /// Left out while it has its first value: for members added later, so that older records stay comparable.
  constexpr Member quietly() const
  {
    Member changed = *this;
    changed.is_quiet = true;
    return changed;
  }
  /// A part that follows from other entries; those of its own do not stand in this block.
  constexpr Member resolved() const
  {
    Member changed = *this;
    changed.is_resolved = true;
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
constexpr Member<Struct, Value> rows(Value Struct::*at, std::string_view name, std::string_view first,
                                     std::string_view second)
{
  return {at, name, first, second};
}

/// One of several structs: a line `kind_name` says which, its members follow; without a name among those of
/// the outer one.
template <typename Struct, typename Value>
constexpr Member<Struct, Value> one_of(Value Struct::*at, std::string_view name, std::string_view kind_name)
{
  return {at, name, kind_name};
}

/// The list of a struct: `members`, a tuple of Member and Said; `shown`, those that no run sees but answers
/// show or follow (titles, sources), if there are any; `left_out`, how many members follow from others;
/// `kind`, its name where it is one of several; and `block`, where its
/// entries stand in a block of their own. Of a rig besides (described_rigs.h): `Blocks`, `needed`, `words`.
template <typename Struct>
struct Description;

template <typename Struct>
concept Described = requires
{
  Description<Struct>::members;
};

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
  requires(!is_optional<T>) operator T() const; // never called
};
template <std::size_t>
using AnythingAt = Anything;

template <typename Struct, std::size_t... i>
constexpr bool takes(std::index_sequence<i...>)
{
  return requires
  {
    Struct{AnythingAt<i>{}...};
  };
}

constexpr std::size_t most_members = 40;

template <typename Item>
constexpr bool is_said = std::same_as<std::remove_cvref_t<Item>, Said>;

template <typename... Items>
constexpr std::size_t n_described(const std::tuple<Items...> &)
{
  return (0 + ... + (is_said<Items> ? 0 : 1));
}

/// `shown` of a description, or nothing.
template <typename List>
constexpr auto shown_of()
{
  if constexpr (requires { List::shown; })
    return List::shown;
  else
    return std::tuple<>();
}
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

/// Calls `visit` with each Member and Said of a described struct, in order.
template <Described Struct, typename Visit>
constexpr void for_each_item(Visit &&visit)
{
  std::apply([&](const auto &...each) { (visit(each), ...); }, Description<Struct>::members);
}

/// Calls `visit` with each Member of a described struct, in order.
template <Described Struct, typename Visit>
constexpr void for_each_member(Visit &&visit)
{
  using List = Description<Struct>;
  static_assert(detail::n_described(List::members) + detail::n_described(detail::shown_of<List>()) +
                    List::left_out ==
                  n_members<Struct>(),
                "the description and the struct have not the same members");
  for_each_item<Struct>([&](const auto &item) {
    if constexpr (!detail::is_said<decltype(item)>)
      visit(item);
  });
}

/// Calls `visit` with each Member that no run sees but answers show.
template <Described Struct, typename Visit>
constexpr void for_each_shown(Visit &&visit)
{
  std::apply([&](const auto &...each) { (visit(each), ...); }, detail::shown_of<Description<Struct>>());
}

/// Whether the entries of a member's value stand in the block of the struct around it.
template <typename Value>
concept Flattened = Described<Value> && !requires
{
  Description<Value>::block;
};
} // namespace solemech::tools
