// SPDX-License-Identifier: Apache-2.0
// JSON of described values (tools/language/blocks.h): blocks become objects, lists arrays, what is not there
// null. Entries keep their order, so that equal runs give equal files.
#pragma once

#include "tools/language/blocks.h"

#include <nlohmann/json.hpp>

#include <functional>
#include <stdexcept>
#include <string>

namespace solemech::tools
{
using Json = nlohmann::ordered_json;

template <typename Value>
Json json_of(const Value &value)
{
  if constexpr (blocks::IsBlock<Value>)
  {
    Json object = Json::object();
    blocks::for_each_field<Value>([&](const auto &field) {
      if (!object.emplace(std::string(field.key), json_of(std::invoke(field.from, value))).second)
        throw std::logic_error("two entries called " + std::string(field.key));
    });
    return object;
  }
  else if constexpr (blocks::IsChoice<Value>)
    return words_of(value).at(static_cast<std::size_t>(value));
  else if constexpr (detail::is_optional<Value>)
    return value ? json_of(*value) : Json(nullptr);
  else if constexpr (blocks::is_list<Value>)
  {
    Json array = Json::array();
    for (const auto &each : value)
      array.push_back(json_of(each));
    return array;
  }
  else
    return value;
}

/// The text, in lines when `indent` is not negative. Bytes that are no UTF-8 are replaced: texts come from
/// files.
/// @throws solver::ResultsError naming the entry when a number is not finite: JSON has no word for it
std::string text_of(const Json &value, int indent = -1);
} // namespace solemech::tools
