// SPDX-License-Identifier: Apache-2.0
// Element loops compiled for the avx2 instruction set.
#include "solver/kernels/element_loops.h"
#include "solver/kernels/front_loops.h"
#include "solver/kernels/instantiations.h"

namespace solemech::solver
{
std::unique_ptr<SolidKernel> make_avx2_kernel(const materials::Foam &foam)
{
  return std::make_unique<ElementLoops<Avx2, FoamPart>>(FoamPart{foam});
}
std::unique_ptr<SolidKernel> make_avx2_kernel(const materials::IsotropicPlate &plate)
{
  return std::make_unique<ElementLoops<Avx2, PlatePart>>(PlatePart{plate});
}
std::unique_ptr<SolidKernel> make_avx2_kernel(const materials::Rubber &rubber)
{
  return std::make_unique<ElementLoops<Avx2, RubberPart>>(RubberPart{rubber});
}
std::unique_ptr<FrontKernel> make_avx2_front_kernel()
{
  return std::make_unique<FrontLoops<Avx2>>();
}
} // namespace solemech::solver
