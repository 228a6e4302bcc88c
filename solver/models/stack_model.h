// SPDX-License-Identifier: Apache-2.0
// A case turned into a model: a stack with its air units inflated, on its base, under a striker.
#pragma once

#include "solver/contributions/contact.h"
#include "solver/contributions/self_contact.h"
#include "solver/contributions/solid_body.h"
#include "solver/model.h"
#include "solver/models/contact_stiffness.h"
#include "solver/models/layer_thickness.h"
#include "solver/models/stack_chambers.h"
#include "solver/models/stack_parts.h"
#include "solver/models/striker.h"
#include "solver/resolution.h"

#include <functional>

namespace solemech::solver
{
/// For a striker much smaller than the stack: mesh lines of its own, and the length against which its
/// penetration counts [m]. Left empty: lines graded for a striker of some size; stack height or striker
/// diameter. Where it sticks, what has touched does not slide.
struct SmallStriker
{
  std::function<geometry::GridLines(const geometry::PlugOutline &)> lines = {};
  double                                                            contact_length = 0;
  bool                                                              sticks = false;
};

class StackModel : public ModelOf<Discretisation>
{
public:
  /// @param tup             the striker, rigid body 0
  /// @param expected_force  about the greatest on the striker, against which its penetration counts [N]; 0:
  ///                        that of a bench blow
  StackModel(const Case &input, const Tup &tup, double tup_mass, const Resolution &resolution,
             double expected_force = 0, const SmallStriker &small = {});

  const Case               &input;
  const std::vector<Part>   parts;
  const double              height; ///< of the stack [m]
  std::vector<SolidBody *>  bodies; ///< one a part, in the order of `parts`
  std::vector<Chamber>      chambers;
  std::vector<ChamberFacts> chamber_facts;
  InflationFacts            inflating;
  LayerThickness            layer_thickness;
  Contact                  *tup_contact = nullptr;
  SelfContact              *folds = nullptr;
  geometry::RigidSurface    tup_surface;
  double                    touch_height;   ///< of the striker when it first touches the stack as it lies [m]
  std::vector<double>       rest_thickness; ///< of each layer on the axis as the stack lies [m]

  /// Puts the base on a movable support: a block with a spring and a damper to the ground (rigid body 1).
  void stand_on_support(double mass, double stiffness, double damping);

  /// The stack as it lies, its units inflated, and the striker where it first touches.
  Vector at_rest() const;

  /// Level at which the striker first touches the stack in the state x, over that of the stack at rest [m].
  double first_touch(const Vector &x) const;

  int tup_unknown() const { return equation.n_unknowns(); }

private:
  Vector rest_; ///< of the mesh's unknowns, from the shape in which all but the films are free of stress

  void make_bodies(const std::vector<Point> &drawn, const std::vector<Point> &inflation);
  void add_striker(const RigidBody &striker, const Tup &tup, const ContactStiffness &stiffness,
                   const SmallStriker &small);
  void come_to_rest();
};
} // namespace solemech::solver
