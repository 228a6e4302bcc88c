// SPDX-License-Identifier: Apache-2.0
// Wear by rubbing: depth rate k p |v| (J.F. Archard, J. Appl. Phys. 24 (1953)), or k w_ref (tau |v|/w_ref)^m
// of the frictional work (exponent 1 on sharp counterfaces, up to about 2 on blunt ones: K.A. Grosch & A.
// Schallamach, from memory). p and tau are nominal tractions [Pa], v the slip speed [m/s]; no slip, no wear.
// What a rubber loses on abrasive cloth is orders above what it loses on a court: the two coefficients are
// different types, and one becomes the other only by a ratio that names where it comes from.
#pragma once

#include "materials/errors.h"

#include <string>
#include <utility>

namespace solemech::materials
{
enum class RubbedOn { court, abrasive };

/// Volume lost over normal force and way [m3/(N m) = 1/Pa]; 1e-9 is 1 mm3/(N m).
template <RubbedOn counterface>
class WearCoefficient
{
public:
  /// Throws InvalidParameter unless k is finite and not negative.
  explicit WearCoefficient(double k) : k_(k) { require_not_negative("wear coefficient", k); }

  double value() const { return k_; }

  /// Depth lost a second [m/s] under the pressure [Pa] at the slip speed [m/s]; none without contact.
  double depth_rate(double pressure, double speed) const
  {
    return pressure > 0 ? k_ * pressure * std::abs(speed) : 0.0;
  }
  /// Volume lost under a force [N] over a way [m]; a flat punch of the area A loses this over A.
  double volume(double force, double way) const { return force > 0 ? k_ * force * std::abs(way) : 0.0; }

private:
  double k_;
};

using CourtWear = WearCoefficient<RubbedOn::court>;
using AbrasiveWear = WearCoefficient<RubbedOn::abrasive>;

/// Wear that follows the frictional work: k_e w_ref (tau v/w_ref)^m, k_e a coefficient per work [1/Pa].
template <RubbedOn counterface>
class WorkWear
{
public:
  /// @param reference_power w_ref [W/m2] at which the law is k_e tau v; any for m = 1
  /// Throws InvalidParameter unless k_e >= 0, 0.5 <= m <= 4 and w_ref > 0.
  WorkWear(double k_e, double exponent, double reference_power)
    : k_(k_e), exponent_(exponent), reference_(reference_power)
  {
    require_not_negative("wear per frictional work", k_e);
    require(exponent >= 0.5 && exponent <= 4, "wear exponent", exponent, "a number from 0.5 to 4");
    require_positive("reference power of the wear law", reference_power);
  }

  /// Depth lost a second [m/s] under the frictional traction [Pa] at the slip speed [m/s].
  double depth_rate(double traction, double speed) const
  {
    const double power = std::abs(traction * speed);
    return power > 0 ? k_ * reference_ * std::pow(power / reference_, exponent_) : 0.0;
  }

private:
  double k_, exponent_, reference_;
};

/// How much less a court takes than a given abrasive, and who says so.
struct CourtOverAbrasive
{
  double      ratio = 0; ///< court coefficient over abrasive coefficient [-]
  std::string source;    ///< a worn pair after known hours, or a named publication
};

/// The one way from an abrasive coefficient to a court. Throws InvalidParameter unless 0 < ratio < 1 and the
/// source is named.
inline CourtWear court_wear(const AbrasiveWear &abrasive, const CourtOverAbrasive &scale)
{
  require(scale.ratio > 0 && scale.ratio < 1, "court over abrasive wear", scale.ratio,
          "a ratio above 0 and below 1");
  require(!scale.source.empty(), "court over abrasive wear", scale.ratio,
          "its source as well: a worn pair after known hours, or a named publication");
  return CourtWear(scale.ratio * abrasive.value());
}
} // namespace solemech::materials
