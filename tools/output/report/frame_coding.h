// SPDX-License-Identifier: Apache-2.0
// Numbers of an animation as a short text: whole multiples of a quantum, differences to the frame before,
// little-endian 16 bit, deflated (zlib, RFC 1950), base64 (RFC 4648). A browser decodes it with what it has.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace solemech::tools::report
{
/// Greatest whole number in a frame: the difference of any two still fits into 16 bits.
inline constexpr double greatest_step = 16000;

/// Frames of equal length, one after the other.
/// @param values   n frames x `length` numbers
/// @param quantum  > 0; numbers beyond offset +- quantum * greatest_step are held at that limit
/// @throws std::logic_error when the length does not divide the values or the quantum is not positive
std::string coded(const std::vector<double> &values, std::size_t length, double offset, double quantum);

/// Back again, to within half a quantum; for tests and readers of the page.
/// @throws std::runtime_error when the text is damaged
std::vector<double> decoded(const std::string &text, std::size_t length, double offset, double quantum);

std::string base64(const std::string &bytes);
} // namespace solemech::tools::report
