// SPDX-License-Identifier: Apache-2.0
// From descriptions (descriptor.h) to files: the entries of a block, and a struct read from its block.
#pragma once

#include "tools/language/descriptor.h"
#include "tools/language/fields.h"

#include <algorithm>
#include <array>
#include <string>

namespace solemech::tools
{
namespace detail
{
/// A row of numbers, which a file gives as one value or a list.
template <typename T>
constexpr bool is_row = false;
template <std::size_t n>
constexpr bool is_row<std::array<double, n>> = true;
} // namespace detail

/// Calls `visit` with each entry of a struct, parts included, in the order of the description.
template <Described Struct, typename Visit>
void for_each_entry(Visit &&visit)
{
  for_each_item<Struct>([&]<typename Item>(const Item &item) {
    if (!item.entry.meaning.empty())
      visit(item.entry);
    else if constexpr (!detail::is_said<Item>)
    {
      using Value = std::remove_cvref_t<decltype(std::declval<Struct>().*item.at)>;
      if constexpr (Flattened<Value>)
        if (item.name.empty() && !item.is_resolved)
          for_each_entry<Value>(visit);
    }
  });
}

/// Calls `visit` with the name of each entry that says nothing for this object.
template <Described Struct, typename Visit>
void for_each_idle_entry(const Struct &object, Visit &&visit)
{
  for_each_member<Struct>([&](const auto &item) {
    if (!item.applies || item.applies(object))
      return;
    using Value = std::remove_cvref_t<decltype(object.*item.at)>;
    if (!item.entry.meaning.empty())
      visit(item.entry.name);
    else if constexpr (Flattened<Value>)
      for_each_entry<Value>([&](const materials::Entry &entry) { visit(entry.name); });
  });
}

/// Takes numbers, words, choices and flags of a struct from its block, parts included. A word that stands in
/// place of a number leaves the member as it is, as does what is neither given nor has a default. A slip
/// gives what is not a number, so that no check trips over it again. Materials are not looked up, entries
/// that the block cannot have not asked for.
/// @param with_defaults  false: what is not given stays as it is, for a struct that was read before
template <Described Struct>
void read_members(const materials::Fields &fields, Struct &object, bool with_defaults = true)
{
  const auto read = [&]<typename Value>(const auto &item, Value &value) {
    const auto &entry = item.entry;
    if (entry.meaning.empty())
    {
      if constexpr (Flattened<Value>)
        if (item.name.empty() && !item.is_resolved)
          read_members(fields, value, with_defaults);
    }
    else if (!fields.knows(entry.name) || (!with_defaults && !fields.given(entry.name)))
      return;
    else if constexpr (std::same_as<Value, bool>)
      value = fields.flag(entry.name);
    else if constexpr (std::floating_point<Value>)
    {
      if (fields.word(entry.name).empty() && (fields.given(entry.name) || !entry.fallback.empty()))
        value = fields.value(entry.name);
    }
    else if constexpr (detail::is_row<Value>)
    {
      if (fields.given(entry.name) || !entry.fallback.empty())
        std::ranges::copy(fields.row(entry.name, value.size()), value.begin());
    }
    else if constexpr (std::integral<Value>)
      value = fields.count(entry.name);
    else if constexpr (std::same_as<Value, std::string>)
      value = fields.text(entry.name);
    else if constexpr (std::is_enum_v<Value>)
    {
      const auto words = materials::word_list(entry); // in the order of the enumeration
      const auto written = fields.text(entry.name);
      for (std::size_t i = 0; i < words.size(); ++i)
        if (words[i] == written)
          value = static_cast<Value>(i);
    }
  };
  for_each_member<Struct>([&](const auto &item) {
    if (!item.applies || item.applies(object))
      read(item, object.*item.at);
  });
}
} // namespace solemech::tools
