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
template <int dim>
class SolidKernelOf
{
public:
  virtual ~SolidKernelOf() = default;

  /// Number of branches, hence of histories per point.
  virtual unsigned n_branches() const = 0;

  /// First half decay of all branches for a step of `dt` [s] from the accepted unknowns `x`.
  virtual void begin_step(ElementGroupOf<dim> &group, const double *x, double dt) const = 0;

  /// Adds force [N] and, where `matrix` is given, the lower triangle of the stiffness [N/m].
  /// @return false when an element is turned inside out or compressed beyond its solid volume
  virtual bool assemble(const ElementGroupOf<dim> &group, const double *x, double *force,
                        double *matrix) const = 0;

  /// Takes the step: new histories, energies.
  virtual PartEnergies accept(ElementGroupOf<dim> &group, const double *x) const = 0;

  /// Fields at the integration points, one entry an element in the order of the batches.
  virtual std::vector<ElementFieldsOf<dim>> fields(const ElementGroupOf<dim> &group,
                                                   const double              *x) const = 0;
};

using SolidKernel = SolidKernelOf<2>;

enum class InstructionSet { baseline, avx2 };

/// The widest set that this processor has.
InstructionSet best_instruction_set();

/// Element loops of a foam, a plate or a rubber. Rubber is nearly incompressible: quadratic displacement,
/// discontinuous linear pressure, condensed in the element.
template <int dim = 2, typename Material>
std::unique_ptr<SolidKernelOf<dim>> make_kernel(const Material &material,
                                                InstructionSet  set = best_instruction_set());
} // namespace solemech::solver
