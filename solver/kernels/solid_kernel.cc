// SPDX-License-Identifier: Apache-2.0
// Choice of the instruction set at run time.
#include "solver/kernels/solid_kernel.h"

#include "materials/laminate.h"
#include "solver/kernels/instantiations.h"

#include <cstdlib>
#include <string_view>

namespace solemech::solver
{
// With SOLEMECH_INSTRUCTION_SET=baseline in the environment: the numbers of an older processor.
InstructionSet best_instruction_set()
{
  static const char *wish = std::getenv("SOLEMECH_INSTRUCTION_SET");
  static const bool  wide = __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma") &&
                           !(wish && std::string_view(wish) == "baseline");
  return wide ? InstructionSet::avx2 : InstructionSet::baseline;
}

template <int dim, typename Material>
std::unique_ptr<SolidKernelOf<dim>> make_kernel(const Material &material, InstructionSet set)
{
  return set == InstructionSet::avx2 ? make_loops<Avx2, dim>(material) : make_loops<Baseline, dim>(material);
}

template std::unique_ptr<SolidKernelOf<2>> make_kernel<2>(const materials::Foam &, InstructionSet);
template std::unique_ptr<SolidKernelOf<2>> make_kernel<2>(const materials::IsotropicPlate &, InstructionSet);
template std::unique_ptr<SolidKernelOf<2>> make_kernel<2>(const materials::Rubber &, InstructionSet);
template std::unique_ptr<SolidKernelOf<3>> make_kernel<3>(const materials::Foam &, InstructionSet);
template std::unique_ptr<SolidKernelOf<3>> make_kernel<3>(const materials::IsotropicPlate &, InstructionSet);
template std::unique_ptr<SolidKernelOf<3>> make_kernel<3>(const materials::Rubber &, InstructionSet);
template std::unique_ptr<SolidKernelOf<3>> make_kernel<3>(const materials::Laminate &, InstructionSet);

std::unique_ptr<FrontKernel> make_front_kernel(InstructionSet set)
{
  return set == InstructionSet::avx2 ? make_avx2_front_kernel() : make_baseline_front_kernel();
}
} // namespace solemech::solver
