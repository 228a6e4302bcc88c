// SPDX-License-Identifier: Apache-2.0
// A court as a tread meets it: friction with the band it is known to, states of its surface, and what it does
// with heat. Numbers come from materials/courts/*.toml, each with its basis.
#pragma once

#include "materials/contact_heat.h"
#include "materials/court_friction.h"

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace solemech::materials
{
/// A number with the band in which the truth may lie.
struct Banded
{
  double      value = 0, lowest = 0, highest = 0;
  std::string basis; ///< "published", "from memory", "user data"
};

struct SurfaceState
{
  std::string name;   ///< "clean", "dusty", "wet"
  Banded      factor; ///< on the clean court's friction [-]
};

/// A state that the court's file does not have.
class UnknownSurfaceState : public std::invalid_argument
{
public:
  using std::invalid_argument::invalid_argument;
};

struct Court
{
  std::string               name, title, source;
  Banded                    friction; ///< clean, at the references of `law` [-]
  std::vector<SurfaceState> states;
  FrictionData              law;
  HeatProperties            heat;

  /// Throws UnknownSurfaceState with the names there are.
  const SurfaceState &state(const std::string &name) const;

  /// Law of friction in a state. Throws UnknownSurfaceState, InvalidParameter.
  CourtFriction friction_when(const std::string &state_name) const;

  /// Lowest and highest coefficient in a state: product of the bands' ends.
  std::pair<double, double> friction_band(const std::string &state_name) const;
};
} // namespace solemech::materials
