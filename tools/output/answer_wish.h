// SPDX-License-Identifier: Apache-2.0
// How a person wants an answer: what most commands are asked in the same words.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace solemech::tools
{
struct AnswerWish
{
  std::optional<std::filesystem::path> output;         ///< folder asked for with -o
  std::string                          lengths = "mm"; ///< unit of printed lengths
  bool                                 json = false;
  bool                                 quiet = false;
  bool                                 details = false;
};
} // namespace solemech::tools
