// SPDX-License-Identifier: Apache-2.0
// Fibres that join the lower and the upper film of a chamber, smeared over the area, and the pile they and
// the films make when the chamber is pressed flat. Acts between facing points of equal radius.
#pragma once

#include "materials/tensile_fibre.h"
#include "solver/contribution.h"
#include "solver/mesh/discretisation.h"

namespace solemech::solver
{
class FibreBundle : public Contribution
{
public:
  FibreBundle(std::string name, const Discretisation &mesh, const geometry::ChamberMesh &chamber,
              materials::TensileFibres law);

  bool        add(const Vector &x, Vector &force, Tangent *tangent) const override;
  void        accept(const Vector &x, double dt) override;
  void        energies(std::vector<EnergyEntry> &entries) const override;
  std::string name() const override { return name_; }

  /// With which the fibres hold the films together at x, vertically [N].
  double pull(const Vector &x) const;

  /// Smallest height between the films [m].
  double smallest_height(const Vector &x) const;

private:
  struct PairPoint
  {
    std::array<int, 12>   dof; ///< lower face r, z of three nodes, then upper face
    std::array<Point, 6>  node;
    std::array<double, 3> shape;
    double                area;
  };
  std::array<double, 2> span(const PairPoint &pair, const Vector &x) const;

  std::string              name_;
  materials::TensileFibres law_;
  const Discretisation    *mesh_;
  std::vector<PairPoint>   pairs_;
  double                   stored_ = 0;
};
} // namespace solemech::solver
