// SPDX-License-Identifier: Apache-2.0
// A flat court that is pressed from above on boundary faces and slides along them. Normal pressure as in
// contact.h, p = c g^2 of the penetration g. Shear is limited by a law of the pressure of the same iteration,
// so that the tangent is unsymmetric and one solve settles a step also where friction
// and pressure feed each other (leading edges). Below the limit shear grows linearly over an elastic slip.
#pragma once

#include "solver/contribution.h"
#include "solver/contributions/surface_points.h"

#include <functional>

namespace solemech::solver
{
/// Greatest shear stress a pressure can carry, and its derivative [Pa, -].
struct ShearLimit
{
  double stress = 0, slope = 0;
};
using ShearLaw = std::function<ShearLimit(double pressure)>;

/// What one point of the surface feels, all on the reference surface.
struct SlidingPointState
{
  Point  at_rest;           ///< position on the unloaded lug [m]
  Point  position;          ///< now [m]
  double length = 0;        ///< reference length it stands for [m]
  double face = 0;          ///< length of the mesh's face it lies on [m]
  double pressure = 0;      ///< [Pa]
  double shear = 0;         ///< on the lug, along the court's motion when positive [Pa]
  double gap = 0;           ///< to the court, negative when it touches [m]
  double slid = 0;          ///< way slid under pressure since `clear_wear` [m]
  double work = 0;          ///< of friction since then [J/m2]
  double pressure_slid = 0; ///< integral of pressure times sliding way since then [Pa m]
};

/// Way that contact reaches from a touching point towards the next one that is off, beyond the half length
/// the touching one stands for: to where the gap between them is nought [m, on the reference surface].
double contact_overhang(const SlidingPointState &touching, const SlidingPointState &off);

/// Sums over the surface, per depth of one metre.
struct SlidingState
{
  double normal = 0; ///< force of the court on the lug, downwards [N/m]
  double shear = 0;  ///< along the court's motion [N/m]
  double moment = 0; ///< of the normal force about x = 0, positive when it acts at x > 0 [N]
  double contact_length =
    0;                ///< now, along the court; its ends lie where the gap between two points is nought [m]
  double deepest = 0; ///< penetration [m]
};

class SlidingContact : public Contribution
{
public:
  /// @param body         number of the rigid body whose height is that of the court
  /// @param height       of the court at zero unknowns [m]
  /// @param penalty      c [Pa/m2]
  /// @param slip_length  elastic slip at which the shear limit is reached [m]
  SlidingContact(std::string name, const Discretisation &mesh,
                 const std::vector<geometry::BoundaryFace> &faces, double penalty, double slip_length,
                 int body, double height);

  /// Law of the shear limit from the next step on.
  void set_shear_law(ShearLaw law) { law_ = std::move(law); }

  /// Place of the court along x at the end of the next step [m].
  void drive_to(double place) { place_ = place; }

  /// Wear integrals start anew.
  void clear_wear();

  bool        add(const Vector &x, Vector &force, Tangent *tangent) const override;
  void        accept(const Vector &x, double dt) override;
  void        energies(std::vector<EnergyEntry> &entries) const override;
  bool        has_potential() const override { return false; }
  std::string name() const override { return name_; }

  SlidingState                   state(const Vector &x) const;
  std::vector<SlidingPointState> points(const Vector &x) const;

private:
  struct Surface : SurfacePoint
  {
    double slip = 0, position = 0; ///< accepted elastic slip, place along the court [m]
    double slid = 0, work = 0, pressure_slid = 0;
  };
  struct Response
  {
    Point  position;
    double depth, pressure, stiffness; ///< stiffness = dp/dg
    double shear = 0, shear_stiffness = 0, shear_per_pressure = 0, trial = 0, limit = 0;
  };
  Response respond(const Surface &point, const Vector &x) const;

  std::string              name_;
  const Discretisation    *mesh_;
  double                   penalty_, slip_length_, height_;
  int                      body_;
  ShearLaw                 law_;
  double                   place_ = 0, accepted_place_ = 0;
  std::vector<Surface>     points_;
  std::vector<std::size_t> in_order_; ///< numbers of the points from left to right along the unloaded outline
  double                   stored_ = 0, lost_ = 0, driven_ = 0, shear_force_ = 0;
};
} // namespace solemech::solver
