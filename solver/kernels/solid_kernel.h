// SPDX-License-Identifier: Apache-2.0
// What the solver asks of the element loops of one part. Implementations live in one translation unit per
// instruction set; make_*_kernel picks the best one the processor has.
#pragma once

#include "materials/foam.h"
#include "materials/isotropic_plate.h"
#include "materials/rubber.h"
#include "solver/kernels/element_group.h"

#include <memory>
#include <vector>

namespace solemech::solver
{
class SolidKernel
{
public:
  virtual ~SolidKernel() = default;

  /// Number of branches, hence of histories per point.
  virtual unsigned n_branches() const = 0;

  /// First half decay of all branches for a step of `dt` [s] from the accepted unknowns `x`.
  virtual void begin_step(ElementGroup &group, const double *x, double dt) const = 0;

  /// Adds force [N] and, where `matrix` is given, the lower triangle of the stiffness [N/m].
  /// @return false when an element is turned inside out or compressed beyond its solid volume
  virtual bool assemble(const ElementGroup &group, const double *x, double *force, double *matrix) const = 0;

  /// Takes the step: new histories, energies.
  virtual PartEnergies accept(ElementGroup &group, const double *x) const = 0;

  /// Fields at the integration points, one entry an element in the order of the batches.
  virtual std::vector<ElementFields> fields(const ElementGroup &group, const double *x) const = 0;
};

enum class InstructionSet { baseline, avx2 };

/// The widest set that this processor has.
InstructionSet best_instruction_set();

std::unique_ptr<SolidKernel> make_kernel(const materials::Foam &foam,
                                         InstructionSet         set = best_instruction_set());
std::unique_ptr<SolidKernel> make_kernel(const materials::IsotropicPlate &plate,
                                         InstructionSet                   set = best_instruction_set());
/// Nearly incompressible: quadratic displacement, discontinuous linear pressure, condensed in the element.
std::unique_ptr<SolidKernel> make_kernel(const materials::Rubber &rubber,
                                         InstructionSet           set = best_instruction_set());
} // namespace solemech::solver
