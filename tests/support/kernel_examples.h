// SPDX-License-Identifier: Apache-2.0
// A foam, a plate and a rubber with branches, each as the product's kernel and as the reference's material.
#pragma once

#include "solver/kernels/solid_kernel.h"
#include "tests/support/reference_assembly.h"

#include <limits>
#include <string>

namespace solemech::tests
{
inline constexpr double relaxation = 0.02; ///< time of the relaxing branches [s]

template <int dim>
struct KernelExample
{
  using Kernel = std::unique_ptr<solver::SolidKernelOf<dim>>;

  std::string                                   name;
  std::function<Kernel(solver::InstructionSet)> kernel;
  ReferenceMaterial                             reference;
  struct BranchNumbers
  {
    double shear, bulk, time, cap;
  };
  std::vector<BranchNumbers> branches;
};

template <int dim>
std::vector<KernelExample<dim>> kernel_examples()
{
  using Set = solver::InstructionSet;
  constexpr double atmosphere = 101325, cap = 0.05, no_cap = std::numeric_limits<double>::infinity();

  materials::Foam foam{{{0.9e6, 4, 0.25}, {0.3e6, -2, 0}}, {0.16, 0.8, atmosphere, 1.2}, {0.16, 2e6, 3}, {}};
  foam.branches = {materials::RelaxingBranch(0.4e6, 0.6e6, relaxation),
                   materials::SlippingBranch(0.3e6, 0.5e6, cap, 5.0)};
  const materials::IsotropicPlate plate{{0.8e9, 1.7e9},
                                        {materials::RelaxingBranch(0.1e9, 0.2e9, relaxation)}};
  const materials::Rubber         rubber{
    {0.6e6, -0.05e6, 0.02e6, 0.1e6}, {1e9}, {materials::RelaxingBranch(0.3e6, 0, relaxation)}};
  return {
    {"foam",
     [=](Set set) { return solver::make_kernel<dim>(foam, set); },
     {sum_of({reference_ogden(0.9e6, 4, 0.25), reference_ogden(0.3e6, -2, 0),
              reference_cell_gas(0.16L, 0.8L, atmosphere, 1.2L), reference_densification(0.16L, 2e6, 3)}),
      {},
      0},
     {{0.4e6, 0.6e6, relaxation, no_cap}, {0.3e6, 0.5e6, 5.0, cap}}},
    {"plate",
     [=](Set set) { return solver::make_kernel<dim>(plate, set); },
     {reference_hencky(0.8e9, 1.7e9), {}, 0},
     {{0.1e9, 0.2e9, relaxation, no_cap}}},
    {"rubber",
     [=](Set set) { return solver::make_kernel<dim>(rubber, set); },
     {reference_isochoric_rubber(0.6e6, -0.05e6, 0.02e6, 0.1e6), {}, 1e9},
     {{0.3e6, 0, relaxation, no_cap}}}};
}
} // namespace solemech::tests
