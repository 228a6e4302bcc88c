// SPDX-License-Identifier: Apache-2.0
#include "solver/time/step_control.h"

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
namespace
{
constexpr double speed_error = 2e-5;                                   // per step, over the touch speed
constexpr double longest_share = 1.0 / 36, shortest_share = 1.0 / 100; // of the contact time
constexpr double first_share = 1.0 / 250;
constexpr double smallest_share = 1e-6; // a cut step below it means failure
constexpr double growth = 1.6;
} // namespace

StepControl::StepControl(double tolerance, double contact_time, double speed)
  : tolerance_(tolerance), contact_time_(contact_time), speed_(speed),
    step_(tolerance * first_share * contact_time)
{
}

void StepControl::advanced(double dt, double acceleration, double contact_time)
{
  contact_time_ = contact_time;
  double wished = growth * dt;
  if (n_known_ >= 1)
  {
    const double slope = (acceleration - last_acceleration_) / dt;
    if (n_known_ >= 2)
    {
      const double curvature = std::abs(slope - last_slope_) / (0.5 * (dt + last_dt_));
      const double allowed = std::cbrt(12 * speed_error * speed_ / std::max(curvature, 1e-30));
      wished = std::min(wished, tolerance_ * allowed);
    }
    last_slope_ = slope;
  }
  ++n_known_;
  last_dt_ = dt, last_acceleration_ = acceleration;
  const double longest = tolerance_ * longest_share * contact_time_;
  const double shortest = std::min(growth * dt, tolerance_ * shortest_share * contact_time_);
  step_ = std::clamp(wished, shortest, std::max(shortest, longest));
}

bool StepControl::cut()
{
  step_ *= 0.35;
  return step_ > smallest_share * contact_time_;
}

void StepControl::limit(double longest)
{
  step_ = std::min(step_, longest);
}
} // namespace solemech::solver
