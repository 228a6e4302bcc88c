// SPDX-License-Identifier: Apache-2.0
// Four doubles that are worked on together, one lane an element. One source serves every instruction set: the
// compiler lowers the arithmetic, libmvec supplies the elementary functions (errors below 4 ulp; GNU C
// library). `Isa` only keeps the instantiations of different translation units apart for the linker.
#pragma once

#include <cmath>

extern "C" {
typedef double SolemechLanes2 __attribute__((vector_size(16)));
SolemechLanes2 _ZGVbN2v_expm1(SolemechLanes2);
SolemechLanes2 _ZGVbN2v_log1p(SolemechLanes2);
#ifdef __AVX2__
typedef double SolemechLanes4 __attribute__((vector_size(32)));
SolemechLanes4 _ZGVdN4v_expm1(SolemechLanes4);
SolemechLanes4 _ZGVdN4v_log1p(SolemechLanes4);
#endif
}

namespace solemech::solver
{
inline constexpr unsigned n_lanes = 4;

struct Baseline
{
};
struct Avx2
{
};

/// Lanes for which a comparison holds.
template <typename Isa>
struct Mask
{
  typedef long long Lanes __attribute__((vector_size(32)));
  Lanes             lanes;
};

template <typename Isa>
struct Pack
{
  typedef double Lanes __attribute__((vector_size(32)));
  Lanes          lanes;

  Pack() : lanes{0, 0, 0, 0} {}
  explicit Pack(double value) : lanes{value, value, value, value} {}

  static Pack load(const double *from)
  {
    Pack pack;
    __builtin_memcpy(&pack.lanes, from, sizeof(Lanes));
    return pack;
  }
  void   store(double *to) const { __builtin_memcpy(to, &lanes, sizeof(Lanes)); }
  double operator[](unsigned lane) const { return lanes[lane]; }
  void   set(unsigned lane, double value) { lanes[lane] = value; }

  Pack &operator+=(const Pack &b)
  {
    lanes += b.lanes;
    return *this;
  }
  Pack &operator-=(const Pack &b)
  {
    lanes -= b.lanes;
    return *this;
  }

  friend Pack operator+(Pack a, const Pack &b)
  {
    a.lanes += b.lanes;
    return a;
  }
  friend Pack operator-(Pack a, const Pack &b)
  {
    a.lanes -= b.lanes;
    return a;
  }
  friend Pack operator*(Pack a, const Pack &b)
  {
    a.lanes *= b.lanes;
    return a;
  }
  friend Pack operator/(Pack a, const Pack &b)
  {
    a.lanes /= b.lanes;
    return a;
  }
  friend Pack operator-(Pack a)
  {
    a.lanes = -a.lanes;
    return a;
  }
  friend Pack operator+(double a, const Pack &b) { return Pack(a) + b; }
  friend Pack operator+(const Pack &a, double b) { return a + Pack(b); }
  friend Pack operator-(double a, const Pack &b) { return Pack(a) - b; }
  friend Pack operator-(const Pack &a, double b) { return a - Pack(b); }
  friend Pack operator*(double a, const Pack &b) { return Pack(a) * b; }
  friend Pack operator*(const Pack &a, double b) { return a * Pack(b); }
  friend Pack operator/(double a, const Pack &b) { return Pack(a) / b; }
  friend Pack operator/(const Pack &a, double b) { return a / Pack(b); }

  friend Mask<Isa> operator<(const Pack &a, const Pack &b) { return {a.lanes < b.lanes}; }
  friend Mask<Isa> operator>(const Pack &a, const Pack &b) { return {a.lanes > b.lanes}; }
  friend Mask<Isa> operator<(const Pack &a, double b) { return a < Pack(b); }
  friend Mask<Isa> operator>(const Pack &a, double b) { return a > Pack(b); }
  friend Mask<Isa> operator<(double a, const Pack &b) { return Pack(a) < b; }
  friend Mask<Isa> operator>(double a, const Pack &b) { return Pack(a) > b; }

  friend Pack sqrt(Pack a)
  {
    for (unsigned i = 0; i < n_lanes; ++i)
      a.lanes[i] = __builtin_sqrt(a.lanes[i]);
    return a;
  }
};

template <typename Isa>
Pack<Isa> select(const Mask<Isa> &mask, const Pack<Isa> &if_true, const Pack<Isa> &if_false)
{
  Pack<Isa> out;
  out.lanes = mask.lanes ? if_true.lanes : if_false.lanes;
  return out;
}
template <typename Isa>
Pack<Isa> select(const Mask<Isa> &mask, double if_true, const Pack<Isa> &if_false)
{
  return select(mask, Pack<Isa>(if_true), if_false);
}
template <typename Isa>
Pack<Isa> select(const Mask<Isa> &mask, const Pack<Isa> &if_true, double if_false)
{
  return select(mask, if_true, Pack<Isa>(if_false));
}
template <typename Isa>
bool any(const Mask<Isa> &mask)
{
  return mask.lanes[0] || mask.lanes[1] || mask.lanes[2] || mask.lanes[3];
}

inline Pack<Baseline> expm1(const Pack<Baseline> &a)
{
  const SolemechLanes2 low = _ZGVbN2v_expm1(SolemechLanes2{a.lanes[0], a.lanes[1]});
  const SolemechLanes2 high = _ZGVbN2v_expm1(SolemechLanes2{a.lanes[2], a.lanes[3]});
  Pack<Baseline>       out;
  out.lanes = Pack<Baseline>::Lanes{low[0], low[1], high[0], high[1]};
  return out;
}
inline Pack<Baseline> log1p(const Pack<Baseline> &a)
{
  const SolemechLanes2 low = _ZGVbN2v_log1p(SolemechLanes2{a.lanes[0], a.lanes[1]});
  const SolemechLanes2 high = _ZGVbN2v_log1p(SolemechLanes2{a.lanes[2], a.lanes[3]});
  Pack<Baseline>       out;
  out.lanes = Pack<Baseline>::Lanes{low[0], low[1], high[0], high[1]};
  return out;
}
#ifdef __AVX2__
inline Pack<Avx2> expm1(Pack<Avx2> a)
{
  a.lanes = _ZGVdN4v_expm1(a.lanes);
  return a;
}
inline Pack<Avx2> log1p(Pack<Avx2> a)
{
  a.lanes = _ZGVdN4v_log1p(a.lanes);
  return a;
}
#endif
} // namespace solemech::solver
