// SPDX-License-Identifier: Apache-2.0
// Element loops compiled for the baseline instruction set.
#include "solver/kernels/element_loops.h"
#include "solver/kernels/front_loops.h"
#include "solver/kernels/instantiations.h"

namespace solemech::solver
{
std::unique_ptr<SolidKernel> make_baseline_kernel(const materials::Foam &foam)
{
  return std::make_unique<ElementLoops<Baseline, FoamPart>>(FoamPart{foam});
}
std::unique_ptr<SolidKernel> make_baseline_kernel(const materials::IsotropicPlate &plate)
{
  return std::make_unique<ElementLoops<Baseline, PlatePart>>(PlatePart{plate});
}
std::unique_ptr<SolidKernel> make_baseline_kernel(const materials::Rubber &rubber)
{
  return std::make_unique<ElementLoops<Baseline, RubberPart>>(RubberPart{rubber});
}
std::unique_ptr<FrontKernel> make_baseline_front_kernel()
{
  return std::make_unique<FrontLoops<Baseline>>();
}
} // namespace solemech::solver
