// SPDX-License-Identifier: Apache-2.0
// Element loops of a section and loops over fronts compiled for the baseline instruction set.
#include "solver/kernels/element_loops.h"
#include "solver/kernels/front_loops.h"

namespace solemech::solver
{
template std::unique_ptr<SolidKernelOf<2>> make_loops<Baseline, 2>(const materials::Foam &);
template std::unique_ptr<SolidKernelOf<2>> make_loops<Baseline, 2>(const materials::IsotropicPlate &);
template std::unique_ptr<SolidKernelOf<2>> make_loops<Baseline, 2>(const materials::Rubber &);

std::unique_ptr<FrontKernel> make_baseline_front_kernel()
{
  return std::make_unique<FrontLoops<Baseline>>();
}
} // namespace solemech::solver
