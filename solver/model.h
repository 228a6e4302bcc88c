// SPDX-License-Identifier: Apache-2.0
// A mesh, the equation of motion of what stands on it, and who looks at each accepted step. Makers (models/)
// return one; a rig attaches observers, steps, and has a rule to stop.
#pragma once

#include "solver/time/generalised_alpha.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace solemech::solver
{
/// What an accepted step shows.
struct AcceptedStep
{
  const TimeIntegrator &state;           ///< unknowns, speeds, energies
  double                time;            ///< at its end, on the clock of the rig [s]
  bool                  is_mark = false; ///< something begins or ends here: worth a picture, due or not
};

/// Why a run cannot go on, and what to try.
struct Objection
{
  std::string reason, cure;
};

class Observer
{
public:
  virtual ~Observer() = default;

  /// @return why the run cannot go on from here, mostly nothing
  virtual std::optional<Objection> look(const AcceptedStep &step) = 0;
};

/// Mesh: Discretisation for a section, QuadraticMesh<3> for a solid.
template <typename Mesh>
struct ModelOf
{
  std::unique_ptr<Mesh>   mesh;
  EquationOfMotion        equation;
  std::vector<Observer *> observers; ///< attached by the rig, which keeps them; they look in this order

  /// Takes a mesh whose unknowns are numbered; no part has a mass yet.
  void stand_on(std::unique_ptr<Mesh> numbered)
  {
    mesh = std::move(numbered);
    equation.numbering = mesh.get();
    equation.mass.assign(mesh->pattern().nonZeros() + 1, 0.0);
  }

  /// Shows an accepted step to the observers, until one objects.
  [[nodiscard]] std::optional<Objection> show(const AcceptedStep &step) const
  {
    for (auto *observer : observers)
      if (auto objection = observer->look(step))
        return objection;
    return {};
  }
};
} // namespace solemech::solver
