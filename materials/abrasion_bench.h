// SPDX-License-Identifier: Apache-2.0
// Arithmetic of two abrasion benches: the rotating drum of ISO 4649 (dimensions after ISO 20871, formula from
// memory), and a rotary tool whose abrasive sleeve is held on a piece for some seconds; and how the
// coefficient on an abrasive follows from the rubber. A sleeve at rest grinds a groove of its own radius: the
// section of depth h is the circular segment R^2 acos(1 - h/R) - (R - h) sqrt(2 R h - h^2), and the volume
// grows as k F v t (Archard).
#pragma once

#include "materials/hardness.h"
#include "materials/wear.h"

#include "numerics/rising_root.h"

#include <numbers>
#include <vector>

namespace solemech::materials
{
/// Drum with abrasive cloth, the piece not turning.
struct DrumBench
{
  double drum_diameter = 0.150;   ///< [m]
  double speed = 40.0 / 60;       ///< [1/s]
  double load = 10;               ///< [N]
  double way = 40;                ///< [m]
  double piece_diameter = 16e-3;  ///< [m]
  double traverse = 4.20e-3;      ///< sideways, a turn [m]
  double reference_loss = 200e-6; ///< that a cloth of nominal sharpness takes from the reference rubber [kg]

  double rim_speed() const { return std::numbers::pi * drum_diameter * speed; } ///< [m/s]
  double turns() const { return way / (std::numbers::pi * drum_diameter); }
  double duration() const { return way / rim_speed(); }                                        ///< [s]
  double piece_area() const { return std::numbers::pi / 4 * piece_diameter * piece_diameter; } ///< [m2]
  double friction_work(double friction) const { return friction * load * way; }                ///< [J]

  /// Relative volume loss [m3]: loss of mass [kg] over density [kg/m3], corrected to the nominal sharpness of
  /// the cloth by what it took from the reference rubber [kg]. Throws InvalidParameter for a cloth that is
  /// not accepted (180 to 220 mg).
  double volume_loss(double mass_loss, double density, double cloth_loss) const
  {
    require_not_negative("mass lost", mass_loss);
    require_positive("density", density);
    require(cloth_loss >= 0.9 * reference_loss && cloth_loss <= 1.1 * reference_loss,
            "loss of the reference rubber", cloth_loss,
            "0.18 to 0.22 g (in kg); a cloth outside of that is to be run in or replaced");
    return mass_loss / density * reference_loss / cloth_loss;
  }
  double       depth(double volume) const { return volume / piece_area(); } ///< [m]
  AbrasiveWear coefficient(double volume) const { return AbrasiveWear(volume / (load * way)); }
};

/// What withstands abrasion in a rubber.
struct RubberToughness
{
  double youngs_modulus = 0;      ///< [Pa]
  double tensile_strength = 15e6; ///< [Pa]; 15 MPa for an outsole rubber: common practice, no source
  double elongation = 4.5;        ///< at break [-]; 450 %: common practice, no source
  double friction = 1;            ///< on the abrasive [-]; about 1: common practice, no source

