// SPDX-License-Identifier: Apache-2.0
// Factories of the element loops and of the loops over fronts; each translation unit instantiates those of
// one instruction set and dimension.
#pragma once

#include "solver/kernels/front_kernel.h"
#include "solver/kernels/solid_kernel.h"

namespace solemech::solver
{
template <typename Isa, int dim, typename Material>
std::unique_ptr<SolidKernelOf<dim>> make_loops(const Material &);

std::unique_ptr<FrontKernel> make_baseline_front_kernel();
std::unique_ptr<FrontKernel> make_avx2_front_kernel();
} // namespace solemech::solver
