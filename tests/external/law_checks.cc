// SPDX-License-Identifier: Apache-2.0
// Outside checks of the material laws that need no mesh. Expected values are worked by hand from the formulas
// of the sources named in each row (Verdejo & Mills, J. Biomech. 37:1379, 2004, for the EVA pair); they are
// typed in as numbers, not computed here.
#include "materials/chamber_gas.h"
#include "materials/foam.h"
#include "materials/ogden_hill.h"
#include "tests/external/check.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

using namespace solemech::materials;
using solemech::tests::external_check;

namespace
{
constexpr double law_tolerance = 1e-3; ///< single point: only the digits of the printed table
constexpr double gas_tolerance = 2e-3; ///< chamber: the printed table, and a step of finite length

/// Compressive nominal stress [Pa] of one network term, axial strain eps; sides free or held.
double compressive_stress(const OgdenHill &law, double eps, bool sides_free)
{
  LogStrains<double> strains{std::log1p(-eps), 0, 0};
  for (int i = 0; i < 50 && sides_free; ++i)
  {
    const auto   r = law.response(strains);
    const double change = -(r.stress[1] + r.stress[2]) / (r.moduli[1] + r.moduli[2] + 2 * r.moduli[5]);
    strains[1] += change;
    strains[2] += change;
  }
  return -law.response(strains).stress[0] / (1 - eps);
}
} // namespace

TEST_CASE("the pair of an EVA midsole gives the stresses of the Ogden-Hill formula", "[external]")
{
  const std::string source = "Ogden-Hill foam, closed form; 1050 kPa, exponent 4 (EVA; Verdejo & Mills 2004)";
  struct Row
  {
    double strain, free_0, free_02, held_02;
  };
  for (const auto &[strain, free_0, free_02, held_02] :
       {Row{0.10, 200.608, 251.908, 288.591}, Row{0.25, 478.516, 659.664, 805.782},
        Row{0.40, 761.600, 1203.301, 1615.645}, Row{0.50, 984.375, 1762.531, 2580.209}})
  {
    const OgdenHill flat{1.05e6, 4, 0}, spreading{1.05e6, 4, 0.2 / (1 - 0.4)};
    const auto      row = [&](const std::string &what, double expected, double obtained) {
      external_check({source, fmt::format("{}, strain {:.2f}", what, strain), expected, obtained / 1e3,
                      law_tolerance, "kPa"});
    };
    row("sides free, Poisson ratio 0", free_0, compressive_stress(flat, strain, true));
    row("sides free, Poisson ratio 0.2", free_02, compressive_stress(spreading, strain, true));
    row("sides held, Poisson ratio 0.2", held_02, compressive_stress(spreading, strain, false));
  }
}

TEST_CASE("the chamber gas is the textbook gas column at both ends of heat exchange", "[external]")
{
  const std::string source = "gas column 15 cm2 x 10 mm, 150 kPa gauge, pressed 4 mm (gas laws)";
  const double      area = 15e-4, height = 10e-3, press = 4e-3, slow = 10, fast = 1e-6;
  const ChamberGas  adiabatic{.heat_time = std::numeric_limits<double>::infinity()};
  const ChamberGas  isothermal{.heat_time = 0};
  const GasState    rest = adiabatic.seal(area * height, 150e3);

  CHECK((rest.pressure() - 101325) * area == Approx(225.0).epsilon(law_tolerance)); // held by the threads
  const auto cold = isothermal.advance(rest, area * (height - press), slow);
  const auto warm = adiabatic.advance(rest, area * (height - press), fast);
  external_check(
    {source, "force, isothermal", 476.325, (cold.state.pressure() - 101325) * area, gas_tolerance, "N"});
  external_check(
    {source, "force, adiabatic", 618.765, (warm.state.pressure() - 101325) * area, gas_tolerance, "N"});
  external_check({source, "work, isothermal", 1.31780, cold.work, gas_tolerance, "J"});
  external_check({source, "work, adiabatic", 1.52866, warm.work, gas_tolerance, "J"});
  external_check({source, "absolute temperature ratio, adiabatic", 1.2267,
                  warm.state.temperature / rest.temperature, gas_tolerance});

  GasState cooled = warm.state;
  cooled.temperature = adiabatic.wall_temperature;
  const auto back = adiabatic.advance(cooled, area * height, fast);
  external_check(
    {source, "return when all heat is lost at the bottom", 0.7417, -back.work / warm.work, gas_tolerance});
}

