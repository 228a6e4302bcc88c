// SPDX-License-Identifier: Apache-2.0
// One lug on its skin as a plane section, bonded to a sole that stands still, under a flat court (rigid body
// 0) that is pressed on it and slides along x. Drawn upside down: the court comes from above. Lug and skin of
// near-incompressible rubber; forces are per metre of bar.
#pragma once

#include "geometry/lug_mesh.h"
#include "solver/case.h"
#include "solver/contributions/applied_force.h"
#include "solver/contributions/sliding_contact.h"
#include "solver/contributions/solid_body.h"
#include "solver/model.h"

namespace solemech::solver
{
struct LugCell
{
  geometry::LugOutline outline;
  materials::Material  lug, skin;
  LugNeighbours        neighbours = LugNeighbours::periodic;
};

class LugModel : public ModelOf<Discretisation>
{
public:
  /// @param input        surroundings (temperature) of the materials
  /// @param mesh_level   see geometry::make_lug_mesh
  /// @param slip_length  elastic slip of the friction [m]
  LugModel(const LugCell &cell, const Case &input, double mesh_level, double slip_length);

  const LugCell            cell;
  const double             slip_length;
  geometry::LugMesh        drawn;
  std::vector<SolidBody *> bodies; ///< skin, lug
  SlidingContact          *court = nullptr;
  AppliedForce            *load = nullptr; ///< on the court, downwards, per metre of bar [N/m]

  int court_unknown() const { return equation.n_unknowns(); }
  /// Whether a place of the unloaded outline lies on the face that was drawn to touch, not on a wall.
  bool is_on_face(const Point &at_rest) const
  {
    return at_rest[0] >= face_left_ && at_rest[0] <= face_right_;
  }
  double nominal_width() const
  {
    return cell.outline.width;
  } ///< of the fresh face: pressures refer to it [m]

private:
  double face_left_, face_right_; ///< ends of the drawn face [m]

  void move_onto_curves();
  void make_bodies(const Case &input);
  void find_face();
  void add_court(double modulus);
};
} // namespace solemech::solver
