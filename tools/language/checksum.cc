// SPDX-License-Identifier: Apache-2.0
#include "tools/language/checksum.h"

#include "solver/results/result_check.h"

#include <fmt/format.h>
#include <openssl/evp.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <memory>
#include <vector>

namespace solemech::tools
{
namespace
{
class Sha256
{
public:
  Sha256() : context_(EVP_MD_CTX_new(), EVP_MD_CTX_free)
  {
    if (!context_ || EVP_DigestInit_ex(context_.get(), EVP_sha256(), nullptr) != 1)
      throw std::runtime_error("the checksum library does not start");
  }
  void        add(const char *data, std::size_t size) { EVP_DigestUpdate(context_.get(), data, size); }
  std::string hexadecimal()
  {
    unsigned char digest[EVP_MAX_MD_SIZE];
    unsigned int  size = 0;
    EVP_DigestFinal_ex(context_.get(), digest, &size);
    std::string text;
    for (unsigned int i = 0; i < size; ++i)
      text += fmt::format("{:02x}", digest[i]);
    return text;
  }

private:
  std::unique_ptr<EVP_MD_CTX, decltype(&EVP_MD_CTX_free)> context_;
};
} // namespace

std::string sha256_of_text(std::string_view text)
{
  Sha256 sum;
  sum.add(text.data(), text.size());
  return sum.hexadecimal();
}

std::string sha256_of_file(const std::filesystem::path &path)
{
  std::ifstream     stream(path, std::ios::binary);
  std::vector<char> block(1 << 16);
  Sha256            sum;
  while (stream)
  {
    stream.read(block.data(), static_cast<std::streamsize>(block.size()));
    sum.add(block.data(), static_cast<std::size_t>(stream.gcount()));
  }
  if (!stream.eof())
    throw solver::ResultsError(fmt::format("cannot read {}: {}", path.string(), std::strerror(errno)));
  return sum.hexadecimal();
}
} // namespace solemech::tools
