// SPDX-License-Identifier: Apache-2.0
// Plain-text layout: padding by characters instead of bytes, wrapping, bars.
#pragma once

#include "tools/language/number_text.h"

#include <string>

namespace solemech::tools
{
/// Number of characters of a UTF-8 text (one column each is assumed).
std::size_t columns(const std::string &text);

std::string pad_left(const std::string &text, std::size_t width);
std::string pad_right(const std::string &text, std::size_t width);

/// Breaks at blanks so that no line is longer than `width`; every line after the first starts with `indent`.
/// A single word longer than a line stays whole.
std::string wrapped(const std::string &text, std::size_t width, const std::string &indent);

/// `length` characters, of which the rounded share is `fill` and the rest dots. Any share above half a
/// per cent shows at least one `fill`.
std::string bar(double share, std::size_t length, char fill);
} // namespace solemech::tools
