// SPDX-License-Identifier: Apache-2.0
// The library still reads what its files say: hardness gauge, press pulse and ball again at another accuracy;
// and what a file says that its source states is what the virtual bench reads. A few materials each time,
// [few]; all of them nightly, [all].
#include "tests/support/catch.h"
#include "tools/calibrate/law_fit.h"
#include "tools/calibrate/virtual_bench.h"
#include "tools/language/library.h"
#include "tools/language/quantity.h"

#include <cmath>
#include <variant>
#include <vector>

using namespace solemech;
using namespace solemech::tools;
using materials::Material;

namespace
{
constexpr double other = 0.015; // accuracy of this test; the library was read at another
constexpr double share_printed = 0.5e-3, points_printed = 0.05;
constexpr double ball_repeats = 1e-2; // a point: what a ball test is good for at this accuracy
constexpr double gauge_repeats = 0.5; // half a point of a gauge, the same

materials::Library library()
{
  return materials::Library::load(SOLEMECH_SOURCE "/materials/library");
}

void check_readings(const Material &material)
{
  INFO(material.name);
  const auto  &stored = material.readings;
  const bool   is_foam = std::holds_alternative<materials::FoamData>(material.data);
  const double points = is_foam ? stored.asker_c : stored.shore_a;
  if (points >= 0)
    CHECK(std::abs(gauge_reading(material, gauge_for(material), other).value - points) <=
          gauge_repeats + points_printed);
  CHECK(std::abs(ball_rebound(material, other).value - stored.ball_rebound) <= ball_repeats + share_printed);
  if (!is_foam)
    return;
  const auto pulse = pulse_return(material, other);
  CHECK(std::abs(pulse.value - stored.pulse_return) <= pulse.error + share_printed);
}
} // namespace

TEST_CASE("three foams and a lossy rubber read what their files say", "[few]")
{
  const auto all = library();
  for (const char *name : {"eva-moulded-medium", "pu-cushion", "slow-foam-sock", "rubber-grip"})
  {
    REQUIRE(all.find(name) != nullptr);
    check_readings(*all.find(name));
  }
}

TEST_CASE("every foam and rubber of the library reads what its file says", "[all]")
{
  const auto all = library();
  for (const auto &material : all.materials())
    if (material.readings.ball_rebound >= 0)
      check_readings(material);
}

TEST_CASE("stored readings are the stated ones", "[few]")
{
  const auto all = library();
  for (const auto &material : all.materials())
  {
    INFO(material.name);
    const auto &read = material.readings;
    if (material.stated.pulse_return >= 0)
      CHECK(std::abs(read.pulse_return - material.stated.pulse_return) <= share_tolerance + share_printed);
    if (material.stated.ball_rebound >= 0)
      CHECK(std::abs(read.ball_rebound - material.stated.ball_rebound) <= share_tolerance + share_printed);
    if (std::holds_alternative<materials::FoamData>(material.data) && !material.hardness.empty())
      CHECK(std::abs(read.asker_c - materials::parse_hardness(material.hardness).value) <=
            gauge_tolerance + points_printed);
  }
}

TEST_CASE("a fit reaches what is stated from a wrong guess and says what it turned", "[few]")
{
  constexpr double rough = 0.02; // accuracy: what is tested is the search
  auto             foam = *library().find("tpu-bead");
  auto            &data = std::get<materials::FoamData>(foam.data);

  SECTION("slipping branches carry the loss of a pulse")
  {
    for (auto &branch : data.slipping)
      branch.share *= 3;
    foam.stated = {.ball_rebound = -1, .pulse_return = 0.70};
    const auto fit = fit_law(foam, rough);
    CHECK(std::abs(pulse_return(fit.material, rough).value - 0.70) <= share_tolerance);
    CHECK(fit.slipping_factor > 0);
    CHECK(fit.relaxing_factor == 1);
    CHECK(fit.stiffness_factor == 1);
    CHECK(fit_law(fit.material, rough).changed_nothing()); // a second run
  }
  SECTION("relaxing branches that alone lose too much are scaled, and nothing slips")
  {
    foam.stated = {.ball_rebound = -1, .pulse_return = 0.95};
    const auto fit = fit_law(foam, rough);
    CHECK(std::abs(pulse_return(fit.material, rough).value - 0.95) <= share_tolerance);
    CHECK(fit.slipping_factor == 0);
    CHECK(fit.relaxing_factor < 1);
  }
  SECTION("hardness, pulse and ball are met together")
  {
    foam.hardness = "48 AskerC";
    foam.stated = {.ball_rebound = 0.72, .pulse_return = 0.74};
    const auto fit = fit_law(foam, rough);
    CHECK(std::abs(gauge_reading(fit.material, materials::asker_c_gauge, rough).value - 48) <=
          gauge_tolerance);
    CHECK(std::abs(pulse_return(fit.material, rough).value - 0.74) <= share_tolerance);
    CHECK(std::abs(ball_rebound(fit.material, rough).value - 0.72) <= share_tolerance);
    CHECK(fit.stiffness_factor > 1);
  }
}