TEST_CASE("a relaxing branch has the loss tangent of the standard linear solid", "[external]")
{
  // Spring and branch of equal modulus, tau = 10 ms, 100 rad/s: 1/3. Small shear, three periods to settle.
  const double         mu = 1e6, omega = 100, amplitude = 1e-4, period = 2 * std::numbers::pi / omega;
  const RelaxingBranch branch(mu, 2 * mu, 10e-3);
  const int            per_period = 2000;
  const double         dt = period / per_period, half = branch.decay(dt / 2);
  double               elastic = 0, in_phase = 0, out_of_phase = 0;
  for (int i = 1; i <= 5 * per_period; ++i)
  {
    const double now = amplitude * std::sin(omega * i * dt),
                 before = amplitude * std::sin(omega * (i - 1) * dt);
    const double trial = half * elastic + now - before;
    const auto   push = branch.push(LogStrains<double>{trial, -trial, 0}, half);
    elastic = push.strain_factor * trial;
    const double stress = 2 * mu * now + 2 * mu * elastic;
    if (i > 4 * per_period)
    {
      in_phase += stress * std::sin(omega * i * dt);
      out_of_phase += stress * std::cos(omega * i * dt);
    }
  }
  external_check({"standard linear solid, equal springs (textbook)", "loss tangent at 100 rad/s, 10 ms",
                  0.33333, out_of_phase / in_phase, law_tolerance});
}

TEST_CASE("a slipping branch loses the area of its element's loop", "[external]")
{
  // 4 g mu c (r_max - c) per full cycle; shear r = gamma. 0.3 x 1 MPa, c = 0.05, r_max = 0.12: 4.2 kJ/m3.
  const double         modulus = 0.3e6, cap = 0.05, r_max = 0.12;
  const SlippingBranch branch(modulus, 2 * modulus, cap, std::numeric_limits<double>::infinity());
  const int            quarter = 250;
  double               elastic = 0, strain = 0, lost = 0;
  const auto           go = [&](double target, double &loss) {
    const double step = (target - strain) / quarter;
    for (int i = 0; i < quarter; ++i)
    {
      const double trial = elastic + step;
      const auto   push = branch.push(LogStrains<double>{trial, -trial, 0}, 1.0);
      loss += push.lost_in_slip;
      elastic = push.strain_factor * trial;
    }
    strain = target;
  };
  double first = 0;
  go(r_max / 2, first);
  for (const double target : {-r_max / 2, r_max / 2})
    go(target, lost);
  external_check({"element of spring and slider, loop area (textbook)",
                  "loss per cycle, cap 0.05, reach 0.12", 4.2, lost / 1e3, 1e-9, "kJ/m3"});
}

TEST_CASE("three terms of the network law are Ogden's rubber", "[external]")
{
  // Coefficients of R.W. Ogden, Proc. R. Soc. A 326 (1972), from memory: mu_i 0.618, 0.001177, -0.00981 MPa
  // at exponents 1.3, 5, -2; a term of the network law has mu_i alpha_i/2. Measured points of L.R.G. Treloar
  // 1944 as digitised in open tables.
  const OgdenHill terms[] = {{0.618e6 * 1.3 / 2, 1.3, 0}, {0.001177e6 * 5 / 2, 5, 0}, {0.00981e6, -2, 0}};
  struct Row
  {
    const char *pull;
    double      stretch, second, stress, measured;
  };
  for (const auto &[pull, stretch, second, stress, measured] :
       {Row{"pulled", 2, -0.5, 0.59124, 0}, Row{"pulled", 0.8, -0.5, -0.32653, 0},
        Row{"sheared", 2, 0, 0.67256, 0}, Row{"pulled both ways", 2, 1, 0.80597, 0},
        Row{"pulled", 3.01, -0.5, 0.866, 0.85}, Row{"sheared", 2.98, 0, 0.929, 0.93},
        Row{"pulled both ways", 3.03, 1, 1.222, 1.24}})
  {
    const double e = std::log(stretch);
    double       obtained = 0;
    for (const auto &term : terms)
    {
      const auto r = term.response(LogStrains<double>{e, second * e, -(1 + second) * e});
      obtained += (r.stress[0] - r.stress[2]) / stretch / 1e6;
    }
    const auto what = fmt::format("{} to {:.2f}", pull, stretch);
    external_check({"Ogden 1972, three terms for vulcanised rubber (from memory)", what, stress, obtained,
                    law_tolerance, "MPa"});
    if (measured > 0)
      external_check({"Treloar 1944, vulcanised rubber, digitised points", what + ", three-term law",
                      measured, obtained, 0.05, "MPa"});
  }
}
