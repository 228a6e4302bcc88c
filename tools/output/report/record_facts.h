// SPDX-License-Identifier: Apache-2.0
// What a page was made from, and what no calculation of this program represents.
#pragma once

#include "tools/language/blocks.h"

#include <map>
#include <string>
#include <vector>

namespace solemech::tools::report
{
using blocks::block;
using blocks::field;
using blocks::kept;

struct RecordFacts
{
  std::string                        program;
  std::map<std::string, std::string> versions;
  std::string                        hash, case_text, resolved_text;
};

struct Version
{
  std::string name, version;
};
// Tables: a row is read as one line.
// clang-format off
constexpr auto block_of(const Version *)
{
  using S = Version;
  return block<S>("Version", "A program or library that took part.", field(&S::name, "name"), field(&S::version, "version"));
}

std::vector<Version> versions_of(const RecordFacts &record);

/// What no calculation of this program represents; stands at the foot of every page.
const std::vector<std::string> &model_limits(const RecordFacts &);

constexpr auto block_of(const RecordFacts *)
{
  using S = RecordFacts;
  return block<S>("RecordFacts", "What the page was made from.",
    field(&S::program, "program"), kept(&S::versions), field(&versions_of, "versions"),
    field(&S::hash, "hash"), field(&S::case_text, "caseText"), field(&S::resolved_text, "resolvedText"),
    field(&model_limits, "limits", "what the model does not represent"));
}
// clang-format on
} // namespace solemech::tools::report