  /// From a Shore A reading of 20 to 80 by Gent's relation, the rest by default.
  static RubberToughness from_hardness(double shore_a) { return {.youngs_modulus = modulus_gent(shore_a)}; }
};

/// Friction over stiffness and work at break: what wear by sharp grains goes with [1/Pa2].
/// Throws InvalidParameter unless all numbers are above 0.
inline double softness(const RubberToughness &rubber)
{
  require_positive("Young's modulus", rubber.youngs_modulus);
  require_positive("tensile strength", rubber.tensile_strength);
  require_positive("elongation at break", rubber.elongation);
  require_positive("friction on the abrasive", rubber.friction);
  return rubber.friction / (rubber.youngs_modulus * rubber.tensile_strength * rubber.elongation);
}

/// Wear of a rubber on a court on which another one's is known, by the same law (Ratner, Lancaster; from
/// memory).
inline CourtWear court_wear_of(const RubberToughness &rubber, const CourtWear &known,
                               const RubberToughness &known_rubber)
{
  return CourtWear(known.value() * softness(rubber) / softness(known_rubber));
}

/// An abrasive by its severity C: k = C mu/(E sigma_b eps_b). S.B. Ratner et al. 1964, J.K. Lancaster 1969
/// (from memory): wear goes as friction over hardness and work at break; the hardness that a sharp grain
/// meets in rubber is its mean pressure as a cone, (E*/2) tan(beta) (Sneddon), hence proportional to E, and
/// the slope of the grains goes into C. C is fixed by one rubber whose loss on this abrasive is known, and
/// then ranks the others.
class Abrasive
{
public:
  static Abrasive from_known(const RubberToughness &rubber, const AbrasiveWear &loss)
  {
    return Abrasive(loss.value() / softness(rubber));
  }
  AbrasiveWear wear_of(const RubberToughness &rubber) const
  {
    return AbrasiveWear(severity_ * softness(rubber));
  }
  double severity() const { return severity_; } ///< C [Pa]

private:
  explicit Abrasive(double severity) : severity_(severity) {}
  double severity_;
};

/// A layer of the piece under the sleeve.
struct AbradedLayer
{
  double       thickness; ///< [m]
  AbrasiveWear wear;
};

struct AbradedDepth
{
  double depth = 0;            ///< [m]
  bool   wore_through = false; ///< the depth is a lower bound: the piece was at its end before the time was
  double seconds = 0;          ///< spent in the piece [s]
};

/// Sleeve on a rotary tool, held in one place.
struct RotaryTool
{
  double sleeve_diameter = 13e-3; ///< [m]
  double sleeve_width = 13e-3;    ///< on the piece [m]
  double speed = 0;               ///< [1/s]
  double force = 0;               ///< [N]

  double surface_speed() const { return std::numbers::pi * sleeve_diameter * speed; }            ///< [m/s]
  double power(double friction) const { return friction * force * surface_speed(); }             ///< [W]
  double removal(const AbrasiveWear &wear) const { return wear.volume(force, surface_speed()); } ///< [m3/s]

  /// Section of a groove [m2] of the depth [m]: a segment, and straight walls below the sleeve's radius.
  double groove_section(double depth) const
  {
    const double r = 0.5 * sleeve_diameter, h = std::min(depth, r);
    return r * r * std::acos(1 - h / r) - (r - h) * std::sqrt(h * (2 * r - h)) + 2 * r * (depth - h);
  }
  /// Width of the groove at the surface [m].
  double groove_width(double depth) const
  {
    const double r = 0.5 * sleeve_diameter, h = std::min(depth, r);
    return 2 * std::sqrt(h * (2 * r - h));
  }

  /// Depth after some seconds in layers, the outermost first; each is ground at its own rate from the moment
  /// its upper face is reached. Throws InvalidParameter for a tool that does not turn or press.
  AbradedDepth depth_after(double seconds, const std::vector<AbradedLayer> &layers) const
  {
    check(seconds);
    AbradedDepth out;
    for (const auto &layer : layers)
    {
      const double rate = removal(layer.wear) / sleeve_width, start = groove_section(out.depth);
      const double bottom = out.depth + layer.thickness, left = seconds - out.seconds;
      const double needed = (groove_section(bottom) - start) / rate;
      if (!(needed <= left))
      {
        out.depth = numerics::rising_root([&](double h) { return groove_section(h) - start - rate * left; },
                                          out.depth, bottom);
        out.seconds = seconds;
        return out;
      }
      out.depth = bottom;
      out.seconds += needed;
    }
    out.wore_through = true;
    return out;
  }

  /// Coefficient of a rubber in which the tool ground to `depth` [m]; a lower bound when it wore through.
  AbrasiveWear wear_from(double depth, double seconds) const
  {
    check(seconds);
    require_positive("depth ground", depth);
    return AbrasiveWear(groove_section(depth) * sleeve_width / (force * surface_speed() * seconds));
  }

private:
  void check(double seconds) const
  {
    require_positive("sleeve diameter", sleeve_diameter);
    require_positive("width of the sleeve on the piece", sleeve_width);
    require_positive("speed of the tool", speed);
    require_positive("force of the hand", force);
    require_positive("seconds", seconds);
  }
};
} // namespace solemech::materials
