// SPDX-License-Identifier: Apache-2.0
// The one way in which a file of results comes to the disk: whole, or not there and told why. A full disk
// shows in a write or only when the file is closed; both are looked at. Never through a link (POSIX open,
// O_NOFOLLOW).
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace solemech::solver
{
/// @throws ResultsError naming the file, the system's reason and the cure; nothing of the file stays then
void write_file(const std::filesystem::path &path, std::string_view bytes);

/// "cannot write results/x: No space left on device. Make room there and try again", by the system's number.
std::string cannot_write(const std::filesystem::path &path, int reason);

/// A name that no other process or thread has: 16 hexadecimal digits by chance. Numbers of processes do not
/// do: two containers that share a folder may have the same.
std::string chance_name();
} // namespace solemech::solver
