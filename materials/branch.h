// SPDX-License-Identifier: Apache-2.0
// Elastic strain that fades and slips: the one update behind relaxing and slipping branches. A branch
// carries its own elastic logarithmic strain eps_e with W = mu |dev eps_e|^2 + kappa/2 (tr eps_e)^2. A step
// is split symmetrically: decay over half of it, push by the motion (the caller's kinematics give the trial
// strain), slip back to the cap, decay over the other half. With
//   E = exp(-dt/(2 tau)),  r = sqrt(2 W/mu),  s = min(1, cap/r)
// the strain ends at E s eps_trial. The stress there, E s tau(eps_trial), derives from E mu h(r), h being
// Huber's function (r^2/2 up to the cap, a straight line beyond), so that the tangent is symmetric. A branch
// with an infinite cap never slips.
// Source: S. Reese & S. Govindjee, Int. J. Solids Struct. 35 (1998) for the kinematics; G. Strang 1968 for
// the splitting; P.J. Huber 1964 for the function (all from memory).
#pragma once

#include "materials/hencky.h"

namespace solemech::materials
{
/// What one push of a branch gives back.
template <typename Number>
struct BranchResponse
{
  SpectralResponse<Number> response; ///< potential of the push [J/m3], stress at the step's end, moduli [Pa]
  Number strain_factor;              ///< E s: the elastic strain at the step's end over the trial strain [-]
  Number stored;                     ///< elastic energy at the step's end [J/m3]
  Number lost_in_decay;              ///< dissipated by the second half decay [J/m3], >= 0
  Number lost_in_slip;               ///< dissipated by slip, mu cap (r - cap) [J/m3], >= 0
};

struct Branch
{
  double shear_modulus = 0;   ///< g mu [Pa], > 0
  double bulk_modulus = 0;    ///< g kappa [Pa], >= 0; 0: an isochoric branch
  double relaxation_time = 1; ///< tau, of a slipping branch its recovery time [s], > 0; infinity: none
  double cap = std::numeric_limits<double>::infinity(); ///< largest r [-], > 0; infinity: a relaxing branch

  bool slips() const { return std::isfinite(cap); }

  /// Share E of the elastic strain left after `interval` [s]; call it with half the time step.
  double decay(double interval) const { return std::exp(-interval / relaxation_time); }

  /// Elastic energy [J/m3] of an elastic strain.
  template <typename Number>
  Number stored(const LogStrains<Number> &elastic_strains) const
  {
    return Hencky{shear_modulus, bulk_modulus}.energy(elastic_strains);
  }

  /// Energy [J/m3] dissipated when `stored_before` decays by the factor E of strain: W (1 - E^2).
  template <typename Number>
  static Number lost(const Number &stored_before, double remaining)
  {
    return stored_before * ((1 - remaining) * (1 + remaining));
  }

  /// Slip and second half decay of a trial strain that the first half decay and the motion have produced.
  /// @param trial_strains  principal elastic log strains after the motion [-]
  /// @param remaining      E = decay(dt/2), the same for both half decays [-]
  template <typename Number>
  BranchResponse<Number> push(const LogStrains<Number> &trial_strains, double remaining) const
  {
    BranchResponse<Number> out{Hencky{shear_modulus, bulk_modulus}.response(trial_strains), Number(1.0),
                               Number(0.0), Number(0.0), Number(0.0)};
    Number                 stored_after_slip = out.response.energy;
    if (slips())
    {
      limit(out);
      stored_after_slip = stored_after_slip * out.strain_factor * out.strain_factor;
    }
    out.strain_factor = remaining * out.strain_factor;
    out.stored = remaining * remaining * stored_after_slip;
    out.lost_in_decay = lost(stored_after_slip, remaining);

    out.response.energy = remaining * out.response.energy;
    for (auto &stress : out.response.stress)
      stress = remaining * stress;
    for (auto &modulus : out.response.moduli)
      modulus = remaining * modulus;
    return out;
  }

private:
  /// Brings the elastic response back to the cap where it is exceeded.
  template <typename Number>
  void limit(BranchResponse<Number> &out) const
  {
    using std::sqrt;
    auto        &trial = out.response;
    const Number square = trial.energy * (2 / shear_modulus); // r^2
    const auto   beyond = square > cap * cap;
    const Number r = sqrt(select(beyond, square, Number(cap * cap))); // never 0: the derivative stays finite
    const Number s = cap / r;
    const Number damping = select(beyond, 1.0 / (shear_modulus * r * r), Number(0.0));

    const auto tau = trial.stress;
    const auto reduce = [&](std::size_t i, std::size_t a, std::size_t b) {
      trial.moduli[i] = s * (trial.moduli[i] - damping * tau[a] * tau[b]);
    };
    reduce(0, 0, 0), reduce(1, 1, 1), reduce(2, 2, 2), reduce(3, 0, 1), reduce(4, 0, 2), reduce(5, 1, 2);
    for (auto &stress : trial.stress)
      stress = s * stress;

    out.strain_factor = s;
    out.lost_in_slip = shear_modulus * cap * (r - cap);
    // Huber's function: elastic below the cap, and past it what is stored at the cap plus what slip takes.
    trial.energy = select(beyond, Number(0.5 * shear_modulus * cap * cap + out.lost_in_slip), trial.energy);
  }
};
} // namespace solemech::materials
