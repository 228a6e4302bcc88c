// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/plan_outline.h"

#include "geometry/errors.h"

#include "numerics/rising_root.h"

#include <algorithm>
#include <cmath>

namespace solemech::geometry::plan
{
namespace
{
constexpr std::size_t n_samples = 2048;
}

Outline::Outline(const ClosedCurve &curve) : curve_(curve)
{
  double      area = 0;
  std::size_t heel = 0;
  const auto  drawn = [&](std::size_t i) { return curve(static_cast<double>(i % n_samples) / n_samples); };
  for (std::size_t i = 0; i < n_samples; ++i)
  {
    area += 0.5 * cross(drawn(i), drawn(i + 1));
    if (drawn(i)[0] < drawn(heel)[0])
      heel = i;
  }
  sense_ = area < 0 ? -1 : 1;
  start_ = static_cast<double>(heel) / n_samples;
  for (std::size_t i = 0; i <= n_samples; ++i)
    samples_.push_back(at(static_cast<double>(i) / n_samples));
  length_.push_back(0);
  for (std::size_t i = 1; i <= n_samples; ++i)
  {
    length_.push_back(length_.back() + length(samples_[i] - samples_[i - 1]));
    if (samples_[i][0] > samples_[toe_][0])
      toe_ = i;
  }
  if (!(std::abs(area) > 1e-3 * length_.back() * length_.back() / 16))
    throw InvalidGeometry("area of the outline", std::abs(area) * 1e4, "cm2", "that of a closed shape");
  for (std::size_t i = 1; i <= n_samples; ++i)
    if (const double ahead = samples_[i][0] - samples_[i - 1][0]; i <= toe_ ? ahead < 0 : ahead > 0)
      throw InvalidGeometry("place where the outline turns back along the foot", samples_[i][0],
                            "none: each side runs on from heel to toe");
}

PlanPoint Outline::at(double place) const
{
  const double parameter = start_ + sense_ * place;
  return curve_(parameter - std::floor(parameter));
}

double Outline::low_place(double x) const
{
  return numerics::rising_root([&](double place) { return at(place)[0] - x; }, 0,
                               static_cast<double>(toe_) / n_samples);
}

double Outline::high_place(double x) const
{
  return numerics::rising_root([&](double place) { return x - at(place)[0]; },
                               static_cast<double>(toe_) / n_samples, 1);
}

double Outline::widest() const
{
  double widest = 0;
  for (unsigned i = 1; i < 100; ++i)
  {
    const double x = x_least() + i * 0.01 * (x_most() - x_least());
    widest = std::max(widest, at(high_place(x))[1] - at(low_place(x))[1]);
  }
  return widest;
}

double Outline::length_to(double place) const
{
  const double turns = std::floor(place), within = (place - turns) * n_samples;
  const auto   i = std::min(static_cast<std::size_t>(within), n_samples - 1);
  return turns * length_.back() + length_[i] +
         (within - static_cast<double>(i)) * (length_[i + 1] - length_[i]);
}

double Outline::on_the_way(double from, double to, double share) const
{
  const double wanted = length_to(from) + share * (length_to(to) - length_to(from));
  return numerics::rising_root([&](double place) { return length_to(place) - wanted; }, from, to);
}
} // namespace solemech::geometry::plan
