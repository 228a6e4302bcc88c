// SPDX-License-Identifier: Apache-2.0
// Branches along coaxial paths, where the motion simply adds log strain. References: the Maxwell element of
// any viscoelasticity textbook (J.D. Ferry), the elastic-sliding element (G. Masing 1926: unloading is the
// first loading doubled), loop area of a slider in series with a spring.
#include "materials/relaxing_branch.h"
#include "materials/slipping_branch.h"
#include "tests/support/catch.h"

#include <numbers>
#include <vector>

using namespace solemech::materials;

namespace
{
constexpr double never = std::numeric_limits<double>::infinity();
constexpr double rounding = 1e-11;

/// A branch driven along one fixed direction of log strain, with its energy account.
struct Driven
{
  Branch             branch;
  LogStrains<double> direction; ///< log strain per unit of drive
  LogStrains<double> elastic{};
  double             drive = 0, work = 0, slipped = 0, decayed = 0, stress = 0;

  double stored() const { return branch.stored(elastic); }

  void go(double to, double dt)
  {
    const double e = branch.decay(dt / 2);
    decayed += Branch::lost(stored(), e);
    LogStrains<double> trial;
    for (std::size_t a = 0; a < 3; ++a)
      trial[a] = e * elastic[a] + (to - drive) * direction[a];
    const auto out = branch.push(trial, e);
    double     now = 0;
    for (std::size_t a = 0; a < 3; ++a)
    {
      elastic[a] = out.strain_factor * trial[a];
      now += out.response.stress[a] * direction[a];
    }
    work += 0.5 * (stress + now) * (to - drive);
    stress = now;
    slipped += out.lost_in_slip;
    decayed += out.lost_in_decay;
    drive = to;
    CHECK(out.stored == Approx(stored()).epsilon(1e-13).margin(1e-18));
  }
};

const LogStrains<double> in_shear{0.5, -0.5, 0}; // simple shear: r = gamma
} // namespace

TEST_CASE("A held strain relaxes exponentially, exactly", "[relaxing]")
{
  Driven d{RelaxingBranch(0.3e6, 0.4e6, 0.02), {1, 0.2, -0.3}};
  d.elastic = {0.1, 0.02, -0.03};
  const double start = d.stored();
  for (int i = 0; i < 7; ++i)
    d.go(0, 0.01);
  CHECK(d.elastic[0] == Approx(0.1 * std::exp(-3.5)).epsilon(rounding));
  CHECK(d.stored() == Approx(start * std::exp(-7.0)).epsilon(rounding));
  CHECK(d.decayed == Approx(start * -std::expm1(-7.0)).epsilon(rounding));
}

TEST_CASE("Limits of the Maxwell element", "[relaxing]")
{
  // Fast: the elastic spring. Slow: a dashpot, stress = modulus tau rate. Stiffness in shear is mu.
  Driven fast{RelaxingBranch(0.3e6, 0, 1e9), in_shear}, slow{RelaxingBranch(0.3e6, 0, 1e-4), in_shear};
  for (int i = 1; i <= 100; ++i)
  {
    fast.go(0.002 * i, 1e-3);
    slow.go(0.002 * i, 1e-5);
  }
  CHECK(fast.stress == Approx(0.3e6 * 0.2).epsilon(1e-9));
  CHECK(slow.stress == Approx(0.3e6 * 1e-4 * 200).epsilon(1e-3)); // step error (dt/tau)^2/24
}

TEST_CASE("A constant strain rate is followed to second order in time", "[relaxing]")
{
  // Closed form of the Maxwell element: stress = mu tau rate (1 - exp(-t/tau)).
  const double tau = 0.01, rate = 20, exact = 0.3e6 * tau * rate * -std::expm1(-2.0);
  double       error[3];
  for (int level = 0; level < 3; ++level)
  {
    const int n = 20 << level;
    Driven    d{RelaxingBranch(0.3e6, 0.4e6, tau), in_shear};
    for (int i = 1; i <= n; ++i)
      d.go(rate * 0.02 * i / n, 0.02 / n);
    error[level] = std::abs(d.stress - exact) / exact;
  }
  CHECK(std::log2(error[0] / error[1]) == Approx(2).margin(0.02));
  CHECK(std::log2(error[1] / error[2]) == Approx(2).margin(0.02));
  CHECK(error[2] < 1e-4);
}

TEST_CASE("A steady oscillation loses what the loss modulus says", "[relaxing]")
{
  // Per cycle pi G'' gamma^2 with G'' = mu w tau/(1 + (w tau)^2).
  const double tau = 0.01, w = 60, amplitude = 0.1;
  const int    n = 2000;
  const double dt = 2 * std::numbers::pi / w / n;
  Driven       d{RelaxingBranch(0.3e6, 0.4e6, tau), in_shear};
  for (int i = 1; i <= 6 * n; ++i)
    d.go(amplitude * std::sin(w * dt * i), dt);
  const double before = d.decayed, worked = d.work;
  for (int i = 6 * n + 1; i <= 7 * n; ++i)
    d.go(amplitude * std::sin(w * dt * i), dt);
  const double loss = std::numbers::pi * 0.3e6 * w * tau / (1 + w * w * tau * tau) * amplitude * amplitude;
  CHECK(d.decayed - before == Approx(loss).epsilon(1e-5)); // step error (w dt)^2
  CHECK(d.work - worked == Approx(loss).epsilon(1e-5));
}

