// SPDX-License-Identifier: Apache-2.0
// A library file keeps its comments when the calibration writes numbers into it, and refuses what it does not
// expect.
#include "tests/support/catch.h"
#include "tools/calibrate/library_file.h"

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>

using solemech::tools::LibraryFile;

namespace
{
const std::string sheet = R"(# A demo foam.
[[material]]
name = "demo"
shear_modulus = "0.42 MPa"  # soft
relaxing = [
  { share = "5 %", time = "2 ms" },
]
# Caps in equal ratios.
slipping = [
  { share = "10.00 %", cap = 0.01 },  # small
  { share = "1 %", cap = 0.1 },
]

ball_rebound = "0.0 %"  # ISO 8307
asker_c = 0.0  # gauge
)";

/// A file of its own that goes with the test.
struct Scratch
{
  std::filesystem::path path =
    std::filesystem::temp_directory_path() / ("library-file-test-" + std::to_string(getpid()) + ".toml");
  explicit Scratch(const std::string &text) { std::ofstream(path) << text; }
  ~Scratch() { std::filesystem::remove(path); }
  std::string text() const
  {
    std::ifstream in(path);
    return {std::istreambuf_iterator<char>(in), {}};
  }
};
} // namespace

TEST_CASE("only the numbers change in a library file")
{
  const Scratch scratch(sheet);
  LibraryFile   file(scratch.path, "demo");
  file.set_shares("slipping", {0.12345, 0.5});
  file.set_reading("ball_rebound", 0.6449);
  file.set_points("asker_c", 46.72);
  file.set_shear_modulus(0.3986e6);
  file.write();

  std::string expected = sheet;
  expected.replace(expected.find("10.00 %"), 7, "12.35 %");
  expected.replace(expected.find("1 %\", cap"), 3, "50.00 %");
  expected.replace(expected.find("0.0 %"), 5, "64.5 %");
  expected.replace(expected.find("asker_c = 0.0"), 13, "asker_c = 46.7");
  expected.replace(expected.find("0.42 MPa"), 8, "0.399 MPa");
  CHECK(scratch.text() == expected);
  CHECK_FALSE(std::filesystem::exists(scratch.path.string() + ".new"));
}

TEST_CASE("a library file that does not fit is left alone")
{
  const Scratch scratch(sheet);
  LibraryFile   file(scratch.path, "demo");
  CHECK_THROWS_WITH(file.set_reading("pulse_return", 0.6), Catch::Contains("has no line pulse_return"));
  CHECK_THROWS_WITH(file.set_shares("slipping", {0.1}), Catch::Contains("more slipping branches than the 1"));
  CHECK_THROWS_WITH(file.set_shares("slipping", {0.1, 0.1, 0.1}),
                    Catch::Contains("lists 2 slipping branches"));
  CHECK_THROWS_WITH(LibraryFile(scratch.path, "other"), Catch::Contains("must hold one material, 'other'"));
  CHECK(scratch.text() == sheet);
}
