// SPDX-License-Identifier: Apache-2.0
// Frames keep their numbers within half a quantum, and the text forms are those of the standards.
#include "tests/support/catch.h"
#include "tools/output/report/frame_coding.h"
#include "tools/output/report/plain_text.h"

#include <cmath>

using namespace solemech::tools::report;

TEST_CASE("base64 is that of RFC 4648")
{
  // Test vectors of RFC 4648, section 10.
  CHECK(base64("").empty());
  CHECK(base64("f") == "Zg==");
  CHECK(base64("fo") == "Zm8=");
  CHECK(base64("foo") == "Zm9v");
  CHECK(base64("foob") == "Zm9vYg==");
  CHECK(base64("fooba") == "Zm9vYmE=");
  CHECK(base64("foobar") == "Zm9vYmFy");
}

TEST_CASE("frames come back within half a quantum")
{
  constexpr std::size_t length = 37, n_frames = 12;
  constexpr double      quantum = 0.0025, offset = -3;
  std::vector<double>   values;
  for (std::size_t i = 0; i < length * n_frames; ++i)
    values.push_back(20 * std::sin(0.37 * static_cast<double>(i)) + 1e-3 * static_cast<double>(i));
  const auto back = decoded(coded(values, length, offset, quantum), length, offset, quantum);
  REQUIRE(back.size() == values.size());
  for (std::size_t i = 0; i < values.size(); ++i)
  {
    INFO(i);
    CHECK(std::abs(back[i] - values[i]) <= 0.5 * quantum * (1 + 1e-9));
  }
}

TEST_CASE("numbers beyond the range are held at its limit, and steps from end to end survive")
{
  const std::vector<double> values{1e9, -1e9, 1e9, 0};
  const auto                back = decoded(coded(values, 1, 0, 1), 1, 0, 1);
  CHECK(back == std::vector<double>{greatest_step, -greatest_step, greatest_step, 0});
}

TEST_CASE("no frames and frames of nothing")
{
  CHECK(decoded(coded({}, 5, 0, 1), 5, 0, 1).empty());
  CHECK(decoded(coded({}, 0, 0, 1), 0, 0, 1).empty());
  CHECK_THROWS_AS(coded({1, 2, 3}, 2, 0, 1), std::logic_error);
  CHECK_THROWS_AS(coded({1, 2}, 2, 0, 0), std::logic_error);
  CHECK_THROWS(decoded("AAAA", 1, 0, 1));
}

TEST_CASE("rounding keeps the digits asked for")
{
  CHECK(rounded(0.0012345678, 3) == 0.00123);
  CHECK(rounded(-98765.4321, 2) == -99000);
  CHECK(rounded(0, 5) == 0);
  const auto column = rounded({0.1234567891, 1149.2583024, -3e-9}, 1, 6);
  CHECK(column == std::vector<double>{0.12, 1149.26, 0});
  CHECK(rounded(std::vector<double>{0, 0}, 1e3) == std::vector<double>{0, 0});
}

TEST_CASE("energies and shares in words")
{
  CHECK(energy_text(4.7072) == "4.71 J");
  CHECK(energy_text(0.0824) == "82 mJ");
  CHECK(share_words(0.654) == "65 %");
  CHECK(share_words(0.004) == "less than 1 %");
  CHECK(share_words(0) == "nothing");
}
