// SPDX-License-Identifier: Apache-2.0
// Choice of the instruction set at run time.
#include "solver/kernels/solid_kernel.h"

#include "solver/kernels/instantiations.h"

#include <cstdlib>
#include <string_view>

namespace solemech::solver
{
namespace
{
template <typename Law>
std::unique_ptr<SolidKernel> make(const Law &law, InstructionSet set)
{
  return set == InstructionSet::avx2 ? make_avx2_kernel(law) : make_baseline_kernel(law);
}
} // namespace

// With SOLEMECH_INSTRUCTION_SET=baseline in the environment: the numbers of an older processor.
InstructionSet best_instruction_set()
{
  static const char *wish = std::getenv("SOLEMECH_INSTRUCTION_SET");
  static const bool  wide = __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma") &&
                           !(wish && std::string_view(wish) == "baseline");
  return wide ? InstructionSet::avx2 : InstructionSet::baseline;
}

std::unique_ptr<SolidKernel> make_kernel(const materials::Foam &foam, InstructionSet set)
{
  return make(foam, set);
}
std::unique_ptr<SolidKernel> make_kernel(const materials::IsotropicPlate &plate, InstructionSet set)
{
  return make(plate, set);
}
std::unique_ptr<SolidKernel> make_kernel(const materials::Rubber &rubber, InstructionSet set)
{
  return make(rubber, set);
}

std::unique_ptr<FrontKernel> make_front_kernel(InstructionSet set)
{
  return set == InstructionSet::avx2 ? make_avx2_front_kernel() : make_baseline_front_kernel();
}
} // namespace solemech::solver
