// SPDX-License-Identifier: Apache-2.0
// Element loops in three dimensions compiled for the baseline instruction set.
#include "solver/kernels/element_loops.h"

namespace solemech::solver
{
template std::unique_ptr<SolidKernelOf<3>> make_loops<Baseline, 3>(const materials::Foam &);
template std::unique_ptr<SolidKernelOf<3>> make_loops<Baseline, 3>(const materials::IsotropicPlate &);
template std::unique_ptr<SolidKernelOf<3>> make_loops<Baseline, 3>(const materials::Rubber &);
template std::unique_ptr<SolidKernelOf<3>> make_loops<Baseline, 3>(const materials::Laminate &);
} // namespace solemech::solver
