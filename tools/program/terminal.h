// SPDX-License-Identifier: Apache-2.0
// What a stream is connected to, and whether it may carry emphasis. A pipe or a file gets plain text;
// the environment variable NO_COLOR (no-color.org) and TERM=dumb switch emphasis off on a terminal too.
#pragma once

#include <cstdio>
#include <string>
#include <string_view>

namespace solemech::tools
{
/// True when the stream ends at a terminal.
bool is_terminal(std::FILE *stream);

/// Columns of the terminal behind a stream; 100 when there is none.
int terminal_width(std::FILE *stream);

/// Columns that printed tables fit in: those of a terminal; 0 elsewhere, where lines stay whole for other
/// programs.
int page_width();

/// True when escape sequences are welcome on the stream.
bool wants_emphasis(std::FILE *stream);

/// The text in bold when standard output wants emphasis, else unchanged.
std::string heading(std::string_view text);
} // namespace solemech::tools
