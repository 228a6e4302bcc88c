// SPDX-License-Identifier: Apache-2.0
// A case turned into a mesh and contributions: parts, air units (inflated), side, base, striker.
#pragma once

#include "solver/case.h"
#include "solver/contributions/contact.h"
#include "solver/contributions/fibre_bundle.h"
#include "solver/contributions/gas_chamber.h"
#include "solver/contributions/self_contact.h"
#include "solver/contributions/solid_body.h"
#include "solver/inflation.h"
#include "solver/time/account.h"
#include "solver/time/equation_of_motion.h"

#include <functional>

namespace solemech::solver
{
/// How fine; made from the wished accuracy, refined from run to run.
struct Resolution
{
  double mesh_level = 1;     ///< see geometry::MeshSize
  double step_tolerance = 1; ///< relative to the default step control; smaller is finer
  /// Of the striker into the surface: its share of the contact length (stack height or striker diameter, the
  /// smaller) at a pressure of one confined modulus of the softest layer.
  double     penetration = 4e-4;
  double     newton_tolerance = 1; ///< of the residuals, relative to the default; smaller is closer
  OpenParts *open_parts = nullptr; ///< filled with what each part leaves open of the account, where wanted
};

/// One part of the mesh.
struct Part
{
  std::string         name;
  materials::Material material;
  double              area_share = 1;
  std::string         layer; ///< of the stack it belongs to; empty: the wall
  bool                film = false;
};

/// An air unit in the model.
struct Chamber
{
  std::string  layer;
  double       height = 0;        ///< between the films [m]
  double       packed_height = 0; ///< [m]
  GasChamber  *gas = nullptr;     ///< nullptr: open
  FibreBundle *fibres = nullptr;
};

/// For a striker much smaller than the stack: mesh lines of its own, and the length against which its
/// penetration counts [m]. Left empty: lines graded for a striker of some size; stack height or striker
/// diameter. Where it sticks, what has touched does not slide.
struct SmallStriker
{
  std::function<geometry::GridLines(const geometry::PlugOutline &)> lines = {};
  double                                                            contact_length = 0;
  bool                                                              sticks = false;
};

class StackModel
{
public:
  /// @param tup             surface of the striker, in its own frame with the lowest point at the origin
  /// @param expected_force  about the greatest on the striker, against which its penetration counts [N]; 0:
  /// that of a
  ///                        bench blow
  StackModel(const Case &input, const Tup &tup, double tup_mass, const Resolution &resolution,
             double expected_force = 0, const SmallStriker &small = {});

  const Case                     &input;
  std::vector<Part>               parts;
  Resolution                      resolution;
  double                          height = 0; ///< of the stack [m]
  std::unique_ptr<Discretisation> mesh;
  EquationOfMotion                equation;
  std::vector<SolidBody *>        bodies; ///< one a part, in the order of `parts`
  std::vector<Chamber>            chambers;
  std::vector<ChamberFacts>       chamber_facts;
  InflationFacts                  inflating;
  Contact                        *tup_contact = nullptr;
  SelfContact                    *folds = nullptr;
  double                 touch_height = 0; ///< of the striker when it first touches the stack as it lies [m]
  std::vector<double>    rest_thickness; ///< of each layer on the axis as the stack lies, foot side first [m]
  geometry::RigidSurface tup_surface;

  /// Puts the base on a movable support: a block with a spring and a damper to the ground (rigid body 1).
  void stand_on_support(double mass, double stiffness, double damping);

  /// The stack as it lies, its units inflated, and the striker where it first touches.
  Vector at_rest() const;

  /// Level at which the striker first touches the stack in the state x, over that of the stack at rest [m].
  double first_touch(Vector x) const;

  /// Thickness of each layer on the axis at x, foot side first [m].
  std::vector<double> axis_thickness(const Vector &x) const;

  int tup_unknown() const { return equation.n_unknowns(); }

private:
  std::vector<unsigned> axis_nodes_; ///< on the interfaces between layers, foot side first
  Vector rest_; ///< of the mesh's unknowns, from the shape in which all but the films are free of stress

  geometry::PlugOutline outline(const Tup &tup) const;
  void                  make_bodies(const std::vector<Point> &drawn, const std::vector<Point> &inflation);
  void                  make_chambers();
  void                  make_side_and_base();
  void                  come_to_rest();
  void                  measure_chamber(unsigned c);
  const AirUnit        &unit_of(unsigned chamber) const;
  double                softest_modulus() const; ///< under lateral confinement [Pa]
  double                penalty(double length) const;

  double load_share_ = 1; ///< expected pressure over that of a bench blow, at most 1
};

/// Stiffness of the stack's column under a striker, layers in series at their modulus at rest [N/m].
double column_stiffness(const Case &input, const Tup &tup);

/// Surface of a striker.
geometry::RigidSurface striker_surface(const Tup &tup);

/// Reach of the struck surface: what a striker of this shape touches when it has sunk to `depth` [m].
double striker_reach(const Tup &tup, double depth);
} // namespace solemech::solver
