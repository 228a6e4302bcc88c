// SPDX-License-Identifier: Apache-2.0
// Factories of the element loops, one set per translation unit and instruction set.
#pragma once

#include "solver/kernels/front_kernel.h"
#include "solver/kernels/solid_kernel.h"

namespace solemech::solver
{
std::unique_ptr<SolidKernel> make_baseline_kernel(const materials::Foam &);
std::unique_ptr<SolidKernel> make_baseline_kernel(const materials::IsotropicPlate &);
std::unique_ptr<SolidKernel> make_baseline_kernel(const materials::Rubber &);
std::unique_ptr<SolidKernel> make_avx2_kernel(const materials::Foam &);
std::unique_ptr<SolidKernel> make_avx2_kernel(const materials::IsotropicPlate &);
std::unique_ptr<SolidKernel> make_avx2_kernel(const materials::Rubber &);
std::unique_ptr<FrontKernel> make_baseline_front_kernel();
std::unique_ptr<FrontKernel> make_avx2_front_kernel();
} // namespace solemech::solver
