// SPDX-License-Identifier: Apache-2.0
// Court friction against the named powers and shifts, its slopes against differences, and the court
// files.
#include "tests/support/catch.h"
#include "tools/language/court_reader.h"
#include "tools/language/problem.h"

using namespace solemech::materials;
using Catch::Matchers::Contains;

namespace
{
std::string complaint(const std::string &text)
{
  try
  {
    read_court_text(text, "court.toml");
  }
  catch (const CaseError &error)
  {
    return error.what();
  }
  return "accepted";
}
} // namespace

TEST_CASE("friction falls with pressure as that of elastic asperities")
{
  // Schallamach 1952, Archard 1957 (from memory): doubling the pressure, 2^-m, m = 1/3, 1/9, 1/27 for 1 to 3
  // nested scales.
  for (const auto &[m, expected] :
       {std::pair{1. / 3, 0.794}, std::pair{1. / 9, 0.926}, std::pair{1. / 27, 0.975}})
  {
    const CourtFriction law({.mu_ref = 0.8, .pressure_exponent = m, .pressure_onset = 1});
    CHECK(law.at(0.6e6, 0.3, 296.15).mu / law.at(0.3e6, 0.3, 296.15).mu == Approx(expected).epsilon(1e-3));
  }
}

TEST_CASE("speed and temperature act as one")
{
  // Grosch 1963 (from memory): log10 of the shift of slip speed, by hand.
  for (const auto &[dt, expected] : {std::pair{-20., 2.174}, std::pair{10., -0.795}, std::pair{20., -1.458},
                                     std::pair{30., -2.021}, std::pair{50., -2.924}})
    CHECK(std::log10(friction_speed_shift(dt)) == Approx(expected).epsilon(1e-3));
  // Warmer is slower: the coefficient at a_T v and the reference temperature.
  const CourtFriction law(
    {.mu_ref = 0.8, .speed_exponent = 0.1, .speed_onset = 1e-9, .standard_temperature = 263.15});
  const double shift = friction_speed_shift(53) / friction_speed_shift(33);
  CHECK(law.at(0.3e6, 1, 316.15).mu == Approx(law.at(0.3e6, shift, 296.15).mu).epsilon(1e-9));
}

TEST_CASE("slopes of friction are those of differences, and traction rises with pressure")
{
  const CourtFriction law({.mu_ref = 0.8,
                           .state = 0.7,
                           .pressure_exponent = 0.6,
                           .speed_exponent = -0.2,
                           .per_kelvin = -0.004,
                           .standard_temperature = 250});
  for (const double p : {1e3, 1e5, 2e6})
    for (const double v : {-0.5, 1e-3, 1.0})
    {
      const double T = 310, step = 1e-6;
      const auto   here = law.at(p, v, T);
      const auto   slope = [&](auto &&f, double at, double h) { return (f(at + h) - f(at - h)) / (2 * h); };
      CHECK(here.by_pressure ==
            Approx(slope([&](double x) { return law.at(x, v, T).mu; }, p, p * step)).epsilon(1e-6));
      CHECK(here.by_speed ==
            Approx(slope([&](double x) { return law.at(p, x, T).mu; }, v, std::abs(v) * step)).epsilon(1e-6));
      CHECK(here.by_temperature ==
            Approx(slope([&](double x) { return law.at(p, v, x).mu; }, T, 1e-3)).epsilon(1e-6));
      const auto [traction, by_pressure] = law.traction(p, v, T);
      CHECK(traction == Approx(here.mu * p));
      CHECK(by_pressure > 0);
    }
  CHECK(law.traction(-1e5, 1, 300)[0] == 0);
  CHECK(std::isfinite(law.at(0, 0, 300).mu));
}

TEST_CASE("friction refuses what is no friction")
{
  CHECK_THROWS_AS(CourtFriction({.mu_ref = -0.1}), InvalidParameter);
  CHECK_THROWS_AS(CourtFriction({.mu_ref = 0.8, .pressure_exponent = 1}), InvalidParameter);
  CHECK_THROWS_AS(CourtFriction({.mu_ref = 0.8, .speed_exponent = std::nan("")}), InvalidParameter);
}

TEST_CASE("every court file reads, says what its friction rests on, and has a band")
{
  const auto courts = read_court_folder(SOLEMECH_SOURCE "/materials/courts");
  REQUIRE(courts.size() >= 4);
  for (const auto &court : courts)
  {
    CAPTURE(court.name);
    CHECK_FALSE(court.source.empty());
    CHECK(court.friction.lowest < court.friction.value);
    CHECK(court.friction.value < court.friction.highest);
    const auto [low, high] = court.friction_band("wet");
    CHECK(low < court.friction_when("wet").at(0.3e6, 0.3, 296.15).mu);
    CHECK(high > court.friction_when("wet").at(0.3e6, 0.3, 296.15).mu);
    // At its references the law gives the number of the file.
    CHECK(court.friction_when("clean")
            .at(court.law.reference_pressure, court.law.reference_speed, court.law.reference_temperature)
            .mu == Approx(court.friction.value).epsilon(1e-12));
    CHECK_NOTHROW(check(court.heat));
    CHECK_THROWS_WITH(court.friction_when("dustty"), Contains("Did you mean \"dusty\"?"));
  }
  CHECK_THROWS_WITH(find_court(courts, "lava"), Contains("there is no court \"lava\""));
}

TEST_CASE("slips of a court file are all told, with line and cure")
{
  const std::string good = R"sheet(format = 1
[[court]]
name = "hall"
source = "measured"
friction = 0.7
friction_lowest = 0.6
friction_highest = 0.8
conductivity = "0.2 W/(m K)"
density = "700 kg/m3"
specific_heat = "1700 J/(kg K)"
states = [ { name = "clean" } ]
)sheet";
  CHECK(complaint(good) == "accepted");
  const auto with = [&](const std::string &from, const std::string &to) {
    auto text = good;
    return complaint(text.replace(text.find(from), from.size(), to));
  };
  CHECK_THAT(with("friction = 0.7", "friction = 7"), Contains("court.toml:5:") && Contains("out of range"));
  CHECK_THAT(with("friction_lowest = 0.6", "friction_lowest = 0.75"),
             Contains("lies above the value itself"));
  CHECK_THAT(with("friction_lowest = 0.6\n", ""), Contains("friction_lowest") && Contains("is missing"));
  CHECK_THAT(with("0.2 W/(m K)", "0.2"), Contains("has no unit") && Contains("W/(m K)"));
  CHECK_THAT(with("density", "densty"), Contains("Did you mean \"density\"?"));
  CHECK_THAT(with("\"clean\"", "\"swept\""), Contains("include no \"clean\""));
  CHECK_THAT(with("source = \"measured\"\n", ""), Contains("source"));
}
