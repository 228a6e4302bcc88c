// SPDX-License-Identifier: Apache-2.0
// Unilateral contact of boundary faces with a rigid surface, at five Gauss points a face. The pressure on the
// reference area is p = c g^2 of the penetration g, an energy c g^3/3 of its own: the penalty hardens with
// load, so that a hundredfold load sinks only tenfold, and it sets in without a jump of stiffness, so that
// Newton's method does not cycle over points that touch and leave. Friction is Coulomb's with the pressure of
// the pass before, through an elastic slip of at most `slip_length`; or a point that has touched sticks for
// good to where it touched. Rubber under the edge of a sharp tip has to: without friction it is unstable
// there once the pressure exceeds its modulus. Everything is a function of where a point is on the rigid body
// (RigidMotion::home), so a common motion of both changes nothing: forces and moments balance, and the
// tangent is symmetric however the body slides and tilts.
#pragma once

#include "geometry/rigid_surface.h"
#include "solver/contribution.h"
#include "solver/contributions/surface_points.h"
#include "solver/rigid_body.h"

namespace solemech::solver
{
/// Contact point of a boundary face.
struct ContactPoint : SurfacePoint
{
  double slip = 0, position = 0;              ///< accepted elastic slip, place along the body
  double pressure = 0, accepted_pressure = 0; ///< that friction goes by, and at the end of the last step
  bool   stuck = false;
  Point  touched{}, along{}; ///< where it stuck, counted from the surface, and the tangent there
};

struct ContactSettings
{
  double penalty = 0;  ///< c [Pa/m2]
  double friction = 0; ///< Coulomb coefficient [-]
  double stick = 0;    ///< what has touched does not slide: stiffness along the surface [Pa/m]; 0: it slides
  double slip_length =
    1e-5; ///< elastic slip at which friction is fully mobilised: a hundredth of the way a stack slides [m]
  double pressure_window = 5e-3; ///< width of the ring over which the peak pressure is a mean [m]
};

/// What the surface feels [N, m, Pa].
struct ContactState
{
  double force = 0;         ///< on the body, upwards
  double radius = 0;        ///< outermost touching radius, current
  double peak_pressure = 0; ///< greatest mean over a ring (or the disc at the axis) of the window's width
  double deepest = 0;       ///< penetration
};

class Contact : public Contribution
{
public:
  /// @param body     that carries the surface; without freedoms: fixed. One that slides or tilts needs a
  ///                 section that is drawn as a whole
  /// @param height   of the surface's lowest point when all freedoms of the body are zero [m]
  /// @param faces_up surface lies below and faces up (ground) instead of pressing from above
  Contact(std::string name, const Discretisation &mesh, const std::vector<geometry::BoundaryFace> &faces,
          geometry::RigidSurface surface, ContactSettings settings, RigidBody body, double height,
          bool faces_up);

  /// The stack stands on this rigid body: displacements count from it, and it feels the counterforce. The
  /// inertia that the stack itself has against the motion of its support is left out (a stack weighs little).
  /// It does not turn.
  void stand_on(RigidBody support);

  /// Height of the surface's lowest point when the body that carries it is at zero [m].
  void start_from(double height) { height_ = height; }

  void        begin_step(const Vector &x, double dt) override;
  bool        add(const Vector &x, Vector &force, Tangent *tangent) const override;
  double      settle(const Vector &x) override;
  void        accept(const Vector &x, double dt) override;
  void        energies(std::vector<EnergyEntry> &entries) const override;
  std::string name() const override { return name_; }

  ContactState state(const Vector &x) const;

  /// Of a place from the surface, negative inside the rigid body [m].
  double distance(const Point &place, const Vector &x) const;

private:
  /// Where body and support are, and what a freedom of either does to a point of the surface.
  struct Movers;
  struct Gap
  {
    geometry::SurfaceDistance distance; ///< derivatives as the body lies at zero freedoms
    Point                     home;     ///< of the point on the body, counted from the surface's lowest point
    Point                     position; ///< of the point over the support [m]
  };
  /// Derivatives of the energy by the position of a point, first and second xx, zz, xz [N, N/m].
  struct Response
  {
    bool                  acts = false;
    Point                 push{};
    std::array<double, 3> stiffness{};
  };
  Gap      gap(const ContactPoint &point, const Movers &movers, const Vector &x) const;
  Response respond(const ContactPoint &point, const Gap &here) const;
  void     add_tangent(const ContactPoint &point, const Point &place, const Response &response,
                       const Movers &movers, Tangent &tangent) const;
  /// Way of a stuck point along the surface since it stuck [m].
  static double stick_slip(const ContactPoint &point, const Gap &here);

  std::string               name_;
  geometry::RigidSurface    surface_;
  ContactSettings           settings_;
  RigidBody                 body_, support_;
  double                    height_, facing_;
  std::vector<ContactPoint> points_;
  const Discretisation     *mesh_;
  double                    stored_ = 0, lost_ = 0;
};
} // namespace solemech::solver
