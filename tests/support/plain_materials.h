// SPDX-License-Identifier: Apache-2.0
// A foam and a rubber without branches for whole problems, as the product's kernels and by their formulas.
#pragma once

#include "solver/kernels/solid_kernel.h"
#include "tests/support/reference_assembly.h"

#include <string>
#include <variant>

namespace solemech::tests
{
struct PlainMaterial
{
  std::string                                      name;
  std::variant<materials::Foam, materials::Rubber> data;
  ReferenceLaw                                     law;
  double                                           bulk_modulus; ///< of the mixed element, else 0 [Pa]

  template <int dim>
  std::unique_ptr<solver::SolidKernelOf<dim>> kernel() const
  {
    return std::visit([](const auto &material) { return solver::make_kernel<dim>(material); }, data);
  }

  /// First Piola-Kirchhoff stress with the volume part of rubber, kappa/2 (J - 1/J) cof F.
  Real33 stress(const Real33 &F) const
  {
    const Real J = F.determinant();
    return piola(law, F).stress + Real33(bulk_modulus / 2 * (J - 1 / J) * J * F.inverse().transpose());
  }
};

inline std::vector<PlainMaterial> plain_materials()
{
  return {{"foam", materials::Foam{{{1.05e6, 4, 0.25}}, {0.16, 0.9, 101325, 1}, {0.16, 1e6, 3}, {}},
           sum_of({reference_ogden(1.05e6, 4, 0.25), reference_cell_gas(0.16L, 0.9L, 101325, 1),
                   reference_densification(0.16L, 1e6, 3)}),
           0},
          {"rubber", materials::Rubber{{0.6e6, 0, 0, 0}, {1.2e9}, {}},
           reference_isochoric_rubber(0.6e6, 0, 0, 0), 1.2e9}};
}
} // namespace solemech::tests
