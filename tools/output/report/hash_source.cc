// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/hash_source.h"

#include "tools/language/checksum.h"
#include "tools/output/report/frame_coding.h"

namespace solemech::tools::report
{
std::string hash_source(const std::string &text)
{
  const std::string digits = sha256_of_text(text);
  std::string       bytes;
  for (std::size_t i = 0; i + 1 < digits.size(); i += 2)
    bytes += static_cast<char>(std::stoi(digits.substr(i, 2), nullptr, 16));
  return "sha256-" + base64(bytes);
}
} // namespace solemech::tools::report
