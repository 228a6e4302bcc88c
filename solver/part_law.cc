// SPDX-License-Identifier: Apache-2.0
#include "solver/part_law.h"

#include "materials/area_share.h"

#include <numeric>

namespace solemech::solver
{
namespace
{
template <typename... Cases>
struct Overloaded : Cases...
{
  using Cases::operator()...;
};

double share_sum(const std::vector<materials::Branch> &branches, double shear_modulus)
{
  double sum = 0;
  for (const auto &branch : branches)
    sum += branch.shear_modulus / shear_modulus;
  return sum;
}
} // namespace

template <int dim>
std::unique_ptr<SolidKernelOf<dim>> make_part_kernel(const materials::Material &material, double area_share,
                                                     const Case &input)
{
  const auto kernel = [&](auto whole) {
    return make_kernel<dim>(area_share < 1 ? materials::with_area_share(std::move(whole), area_share)
                                           : whole);
  };
  return std::visit(
    Overloaded{[&](const materials::FoamData &data) {
                 return kernel(materials::make_foam(data, material.thermal, input.temperature,
                                                    input.atmospheric_pressure));
               },
               [&](const materials::RubberData &data) {
                 return kernel(materials::make_rubber(data, material.thermal, input.temperature));
               },
               [&](const materials::PlateData &data) {
                 return kernel(materials::make_plate(data, material.thermal, input.temperature));
               }},
    material.data);
}

template std::unique_ptr<SolidKernelOf<2>> make_part_kernel<2>(const materials::Material &, double,
                                                               const Case &);
template std::unique_ptr<SolidKernelOf<3>> make_part_kernel<3>(const materials::Material &, double,
                                                               const Case &);

double stiffest_confined_modulus(const materials::Material &material, const Case &input)
{
  return std::visit(
    Overloaded{[&](const materials::FoamData &data) {
                 const auto foam = materials::make_foam(data, material.thermal, input.temperature,
                                                        input.atmospheric_pressure);
                 const auto now = foam.equilibrium_constants();
                 const auto network = foam.network_constants();
                 return now.bulk_modulus + 4.0 / 3 * now.shear_modulus +
                        share_sum(foam.branches, network.shear_modulus) *
                          (network.bulk_modulus + 4.0 / 3 * network.shear_modulus);
               },
               // Thin rubber is squeezed sideways before its volume answers: take a few times its modulus.
               [&](const materials::RubberData &data) { return 10 * data.youngs_modulus(); },
               [&](const materials::PlateData &data) { return data.youngs_modulus; }},
    material.data);
}

double equilibrium_modulus(const materials::Material &material, const Case &input)
{
  return std::visit(
    Overloaded{
      [&](const materials::FoamData &data) {
        return materials::make_foam(data, material.thermal, input.temperature, input.atmospheric_pressure)
          .equilibrium_constants()
          .youngs_modulus;
      },
      [&](const materials::RubberData &data) {
        return 3 *
               materials::make_rubber(data, material.thermal, input.temperature).isochoric.shear_modulus();
      },
      [&](const materials::PlateData &data) { return data.youngs_modulus; }},
    material.data);
}
} // namespace solemech::solver
