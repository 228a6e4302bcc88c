// SPDX-License-Identifier: Apache-2.0
// What one kernel answers for one group of hexahedra: force and stiffness as plain arrays.
#pragma once

#include "solver/kernels/solid_kernel.h"
#include "solver/mesh/quadratic_mesh.h"
#include "tests/support/catch.h"

#include <algorithm>

namespace solemech::tests
{
inline solver::Vector force_of(const solver::SolidKernelOf<3> &kernel, const solver::ElementGroupOf<3> &group,
                               const solver::Vector &x)
{
  solver::Vector f = solver::Vector::Zero(x.size());
  REQUIRE(kernel.assemble(group, x.data(), f.data(), nullptr));
  return f;
}

inline Eigen::MatrixXd stiffness_of(const solver::SolidKernelOf<3>  &kernel,
                                    const solver::ElementGroupOf<3> &group,
                                    const solver::QuadraticMesh<3> &mesh, const solver::Vector &x)
{
  solver::Vector       f = solver::Vector::Zero(x.size());
  solver::SparseMatrix k = mesh.pattern();
  std::vector<double>  values(k.nonZeros() + 1, 0.0);
  REQUIRE(kernel.assemble(group, x.data(), f.data(), values.data()));
  std::copy_n(values.begin(), k.nonZeros(), k.valuePtr());
  return Eigen::MatrixXd(k).selfadjointView<Eigen::Lower>();
}
} // namespace solemech::tests
