// SPDX-License-Identifier: Apache-2.0
// Pages of HTML as templates that values are put into (the mustache language, by kainjow's library): {{name}}
// is escaped, {{{name}}} is markup, {{#name}} ... {{/name}} is there for each entry of a list, once for any
// other value, and not at all for null, false and an empty list.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include <string>

namespace solemech::tools::report
{
/// The readable text as content of an HTML element or of a quoted attribute.
std::string html(const std::string &text);

/// @param values  an object of texts, whole numbers, truth values, lists and objects; null where there is
/// nothing
std::string filled(const std::string &page_template, const nlohmann::json &values);
} // namespace solemech::tools::report
