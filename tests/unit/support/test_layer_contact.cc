// SPDX-License-Identifier: Apache-2.0
// Punch and ball on a layer against a table worked with another program for the same integral equation; the
// punch values agree with the table printed by Hayes et al. 1972 (from memory) to 0.3 %.
#include "tests/support/catch.h"
#include "tests/support/layer_contact.h"

#include <array>

using namespace solemech::tests;

TEST_CASE("flat punch factors of a layer", "[references]")
{
  constexpr double last_digit = 1.01e-4 / 1.5;
  struct Row
  {
    double                ratio;
    std::array<double, 5> bonded;
    double                sliding;
  };
  const std::array<double, 5> poisson{0, 0.2, 0.3, 0.4, 0.5};
  for (const auto &row : {Row{0.2, {1.1780, 1.1918, 1.2066, 1.2323, 1.2806}, 1.1710},
                          Row{0.6, {1.6567, 1.7155, 1.7848, 1.9178, 2.2129}, 1.6346},
                          Row{0.9, {2.0793, 2.1774, 2.3033, 2.5638, 3.2258}, 2.0523},
                          Row{2.0, {3.7513, 3.9805, 4.3532, 5.2985, 9.1495}, 3.7276}})
  {
    for (std::size_t i = 0; i < poisson.size(); ++i)
      CHECK(flat_punch_factor(row.ratio, poisson[i], LayerBase::bonded) ==
            Approx(row.bonded[i]).epsilon(last_digit));
    CHECK(flat_punch_factor(row.ratio, 0.3, LayerBase::sliding) == Approx(row.sliding).epsilon(last_digit));
  }
  // 45 mm punch, 25 mm slab, 2 MPa, 1 mm.
  CHECK(2 * 22.5e-3 * 2e6 / 0.91 * 1e-3 * flat_punch_factor(0.9, 0.3, LayerBase::bonded) ==
        Approx(227.80).epsilon(last_digit));
}

TEST_CASE("a ball on a bonded layer", "[references]")
{
  struct Row
  {
    double nu, ratio, sink, force;
  };
  for (const auto &row : {Row{0.3, 0.1, 0.2355e-3, 1.8325}, Row{0.3, 0.5, 4.7428e-3, 240.77},
                          Row{0.5, 0.3, 1.7876e-3, 61.184}, Row{0.0, 0.3, 1.9266e-3, 45.440}})
  {
    const auto ball = ball_on_layer(2e6, row.nu, 25e-3, 25e-3, row.ratio * 25e-3, LayerBase::bonded);
    CHECK(ball.sink == Approx(row.sink).epsilon(3e-4));
    CHECK(ball.force == Approx(row.force).epsilon(5e-5));
  }
}
