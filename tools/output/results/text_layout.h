// SPDX-License-Identifier: Apache-2.0
// Plain-text layout: padding by characters instead of bytes, wrapping, bars.
#pragma once

#include <string>
#include <vector>

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

/// Fixed decimals; what rounds to nought has no sign.
std::string fixed_text(double value, int digits);

/// A large number to two digits, in words: "1.9 million", "190 thousand", "450".
std::string rounded_count(double number);

/// The texts joined as people write a list: "a, b and c".
std::string listed(const std::vector<std::string> &texts);
} // namespace solemech::tools
