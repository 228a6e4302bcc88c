// SPDX-License-Identifier: Apache-2.0
// Unilateral contact of boundary faces with a rigid surface, in a section or in space. The pressure on the
// reference area is p = c g^2 of the penetration g, an energy c g^3/3 of its own: the penalty hardens with
// load, so that a hundredfold load sinks only tenfold, and it sets in without a jump of stiffness, so that
// Newton's method does not cycle over points that touch and leave. Friction is Coulomb's with the pressure of
// the pass before, through an elastic slip of at most `slip_length`; or a point that has touched sticks for
// good to where it touched. Rubber under the edge of a sharp tip has to: without friction it is unstable
// there once the pressure exceeds its modulus. Everything is a function of where a point is on the rigid body
// (RigidMotion::home), so a common motion of both changes nothing: forces and moments balance, and the
// tangent is symmetric however the body slides and tilts.
#pragma once

#include "geometry/swept_surface.h"
#include "solver/contribution.h"
#include "solver/contributions/surface_points.h"
#include "solver/rigid_body.h"

#include <Eigen/Core>

#include <type_traits>

namespace solemech::solver
{
struct ContactSettings
{
  double penalty = 0;  ///< c [Pa/m2]
  double friction = 0; ///< Coulomb coefficient [-]
  double stick = 0;    ///< what has touched does not slide: stiffness along the surface [Pa/m]; 0: it slides
  double slip_length =
    1e-5; ///< elastic slip at which friction is fully mobilised: a hundredth of the way a stack slides [m]
  double pressure_window = 5e-3; ///< width of the ring over which the peak pressure is a mean [m]
};

template <int dim>
class RigidContact : public Contribution
{
public:
  using At = std::array<double, dim>; ///< a place or a direction
  using Surface = std::conditional_t<dim == 2, geometry::RigidSurface, geometry::SweptSurface>;

  /// @param body     that carries the surface; without freedoms: fixed
  /// @param lowest   point of the surface, where it is when all freedoms of the body are zero [m]
  /// @param faces_up surface lies below and faces up (ground) instead of pressing from above
  RigidContact(std::string name, const Numbering &numbering, const std::vector<SurfacePointOf<dim>> &points,
               Surface surface, ContactSettings settings, RigidBody body, const At &lowest, bool faces_up);

  /// The stack stands on this rigid body: displacements count from it, and it feels the counterforce. The
  /// inertia that the stack itself has against the motion of its support is left out (a stack weighs little).
  /// It does not turn.
  void stand_on(RigidBody support);

  /// Height of the surface's lowest point when the body that carries it is at zero [m].
  void start_from(double height) { lowest_[dim - 1] = height; }

  void        begin_step(const Vector &x, double dt) override;
  bool        add(const Vector &x, Vector &force, Tangent *tangent) const override;
  double      settle(const Vector &x) override;
  void        accept(const Vector &x, double dt) override;
  void        energies(std::vector<EnergyEntry> &entries) const override;
  std::string name() const override { return name_; }

  /// Of a place from the surface, negative inside the rigid body [m].
  double distance(const At &place, const Vector &x) const;

  /// What a point of the faces and the surface do to each other.
  struct Touch
  {
    const SurfacePointOf<dim> *point;
    At                         place;    ///< of the point in space [m]
    At                         home;     ///< on the body, counted from the surface's lowest point [m]
    At                         normal;   ///< out of the body, as it lies at zero freedoms [-]
    At                         force;    ///< on the body [N]
    double                     pressure; ///< on the reference area; 0 where only friction of before acts [Pa]
    double                     depth;    ///< penetration [m]
  };
  std::vector<Touch> touches(const Vector &x) const;

  /// Where a point of the body is that is at `home` from the surface's lowest point, over the support [m].
  At place_on_body(const At &home, const Vector &x) const;

private:
  using Direction = Eigen::Matrix<double, dim, 1>;
  using Square = Eigen::Matrix<double, dim, dim>;
  using Level = Eigen::Matrix<double, dim - 1, 1>; ///< along the ground
  struct Point : SurfacePointOf<dim>
  {
    Point(const SurfacePointOf<dim> &on_face, const Level &place)
      : SurfacePointOf<dim>(on_face), position(place)
    {
    }
    Level     slip = Level::Zero(), position;      ///< accepted elastic slip, place along the body
    double    pressure = 0, accepted_pressure = 0; ///< that friction goes by, and at the end of the last step
    bool      stuck = false;
    Direction touched = Direction::Zero(), ///< where it stuck, counted from the surface
      normal = Direction::Zero();          ///< there
  };
  /// Where body and support are, and what a freedom of either does to a point of the surface.
  struct Movers;
  struct Gap
  {
    double    distance;
    Direction normal; ///< this and the curvature as the body lies at zero freedoms
    Square    curvature;
    Direction home;     ///< of the point on the body, counted from the surface's lowest point
    At        position; ///< of the point over the support [m]
  };
  /// Derivatives of the energy by the position of a point, first and second [N, N/m].
  struct Response
  {
    bool      acts = false;
    Direction push = Direction::Zero();
    Square    stiffness = Square::Zero();
  };
  /// Stiffness of the points of one face by its unknowns.
  using FaceMatrix = Eigen::Matrix<double, SurfacePointOf<dim>::n_dofs, SurfacePointOf<dim>::n_dofs>;

  Gap      gap(const Point &point, const Movers &movers, const Vector &x) const;
  Response respond(const Point &point, const Gap &here) const;
  void     add_friction(const Point &point, const Gap &here, Response &response) const;
  void     add_tangent(const Point &point, const At &place, const Response &response, const Movers &movers,
                       FaceMatrix &face, Tangent &tangent) const;
  void     add_face(const Point &point, const FaceMatrix &face, Tangent &tangent) const;
  /// Way of a stuck point along the surface since it stuck [m].
  static Direction stick_slip(const Point &point, const Gap &here);
  /// Elastic slip and what came to it since the last step, whether or not friction can hold it [m].
  static Level trial_slip(const Point &point, const Gap &here);

  std::string        name_;
  Surface            surface_;
  ContactSettings    settings_;
  RigidBody          body_, support_;
  At                 lowest_;
  double             facing_;
  std::vector<Point> points_;
  const Numbering   *numbering_;
  double             stored_ = 0, lost_ = 0;
};
} // namespace solemech::solver
