// SPDX-License-Identifier: Apache-2.0
// What a person asks of `solemech trial`, as typed.
#pragma once

#include "tools/output/answer_wish.h"

#include <filesystem>
#include <string>
#include <vector>

namespace solemech::tools
{
struct TrialRequest : AnswerWish
{
  std::string              name;     ///< of the case, or a file
  std::filesystem::path    sheet;    ///< bench sheet that `name` is the settled stack of; empty: none
  std::string              label;    ///< of that sheet
  std::string              text;     ///< stands for a stack that is not settled yet; empty: that of the file
  std::vector<std::string> swaps;    ///< "insert = eva-insert 3 mm"
  std::vector<std::string> settings; ///< "entry=value", of both sides
  std::string              range;    ///< "gauge_pressure=80..200 kPa", or empty
  std::string              player;   ///< "95 kg", or empty
};
} // namespace solemech::tools
