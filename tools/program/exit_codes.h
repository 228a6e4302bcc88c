// SPDX-License-Identifier: Apache-2.0
// How the program ends. `solemech --help` prints the same list; scripts may rely on it.
#pragma once

namespace solemech::tools
{
enum class Exit {
  ok = 0,           ///< answered
  internal = 1,     ///< a fault of the program itself
  usage = 2,        ///< the command line or a case file needs a change
  run_failed = 3,   ///< a calculation stopped early
  results = 4,      ///< a file or folder could not be read or written
  interrupted = 130 ///< stopped from the keyboard (128 + SIGINT, as shells report it)
};
} // namespace solemech::tools
