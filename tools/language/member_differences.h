// SPDX-License-Identifier: Apache-2.0
// What differs between two structs of a case, member by member, in words for people.
#pragma once

#include "tools/language/descriptor.h"

#include <algorithm>
#include <concepts>
#include <string>
#include <type_traits>
#include <vector>

namespace solemech::tools
{
/// What people call a member: by itself its entry.
template <typename Item>
std::string told_name(const Item &item)
{
  std::string name(item.told_as.empty() ? item.entry.name : item.told_as);
  std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}

/// The value of a member for people: in its own or the usual unit of its entry, or the word that a file has
/// for it.
template <typename Value, typename Item>
std::string member_text(const Value &value, const Item &item)
{
  const auto &entry = item.entry;
  if constexpr (std::is_arithmetic_v<Value>)
    if (value == Value(0) && !item.told_zero.empty())
      return std::string(item.told_zero);
  if constexpr (std::same_as<Value, bool>)
    return value ? "yes" : "no";
  else if constexpr (std::is_enum_v<Value>)
  {
    const auto words = materials::word_list(entry);
    const auto place = static_cast<std::size_t>(value);
    return place < words.size() ? words[place] : "its own";
  }
  else if constexpr (std::is_arithmetic_v<Value>)
    return materials::quantity_text(static_cast<double>(value), entry.dimension, item.told_in);
  else
    return value;
}

/// Adds a row, what differs, from and to, for each member with an entry that differs to what people see and
/// says something for both. Parts are not entered.
template <typename Row, Described Struct>
void add_differences(std::vector<Row> &rows, const Struct &a, const Struct &b)
{
  for_each_member<Struct>([&](const auto &item) {
    using Value = std::remove_cvref_t<decltype(a.*item.at)>;
    if constexpr (std::is_arithmetic_v<Value> || std::is_enum_v<Value> || std::same_as<Value, std::string>)
    {
      if (item.entry.meaning.empty() || (item.applies && !(item.applies(a) && item.applies(b))))
        return;
      const auto from = member_text(a.*item.at, item);
      const auto to = member_text(b.*item.at, item);
      if (from != to)
        rows.push_back({told_name(item), from, to});
    }
  });
}
} // namespace solemech::tools
