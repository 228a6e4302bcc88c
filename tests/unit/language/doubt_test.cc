// SPDX-License-Identifier: Apache-2.0
// Doubts of a case: read, written and read again; independent directions against the covariance they stand
// for.
#include "tests/support/catch.h"
#include "tests/unit/language/sample_sheets.h"
#include "tools/language/case_file.h"
#include "tools/language/case_text.h"
#include "tools/language/doubt_reader.h"
#include "tools/language/doubted_case.h"
#include "tools/language/problem.h"
#include "tools/language/stack_text.h"

using namespace solemech;
using namespace solemech::tools;
using Catch::Matchers::Contains;
using solver::DoubtedNumber;

namespace
{
const std::string stack_and_rig = R"(format = 1
[drop]
mass = "1.2 kg"
height = "400 mm"
diameter = "40 mm"
[plug]
radius = "37 mm"
[[layer]]
name = "core"
material = "core-foam"
thickness = "18 mm"
[[material]]
name = "core-foam"
from = "eva-soft"
)";

ReadOptions options()
{
  return tests::small_library();
}

CaseFile read(const std::string &more)
{
  return read_case_text(stack_and_rig + more, "case.toml", options());
}

std::string problems_of(const std::string &more)
{
  try
  {
    read(more);
  }
  catch (const materials::CaseError &error)
  {
    return error.what();
  }
  return "";
}
} // namespace

TEST_CASE("doubts are read with their correlations, written, and read again alike")
{
  // Numbers of the rig last, as settled sheets write them: another rig cuts them off.
  const std::vector<solver::Doubt> doubts{{DoubtedNumber::modulus, "core-foam", 0.08, {}},
                                          {DoubtedNumber::loss, "core-foam", 0.05, {-0.5}},
                                          {DoubtedNumber::thickness, "core", 0.02, {0.1, -0.25}},
                                          {DoubtedNumber::height, "", 0.01, {0.25, 0.125, 0}}};
  const auto                       back = read(doubts_text(doubts)).cases.front().doubts;
  REQUIRE(back.size() == doubts.size());
  for (std::size_t i = 0; i < back.size(); ++i)
  {
    CHECK(back[i].number == doubts[i].number);
    CHECK(back[i].of == doubts[i].of);
    CHECK(back[i].spread == Approx(doubts[i].spread).epsilon(1e-5));
    CHECK(back[i].together == doubts[i].together);
  }
  CHECK(canonical_text(read(doubts_text(doubts)).cases.front()) != canonical_text(read("").cases.front()));
}

TEST_CASE(
  "independent directions have the covariance of the doubts: sum over directions of products (Cholesky)")
{
  const std::vector<solver::Doubt> doubts{{DoubtedNumber::modulus, "a", 0.10, {}},
                                          {DoubtedNumber::loss, "a", 0.20, {-0.6}},
                                          {DoubtedNumber::density, "a", 0.05, {0.3, 0.4}}};
  const double                     correlation[3][3] = {{1, -0.6, 0.3}, {-0.6, 1, 0.4}, {0.3, 0.4, 1}};
  const auto                       directions = independent_doubts(doubts);
  REQUIRE(directions.size() == 3);
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = 0; j < 3; ++j)
    {
      double sum = 0;
      for (const auto &direction : directions)
        sum += direction[i] * direction[j];
      CHECK(sum == Approx(correlation[i][j] * doubts[i].spread * doubts[j].spread * doubts_in_half_band *
                          doubts_in_half_band));
    }
}

TEST_CASE("a moved case has its numbers times the exponent, and no doubts of its own")
{
  const auto  file = read("[[settled]]\nnumber = \"thickness\"\nof = \"core\"\ndoubt = \"10 %\"\n");
  const auto &setup = file.cases.front();
  const auto  directions = independent_doubts(setup.doubts);
  CHECK(moved(setup, directions[0], 1).layers[0].thickness == Approx(0.018 * 1.1));
  CHECK(moved(setup, directions[0], -1).layers[0].thickness == Approx(0.018 / 1.1));
  CHECK(moved(setup, directions[0], 1).doubts.empty());
}

