// SPDX-License-Identifier: Apache-2.0
// A comparison for programs: the values of the view as JSON, shares as a table.
#pragma once

#include "tools/answers/compare/sentences.h"

#include <nlohmann/json_fwd.hpp>

#include <map>
#include <string>
#include <vector>

namespace solemech::tools
{
constexpr int comparison_schema = 1;

/// One pair of cases, as a part of a larger answer.
nlohmann::ordered_json comparison_document(const ComparedPair &pair);

/// Display units, each named; `schema` rises when an entry changes its name or meaning.
std::string comparison_json(const std::vector<ComparedPair>          &pairs,
                            const std::map<std::string, std::string> &versions);

/// One row a pair, reading and change: from, to, reading, unit, change, share, band, verdict.
std::string shares_csv(const std::vector<ComparedPair> &pairs);
} // namespace solemech::tools
