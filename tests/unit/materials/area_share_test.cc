// SPDX-License-Identifier: Apache-2.0
// A layer of which a share is there: s times the law along its height, and no step anywhere between little
// and all.
#include "materials/area_share.h"
#include "tests/support/catch.h"

using namespace solemech::materials;

namespace
{
constexpr double shares[] = {0.05, 0.3, 0.6, 0.8, 0.9, 0.97, 0.99, 0.999, 1};

FoamData foam_data()
{
  FoamData data;
  data.network = {{0.6e6, 8, 0.125}};
  data.relative_density = 0.2, data.closed_cells = 0.9, data.densification_modulus = 20e3;
  data.relaxing = {{0.2, 1e-2}};
  data.slipping = {{0.3, 0.05}};
  return data;
}

Rubber rubber()
{
  RubberData data;
  data.c10 = 0.6e6, data.c20 = 0.05e6, data.bulk_modulus = 1e9, data.relaxing = {{0.2, 1e-2}};
  return make_rubber(data, {}, 296.15);
}

IsotropicPlate plate()
{
  return make_plate({.youngs_modulus = 2e9, .poisson_ratio = 0.35, .relaxing = {{0.1, 1e-2}}}, {}, 296.15);
}

SmallStrain constants(const Rubber &law)
{
  return small_strain_constants(law.isochoric.shear_modulus(), law.volumetric.bulk_modulus);
}
SmallStrain constants(const IsotropicPlate &law)
{
  return small_strain_constants(law.elastic.shear_modulus, law.elastic.bulk_modulus);
}

template <typename Law>
void check_moduli(const Law &whole)
{
  const auto all = constants(whole);
  double     bulk = 0;
  for (const double share : shares)
  {
    CAPTURE(share);
    const auto part = constants(with_area_share(whole, share));
    CHECK(part.youngs_modulus == Approx(share * all.youngs_modulus).epsilon(1e-9));
    CHECK(part.bulk_modulus > bulk); // nothing softens as gaps close
    bulk = part.bulk_modulus;
  }
  CHECK(bulk == Approx(all.bulk_modulus).epsilon(1e-9));
  // Far apart nothing is passed on sideways.
  CHECK(constants(with_area_share(whole, 0.3)).poisson_ratio == Approx(0).margin(1e-9));
  // No cliff: a thousandth less area changes no modulus by more than some hundredths, anywhere.
  for (double share = 0.4; share < 1; share += 1e-3)
  {
    CAPTURE(share);
    const auto a = constants(with_area_share(whole, share)),
               b = constants(with_area_share(whole, share + 1e-3));
    CHECK(std::abs(a.bulk_modulus / b.bulk_modulus - 1) < 0.06);
    CHECK(std::abs(a.shear_modulus / b.shear_modulus - 1) < 0.03);
  }
}
} // namespace

TEST_CASE("a share of a foam keeps every term of its law", "[area share]")
{
  const auto whole = make_foam(foam_data(), {}, 296.15, 101325);
  for (const double share : shares)
  {
    const auto               part = with_area_share(whole, share);
    const LogStrains<double> strains{0.05, -0.6, 0.08};
    const auto               of_part = part.response(strains), of_whole = whole.response(strains);
    CAPTURE(share);
    CHECK(of_part.energy == Approx(share * of_whole.energy).epsilon(1e-12));
    for (std::size_t a = 0; a < 3; ++a)
      CHECK(of_part.stress[a] == Approx(share * of_whole.stress[a]).epsilon(1e-12));
    REQUIRE(part.branches.size() == whole.branches.size());
    for (std::size_t i = 0; i < part.branches.size(); ++i)
    {
      const auto push = part.branches[i].push(strains, 0.9), all = whole.branches[i].push(strains, 0.9);
      CHECK(push.stored == Approx(share * all.stored).epsilon(1e-12));
      CHECK(push.lost_in_slip == Approx(share * all.lost_in_slip).epsilon(1e-12));
    }
    CHECK(part.smallest_volume_ratio() == whole.smallest_volume_ratio());
  }
}

TEST_CASE("moduli of posts go over into those of the whole", "[area share]")
{
  check_moduli(rubber());
  check_moduli(plate());
}

TEST_CASE("rubber posts squeezed by a fifth carry their share of the incompressible column", "[area share]")
{
  // Uniaxial: nominal stress of the incompressible law (Yeoh). What posts of Poisson's ratio 0 read instead
  // is 3 % less.
  constexpr double stretch = 0.8, share = 0.6, allowed = 0.05;
  const auto       whole = rubber(), posts = with_area_share(whole, share);
  const auto       energy = [&](double l, double across) {
    const LogStrains<double> strains{std::log(across), std::log(l), std::log(across)};
    return posts.isochoric.response(strains).energy + posts.volumetric.energy(l * across * across);
  };
  const auto free_energy = [&](double l) {
    double low = 0.9, high = 1.3;
    for (int i = 0; i < 100; ++i)
    {
      const double a = low + (high - low) / 3, b = high - (high - low) / 3;
      (energy(l, a) < energy(l, b) ? high : low) = energy(l, a) < energy(l, b) ? b : a;
    }
    return energy(l, 0.5 * (low + high));
  };
  constexpr double h = 1e-4;
  const double     stress = (free_energy(stretch + h) - free_energy(stretch - h)) / (2 * h);
  CHECK(stress == Approx(share * whole.isochoric.nominal_stress(stretch, -0.5)).epsilon(allowed));
}