TEST_CASE("slips in settled numbers are told with their place")
{
  CHECK_THAT(problems_of("[[settled]]\nnumber = \"stifness\"\nof = \"core\"\ndoubt = \"10 %\"\n"),
             Contains("stiffness"));
  CHECK_THAT(problems_of("[[settled]]\nnumber = \"loss\"\nof = \"core-foam\"\ndoubt = \"0 %\"\n"),
             Contains("doubt"));
  CHECK_THAT(
    problems_of("[[settled]]\nnumber = \"loss\"\nof = \"core-foam\"\ndoubt = \"5 %\"\ntogether = [0.5]\n"),
    Contains("1 number for 0"));
  const std::string two =
    "[[settled]]\nnumber = \"loss\"\nof = \"core-foam\"\ndoubt = \"5 %\"\n[[settled]]\nnumber = "
    "\"stiffness\"\nof = \"core-foam\"\ndoubt = \"5 %\"\ntogether = [1.5]\n";
  CHECK_THAT(problems_of(two), Contains("not between -1 and 1"));
}

TEST_CASE("a stack file written from a case is the same stack under another rig")
{
  const auto doubts = doubts_text({{DoubtedNumber::loss, "core-foam", 0.05, {}}});
  const auto text =
    stack_text(stack_and_rig + doubts + "[change]\ncore.thickness = \"17 mm\"\n", "case.toml", options());
  CHECK(text.find("drop") == std::string::npos);
  const auto rig = "\n[drop]\nmass = \"2 kg\"\nheight = \"100 mm\"\ndiameter = \"40 mm\"\n";
  const auto again = read_case_text(text + rig, "case.toml", options()).cases.front();
  CHECK(again.layers.front().thickness == Approx(0.017));
  CHECK(again.plug.radius == Approx(0.037));
  CHECK(again.doubts.size() == 1);
}

TEST_CASE("another rig takes the place of the whole bench, unless an entry of it is set too")
{
  const auto doubts =
    doubts_text({{DoubtedNumber::loss, "core-foam", 0.05, {}}, {DoubtedNumber::guide_loss, "", 0.1, {0.3}}});
  const auto text =
    stack_and_rig + doubts + "[change]\ndrop.guide_loss = \"4.1 %\"\ncore.thickness = \"17 mm\"\n";
  const auto read = [&](std::vector<std::string> overrides) {
    auto with = options();
    with.overrides = std::move(overrides);
    return read_case_text(text, "case.toml", with).cases.front();
  };
  const auto own = read({}), other = read({"rig=impact-8500"}),
             set = read({"rig=impact-8500", "drop.guide_loss=4.1 %"});
  CHECK(std::get<solver::DropRig>(own.rig).guide_loss == Approx(0.041));
  REQUIRE(own.doubts.size() == 2);
  CHECK(own.doubts[1].of.empty());
  CHECK(std::get<solver::DropRig>(other.rig).mass == Approx(8.5)); // as its name says
  CHECK(std::get<solver::DropRig>(other.rig).guide_loss != Approx(0.041));
  CHECK(other.layers.front().thickness == Approx(0.017));
  REQUIRE(other.doubts.size() == 1);
  CHECK(other.doubts[0].number == DoubtedNumber::loss);
  CHECK(std::get<solver::DropRig>(set.rig).guide_loss == Approx(0.041));
  // The stack alone knows nothing of the rod, and the bench alone nothing of the stack.
  CHECK(stack_text(text, "case.toml", options()).find("guide loss") == std::string::npos);
  const auto bench = bench_text(text, "case.toml", options());
  CHECK_THAT(bench, Contains("[drop]") && Contains("4.1 %"));
  CHECK(bench.find("layer") == std::string::npos);
}
