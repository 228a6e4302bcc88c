// SPDX-License-Identifier: Apache-2.0
// The foams of the library still read what their files say: the press pulse again at another accuracy, the
// ball again; and the stored pulse return is what the pulse was to return.
#include "tests/support/catch.h"
#include "tools/calibrate/loss_fit.h"
#include "tools/calibrate/pulse_targets.h"
#include "tools/calibrate/virtual_bench.h"
#include "tools/language/library.h"

#include <cmath>
#include <variant>
#include <vector>

using namespace solemech;
using namespace solemech::tools;

namespace
{
constexpr double coarser = 0.01;      // accuracy of this test; the library was read at half of it
constexpr double printed = 0.5e-3;    // readings are printed to a tenth of a point
constexpr double fitted_to = 1e-3;    // what the fit is asked for: a tenth of a point
constexpr double ball_repeats = 5e-3; // half a point: what a ball test is good for at this accuracy

std::vector<materials::Material> foams()
{
  const auto                       library = materials::Library::load(SOLEMECH_SOURCE "/materials/library");
  std::vector<materials::Material> out;
  for (const auto &material : library.materials())
    if (std::holds_alternative<materials::FoamData>(material.data))
      out.push_back(material);
  return out;
}
} // namespace

TEST_CASE("every library foam returns the press pulse as its file says", "[calibration]")
{
  for (const auto &foam : foams())
  {
    INFO(foam.name);
    const auto again = pulse_return(foam, coarser);
    CHECK(std::abs(again.value - foam.readings.pulse_return) <= again.error + printed);
  }
}

TEST_CASE("every library foam throws the ball back as its file says", "[calibration]")
{
  for (const auto &foam : foams())
  {
    INFO(foam.name);
    CHECK(std::abs(ball_rebound(foam, coarser).value - foam.readings.ball_rebound) <= ball_repeats + printed);
  }
}

TEST_CASE("stored pulse returns are the class figures they were fitted to", "[calibration]")
{
  // Hoogkamer et al. 2018, Sports Med 48:1009-1019: three midsoles under one force; EVA's figure from memory.
  std::size_t n_fitted = 0;
  for (const auto &foam : foams())
    if (const auto target = pulse_target(foam.name))
    {
      INFO(foam.name);
      CHECK(std::abs(foam.readings.pulse_return - target->loop_return) <= fitted_to + printed);
      ++n_fitted;
    }
  CHECK(n_fitted == pulse_targets.size());
}

TEST_CASE("the fit reaches its target from a wrong guess and says which branches it scaled", "[calibration]")
{
  constexpr double rough = 0.02; // accuracy: what is tested is the search
  auto             foam = *materials::Library::load(SOLEMECH_SOURCE "/materials/library").find("tpu-bead");
  auto            &data = std::get<materials::FoamData>(foam.data);
  for (auto &branch : data.slipping)
    branch.share *= 3;

  SECTION("slipping branches carry the rest of the loss")
  {
    const auto fit = fit_loss(foam, 0.70, rough);
    CHECK(std::abs(pulse_return(fit.material, rough).value - 0.70) <= fitted_to);
    CHECK(fit.slipping_factor > 0);
    CHECK(fit.relaxing_factor == 1);
  }
  SECTION("relaxing branches that alone lose too much are scaled, and nothing slips")
  {
    const auto fit = fit_loss(foam, 0.95, rough);
    CHECK(std::abs(pulse_return(fit.material, rough).value - 0.95) <= fitted_to);
    CHECK(fit.slipping_factor == 0);
    CHECK(fit.relaxing_factor < 1);
  }
}
