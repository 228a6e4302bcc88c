// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/frame_coding.h"

#include <openssl/evp.h>
#include <zlib.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <stdexcept>

namespace solemech::tools::report
{
namespace
{
constexpr int level = 9; // the page is written once and read often

std::string deflated(const std::string &bytes)
{
  uLongf      size = compressBound(bytes.size());
  std::string packed(size, '\0');
  if (compress2(reinterpret_cast<Bytef *>(packed.data()), &size,
                reinterpret_cast<const Bytef *>(bytes.data()), bytes.size(), level) != Z_OK)
    throw std::runtime_error("the frames of the report cannot be compressed");
  packed.resize(size);
  return packed;
}

std::string inflated(const std::string &packed)
{
  z_stream    stream{};
  std::string bytes, block(1 << 16, '\0');
  if (inflateInit(&stream) != Z_OK)
    throw std::runtime_error("the frames of the report cannot be unpacked");
  std::string input = packed;
  stream.next_in = reinterpret_cast<Bytef *>(input.data());
  stream.avail_in = static_cast<uInt>(input.size());
  int state = Z_OK;
  while (state == Z_OK)
  {
    stream.next_out = reinterpret_cast<Bytef *>(block.data());
    stream.avail_out = static_cast<uInt>(block.size());
    state = inflate(&stream, Z_NO_FLUSH);
    bytes.append(block, 0, block.size() - stream.avail_out);
  }
  inflateEnd(&stream);
  if (state != Z_STREAM_END)
    throw std::runtime_error("the frames of the report are damaged");
  return bytes;
}

std::string from_base64(const std::string &text)
{
  std::string bytes(3 * (text.size() / 4), '\0');
  const int   size =
    EVP_DecodeBlock(reinterpret_cast<unsigned char *>(bytes.data()),
                    reinterpret_cast<const unsigned char *>(text.data()), static_cast<int>(text.size()));
  if (size < 0)
    throw std::runtime_error("the frames of the report are no base64");
  const auto padding = std::count(text.begin(), text.end(), '=');
  bytes.resize(static_cast<std::size_t>(size) - static_cast<std::size_t>(padding));
  return bytes;
}
} // namespace

std::string base64(const std::string &bytes)
{
  std::string text(4 * ((bytes.size() + 2) / 3) + 1, '\0');
  const int   size =
    EVP_EncodeBlock(reinterpret_cast<unsigned char *>(text.data()),
                    reinterpret_cast<const unsigned char *>(bytes.data()), static_cast<int>(bytes.size()));
  text.resize(static_cast<std::size_t>(size));
  return text;
}

std::string coded(const std::vector<double> &values, std::size_t length, double offset, double quantum)
{
  if (!(quantum > 0) || (length == 0 ? !values.empty() : values.size() % length != 0))
    throw std::logic_error("frames of unequal length or a quantum that is not positive");
  std::vector<int> before(length, 0);
  std::string      bytes;
  bytes.reserve(2 * values.size());
  for (std::size_t i = 0; i < values.size(); ++i)
  {
    const double steps = std::clamp((values[i] - offset) / quantum, -greatest_step, greatest_step);
    const int    now = static_cast<int>(std::lround(steps));
    const auto   difference = static_cast<std::uint16_t>(now - before[i % length]);
    before[i % length] = now;
    bytes += static_cast<char>(difference & 0xFF);
    bytes += static_cast<char>(difference >> 8);
  }
  return base64(deflated(bytes));
}

std::vector<double> decoded(const std::string &text, std::size_t length, double offset, double quantum)
{
  const std::string   bytes = inflated(from_base64(text));
  std::vector<int>    now(length, 0);
  std::vector<double> values;
  for (std::size_t i = 0; 2 * i + 1 < bytes.size(); ++i)
  {
    const auto low = static_cast<unsigned char>(bytes[2 * i]),
               high = static_cast<unsigned char>(bytes[2 * i + 1]);
    now[i % length] += static_cast<std::int16_t>(low | high << 8);
    values.push_back(offset + quantum * now[i % length]);
  }
  return values;
}
} // namespace solemech::tools::report
