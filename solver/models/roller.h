// SPDX-License-Identifier: Apache-2.0
// Rigid frictionless rollers across a section: one that stands or moves straight up and down, and one on an
// arm that turns about an axis. Both are led; what leads them is the force or moment on the bench.
#pragma once

#include "solver/contributions/contact.h"
#include "solver/models/section_model.h"

namespace solemech::solver
{
/// Which faces of a section a tool meets.
enum class Meets { lower_face, upper_face };

struct Roller
{
  std::string name;
  Meets       meets = Meets::lower_face;
  double      radius = 0; ///< [m]
  Point       centre{};   ///< at zero freedoms [m]
};

/// A roller in a model.
class LedRoller
{
public:
  LedRoller(Contact &contact, RigidBody body, double place)
    : contact_(&contact), body_(std::move(body)), place_(place)
  {
  }

  /// Puts it at its place along the foot, at rest.
  void stand(Vector &x) const { x[body_.unknown(0)] = place_; }

  int            led() const { return body_.unknown(1); } ///< height [m], or turn [rad]: from z towards x
  const Contact &contact() const { return *contact_; }

  /// What the section answers on a freedom of the roller: sideways force (0), force or moment that leads it
  /// (1) [N, N m].
  double reaction(const Vector &x, std::size_t freedom) const;

private:
  Contact  *contact_;
  RigidBody body_;
  double    place_; ///< [m]
};

/// Moves along z, and is held at z = 0 until it is led.
/// @param penalty  of a section one metre wide, see ContactSettings [Pa/m2]
LedRoller add_roller(SectionModel &model, const Roller &roller, double penalty);

/// Turns about `axis` with the arm that carries it.
LedRoller add_roller_on_arm(SectionModel &model, const Roller &roller, const Point &axis, double penalty);
} // namespace solemech::solver
