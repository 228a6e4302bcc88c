// SPDX-License-Identifier: Apache-2.0
// The checksum of a script or style as a content security policy wants it (CSP level 3, hash-source).
#pragma once

#include <string>

namespace solemech::tools::report
{
/// "sha256-..." of the text between the tags, in base64.
std::string hash_source(const std::string &text);
} // namespace solemech::tools::report
