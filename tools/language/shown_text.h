// SPDX-License-Identifier: Apache-2.0
// Text of unknown origin on a terminal. Control characters (ISO 6429: C0, DEL, C1) and the marks that turn
// the direction of writing (Unicode, UAX 9) can hide or rewrite what a person reads; they never reach it.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace solemech::materials
{
/// Length of the valid UTF-8 start of the text (RFC 3629: no overlong forms, no surrogates, up to U+10FFFF).
std::size_t valid_utf8(std::string_view text);

/// Length of the UTF-8 sequence at `at`; 0: none.
std::size_t utf8_length(std::string_view text, std::size_t at);

/// Number of characters before the byte `end`, each byte that is no UTF-8 counted as one.
std::size_t characters(std::string_view text, std::size_t end = std::string_view::npos);

/// Where the first character stands that steers a terminal; npos: there is none.
/// @param keep_lines  line breaks and tabs are let through
std::size_t first_steering(std::string_view text, bool keep_lines = false);

/// The text with '?' for every character that steers a terminal, and for bytes that are no UTF-8.
std::string shown_text(std::string_view text, bool keep_lines = false);
} // namespace solemech::materials