TEST_CASE("The loop of a slipping branch has its closed-form area at any rate", "[slipping]")
{
  const double mu = 0.2e6, cap = 0.05, peak = 0.15, area = 4 * mu * cap * (peak - cap);
  for (const int n : {15, 30, 150})
    for (const double dt : {1e-6, 1e-2, 10.0})
    {
      CAPTURE(n, dt);
      Driven     d{SlippingBranch(mu, 0.3e6, cap, never), in_shear};
      const auto sweep = [&](double from, double to) {
        for (int i = 1; i <= n; ++i)
          d.go(from + (to - from) * i / n, dt);
      };
      sweep(0, peak);
      const double slipped = d.slipped, work = d.work;
      sweep(peak, 0), sweep(0, -peak), sweep(-peak, 0), sweep(0, peak);
      CHECK(d.slipped - slipped == Approx(area).epsilon(1e-10));
      // The force loop itself, exact by trapezoids as the cap is met on a step.
      CHECK(d.work - work == Approx(area).epsilon(1e-10));
      CHECK(d.decayed == 0);
      CHECK(d.work == Approx(d.stored() + d.slipped).epsilon(1e-10));
    }
}

TEST_CASE("The slip norm in uniaxial stress is sqrt(2 (1 + nu)) times the strain", "[slipping]")
{
  const double nu = 0.2, mu = 0.2e6, kappa = 2 * mu * (1 + nu) / (3 * (1 - 2 * nu));
  const double norm = std::sqrt(2 * (1 + nu)), cap = 0.04;
  Driven       d{SlippingBranch(mu, kappa, cap, never), {1, -nu, -nu}};
  d.go(cap / norm * (1 - 1e-12), 1);
  CHECK(d.slipped == 0);
  d.go(cap / norm * 1.5, 1);
  CHECK(d.slipped == Approx(mu * cap * 0.5 * cap).epsilon(1e-10));
}

TEST_CASE("Unloading is the first loading doubled", "[slipping]")
{
  // Masing's rule holds for any parallel set of elastic-sliding elements.
  const std::vector<Branch> set = {SlippingBranch(0.1e6, 0.1e6, 0.01, never),
                                   SlippingBranch(0.1e6, 0.1e6, 0.04, never),
                                   SlippingBranch(0.1e6, 0.1e6, 0.16, never)};
  const int                 n = 100;
  std::vector<double>       loading(n + 1), unloading(2 * n + 1);
  for (const auto &branch : set)
  {
    Driven d{branch, in_shear};
    for (int i = 1; i <= n; ++i)
    {
      d.go(0.2 * i / n, 1);
      loading[i] += d.stress;
    }
    unloading[0] += d.stress;
    for (int i = 1; i <= 2 * n; ++i)
    {
      d.go(0.2 - 0.2 * i / n, 1);
      unloading[i] += d.stress;
    }
  }
  for (int i = 0; i <= n; ++i)
    CHECK(loading[n] - unloading[2 * i] == Approx(2 * loading[i]).epsilon(1e-10).margin(1e-6));
}

TEST_CASE("Set after a slip recovers with the recovery time", "[slipping]")
{
  Driven d{SlippingBranch(0.2e6, 0.3e6, 0.05, 5), in_shear};
  d.go(0.15, 1e-6);
  d.go(0.0, 1e-6);
  const double left = d.stress; // pushed past its cap the other way: it holds the set
  CHECK(left == Approx(-0.2e6 * 0.05).epsilon(1e-6));
  for (int i = 0; i < 100; ++i)
    d.go(0.0, 0.1);
  CHECK(d.stress == Approx(left * std::exp(-2.0)).epsilon(1e-9));
}

TEST_CASE("While slipping the moduli vanish along the trial and stay symmetric positive", "[slipping]")
{
  const LogStrains<double> e{-0.3, 0.08, 0.05};
  const auto               out = Branch(SlippingBranch(0.2e6, 0.3e6, 0.05, never)).push(e, 1.0);
  const auto              &m = out.response.moduli;
  const double rows[3] = {m[0] * e[0] + m[3] * e[1] + m[4] * e[2], m[3] * e[0] + m[1] * e[1] + m[5] * e[2],
                          m[4] * e[0] + m[5] * e[1] + m[2] * e[2]};
  for (const double row : rows)
    CHECK(std::abs(row) < 1e-10 * m[0]);
  CHECK(m[0] > 0);
  CHECK(m[0] * m[1] - m[3] * m[3] > 0);
}

TEST_CASE("An infinite cap makes a slipping branch a relaxing one", "[slipping]")
{
  const LogStrains<double> e{-0.3, 0.08, 0.05};
  const auto               a = RelaxingBranch(0.2e6, 0.3e6, 0.5).push(e, 0.8),
             b = SlippingBranch(0.2e6, 0.3e6, never, 0.5).push(e, 0.8);
  const auto c = SlippingBranch(0.2e6, 0.3e6, 10, 0.5).push(e, 0.8); // a cap out of reach
  for (const auto &other : {b, c})
  {
    CHECK(other.response.energy == a.response.energy);
    CHECK(other.response.stress == a.response.stress);
    CHECK(other.response.moduli == a.response.moduli);
    CHECK(other.strain_factor == a.strain_factor);
    CHECK(other.lost_in_slip == 0);
  }
}

TEST_CASE("Branches refuse numbers out of range", "[branch]")
{
  CHECK_THROWS_WITH(RelaxingBranch(0.3e6, 0, 0), "relaxation time = 0 is not allowed: give a time above 0");
  CHECK_THROWS_AS(RelaxingBranch(-1, 0, 1), InvalidParameter);
  CHECK_THROWS_AS(RelaxingBranch(1, std::nan(""), 1), InvalidParameter);
  CHECK_THROWS_AS(SlippingBranch(1, 1, 0, 1), InvalidParameter);
  CHECK_THROWS_AS(SlippingBranch(1, 1, 0.1, 0), InvalidParameter);
}
