// SPDX-License-Identifier: Apache-2.0
// A value from the command line as a TOML node. Shells take quotes away, so what is no number, true/false,
// list or quoted text counts as text. The node may stand at a place of the option, for messages.
#pragma once

#include <toml++/toml.h>

#include <optional>
#include <string>

namespace solemech::tools
{
/// A text from the command line and where it stands.
struct PlacedText
{
  std::string text;
  int         line = 1;   ///< from 1: of an option that may be given several times, which one
  int         column = 1; ///< from 1, in characters
};

/// A table that holds the value under value_key (addresses.h). Nothing when it cannot be read as a value.
/// @param file  name of the option for messages, e.g. "--swap"
/// @param as_text  take it as text whatever it looks like
std::optional<toml::table> option_value(const PlacedText &value, const std::string &file,
                                        bool as_text = false);
} // namespace solemech::tools
