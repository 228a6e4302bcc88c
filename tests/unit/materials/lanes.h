// SPDX-License-Identifier: Apache-2.0
// Four doubles that go through a law together, with a mask in place of a bool: the plainest model of a SIMD
// pack. A law that decides by `if` on a number does not compile for it.
#pragma once

#include <array>
#include <cmath>

namespace solemech::tests
{
struct Mask
{
  std::array<bool, 4> lane{};
};

struct Lanes
{
  std::array<double, 4> lane{};

  Lanes() = default;
  explicit Lanes(double all) { lane.fill(all); }
};

template <typename Function>
Lanes each(const Lanes &a, const Lanes &b, Function f)
{
  Lanes out;
  for (std::size_t i = 0; i < 4; ++i)
    out.lane[i] = f(a.lane[i], b.lane[i]);
  return out;
}

inline Lanes operator+(const Lanes &a, const Lanes &b)
{
  return each(a, b, [](double x, double y) { return x + y; });
}
inline Lanes operator-(const Lanes &a, const Lanes &b)
{
  return each(a, b, [](double x, double y) { return x - y; });
}
inline Lanes operator*(const Lanes &a, const Lanes &b)
{
  return each(a, b, [](double x, double y) { return x * y; });
}
inline Lanes operator/(const Lanes &a, const Lanes &b)
{
  return each(a, b, [](double x, double y) { return x / y; });
}
inline Lanes operator+(double a, const Lanes &b)
{
  return Lanes(a) + b;
}
inline Lanes operator-(double a, const Lanes &b)
{
  return Lanes(a) - b;
}
inline Lanes operator*(double a, const Lanes &b)
{
  return Lanes(a) * b;
}
inline Lanes operator/(double a, const Lanes &b)
{
  return Lanes(a) / b;
}
inline Lanes operator+(const Lanes &a, double b)
{
  return a + Lanes(b);
}
inline Lanes operator-(const Lanes &a, double b)
{
  return a - Lanes(b);
}
inline Lanes operator*(const Lanes &a, double b)
{
  return a * Lanes(b);
}
inline Lanes operator/(const Lanes &a, double b)
{
  return a / Lanes(b);
}

inline Mask operator<(const Lanes &a, const Lanes &b)
{
  Mask out;
  for (std::size_t i = 0; i < 4; ++i)
    out.lane[i] = a.lane[i] < b.lane[i];
  return out;
}
inline Mask operator>(const Lanes &a, const Lanes &b)
{
  return b < a;
}
inline Mask operator<(const Lanes &a, double b)
{
  return a < Lanes(b);
}
inline Mask operator>(const Lanes &a, double b)
{
  return Lanes(b) < a;
}

inline Lanes exp(const Lanes &a)
{
  return each(a, a, [](double x, double) { return std::exp(x); });
}
inline Lanes expm1(const Lanes &a)
{
  return each(a, a, [](double x, double) { return std::expm1(x); });
}
inline Lanes log(const Lanes &a)
{
  return each(a, a, [](double x, double) { return std::log(x); });
}
inline Lanes log1p(const Lanes &a)
{
  return each(a, a, [](double x, double) { return std::log1p(x); });
}
inline Lanes sqrt(const Lanes &a)
{
  return each(a, a, [](double x, double) { return std::sqrt(x); });
}
inline Lanes select(const Mask &mask, const Lanes &a, const Lanes &b)
{
  Lanes out;
  for (std::size_t i = 0; i < 4; ++i)
    out.lane[i] = mask.lane[i] ? a.lane[i] : b.lane[i];
  return out;
}
} // namespace solemech::tests
