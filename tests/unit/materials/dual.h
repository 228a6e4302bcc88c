// SPDX-License-Identifier: Apache-2.0
// A number that carries its derivatives to three variables (forward differentiation): derivatives of the
// laws to rounding, without a difference step. It also proves that a law serves numbers other than double.
#pragma once

#include <array>
#include <cmath>

namespace solemech::tests
{
struct Dual
{
  double                value = 0;
  std::array<double, 3> d{}; ///< derivatives to the three variables

  Dual() = default;
  explicit Dual(double constant) : value(constant) {}
  Dual(double v, const std::array<double, 3> &slopes) : value(v), d(slopes) {}

  /// The variable number i.
  static Dual variable(double v, std::size_t i)
  {
    Dual x(v);
    x.d[i] = 1;
    return x;
  }
};

/// f(a) with the slope f'(a).
inline Dual chain(const Dual &a, double value, double slope)
{
  return {value, {slope * a.d[0], slope * a.d[1], slope * a.d[2]}};
}
/// f(a, b) with its two slopes.
inline Dual chain(const Dual &a, const Dual &b, double value, double by_a, double by_b)
{
  Dual out(value);
  for (std::size_t i = 0; i < 3; ++i)
    out.d[i] = by_a * a.d[i] + by_b * b.d[i];
  return out;
}

inline Dual operator+(const Dual &a, const Dual &b)
{
  return chain(a, b, a.value + b.value, 1, 1);
}
inline Dual operator-(const Dual &a, const Dual &b)
{
  return chain(a, b, a.value - b.value, 1, -1);
}
inline Dual operator*(const Dual &a, const Dual &b)
{
  return chain(a, b, a.value * b.value, b.value, a.value);
}
inline Dual operator/(const Dual &a, const Dual &b)
{
  return chain(a, b, a.value / b.value, 1 / b.value, -a.value / (b.value * b.value));
}
inline Dual operator+(double a, const Dual &b)
{
  return Dual(a) + b;
}
inline Dual operator-(double a, const Dual &b)
{
  return Dual(a) - b;
}
inline Dual operator*(double a, const Dual &b)
{
  return Dual(a) * b;
}
inline Dual operator/(double a, const Dual &b)
{
  return Dual(a) / b;
}
inline Dual operator+(const Dual &a, double b)
{
  return a + Dual(b);
}
inline Dual operator-(const Dual &a, double b)
{
  return a - Dual(b);
}
inline Dual operator*(const Dual &a, double b)
{
  return a * Dual(b);
}
inline Dual operator/(const Dual &a, double b)
{
  return a / Dual(b);
}
inline bool operator<(const Dual &a, const Dual &b)
{
  return a.value < b.value;
}
inline bool operator>(const Dual &a, const Dual &b)
{
  return a.value > b.value;
}
inline bool operator<(const Dual &a, double b)
{
  return a.value < b;
}
inline bool operator>(const Dual &a, double b)
{
  return a.value > b;
}

inline Dual exp(const Dual &a)
{
  return chain(a, std::exp(a.value), std::exp(a.value));
}
inline Dual expm1(const Dual &a)
{
  return chain(a, std::expm1(a.value), std::exp(a.value));
}
inline Dual log(const Dual &a)
{
  return chain(a, std::log(a.value), 1 / a.value);
}
inline Dual log1p(const Dual &a)
{
  return chain(a, std::log1p(a.value), 1 / (1 + a.value));
}
inline Dual sqrt(const Dual &a)
{
  return chain(a, std::sqrt(a.value), 0.5 / std::sqrt(a.value));
}
inline Dual select(bool mask, const Dual &a, const Dual &b)
{
  return mask ? a : b;
}
} // namespace solemech::tests
