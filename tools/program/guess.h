// SPDX-License-Identifier: Apache-2.0
// A guess typed at the terminal.
#pragma once

#include <atomic>
#include <cstddef>
#include <optional>

namespace solemech::tools
{
/// Reads one of `n_choices` numbers from standard input, asking again after a slip. Nothing for an empty
/// line, the end of input, or an interruption.
std::optional<std::size_t> guess_from_terminal(std::size_t n_choices, const std::atomic<bool> &interrupted);
} // namespace solemech::tools
