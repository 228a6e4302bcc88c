// SPDX-License-Identifier: Apache-2.0
// Numbers with units, and lists, as people read them: digits that mean something, the unit of the bench.
#pragma once

#include <string>
#include <vector>

namespace solemech::tools
{
enum class Lengths { millimetre, centimetre, inch };

/// Reads "mm", "cm" or "in".
/// @throws std::invalid_argument naming the three
Lengths lengths_from(const std::string &text);

/// "mm", "cm", "in".
const char *length_unit(Lengths lengths);
/// From metres to that unit.
double length_factor(Lengths lengths);

/// Fixed decimals; what rounds to nought has no sign.
std::string fixed_text(double value, int digits);
/// Three digits that carry information, never an exponent.
std::string digits_text(double value);
/// A large number to two digits, in words: "1.9 million", "190 thousand", "450".
std::string rounded_count(double number);

std::string length_text(double metres, Lengths lengths, bool with_unit = true);
/// "7 mm", "28.9 mm": two digits behind the point at most, none that say nothing.
std::string short_length(double metres);
/// "+3.0 mm", of a difference.
std::string signed_length_text(double metres, Lengths lengths);
/// A time in the unit of its own size: "4.7 ms", "1.5 s", "30 min", "22 h", "7 days".
std::string time_text(double seconds);
std::string force_text(double newtons);
/// Energy as people say it: "4.71 J", "0.30 J", "82 mJ".
std::string energy_text(double joules);
std::string percent_text(double share, bool decimals);
/// A share in words that also serve for small ones: "65 %", "less than 1 %", "nothing".
std::string share_words(double share);

/// The texts joined as people write a list: "a, b and c".
std::string listed(const std::vector<std::string> &texts);
/// The first letter as a capital; for sentences that start with the name of a layer.
std::string capital(std::string text);
} // namespace solemech::tools
