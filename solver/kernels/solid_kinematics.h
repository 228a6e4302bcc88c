// SPDX-License-Identifier: Apache-2.0
// Three dimensions: motion, principal strains and the way back (stress and spatial tangent of an isotropic
// law from its response in principal logarithmic strains), and what a node adds to force and stiffness.
// Components are ordered xx, yy, zz, xy, yz, zx; of the tangent row by row of its lower triangle. The
// eigenproblem is solved by a fixed number of cyclic Jacobi rotations of b - I, the same for all lanes, so
// that small strains keep all digits and equal ones need no care (Golub & Van Loan, Matrix Computations,
// sec. 8.5; tangent: Ogden, Non-Linear Elastic Deformations, ch. 6; both from memory).
#pragma once

#include "materials/law.h"
#include "solver/kernels/element_group.h"
#include "solver/kernels/point_response.h"

#include <array>
#include <cmath>

namespace solemech::solver
{
/// Symmetric tensor: xx, yy, zz, xy, yz, zx.
template <typename Number>
using SolidTensor = std::array<Number, 6>;

/// Principal frame of a symmetric tensor.
template <typename Number>
struct SolidFrame
{
  materials::LogStrains<Number>        strains{}; ///< principal logarithmic strains
  std::array<Number, 3>                excess{};  ///< principal values of b - I
  std::array<std::array<Number, 3>, 3> axes;      ///< unit vectors, one a principal value

  /// A frame for what is the same in all.
  static SolidFrame any()
  {
    const Number o(0.0), l(1.0);
    return {{o, o, o}, {o, o, o}, {{{l, o, o}, {o, l, o}, {o, o, l}}}};
  }

  /// Frame of b given by b - I.
  static SolidFrame of_excess(const SolidTensor<Number> &e)
  {
    using std::log1p;
    SolidFrame frame = any();
    frame.excess = frame.turn_to(e);
    for (unsigned a = 0; a < 3; ++a)
      frame.strains[a] = 0.5 * log1p(frame.excess[a]);
    return frame;
  }

  /// Frame of a logarithmic strain tensor.
  static SolidFrame of_strain(const SolidTensor<Number> &e)
  {
    using std::expm1;
    SolidFrame frame = any();
    frame.strains = frame.turn_to(e);
    for (unsigned a = 0; a < 3; ++a)
      frame.excess[a] = expm1(2.0 * frame.strains[a]);
    return frame;
  }

  /// The tensor with the principal values `v` in this frame.
  SolidTensor<Number> tensor(const std::array<Number, 3> &v) const
  {
    SolidTensor<Number> out{};
    for (unsigned a = 0; a < 3; ++a)
    {
      const auto &[x, y, z] = axes[a];
      const Number vx = v[a] * x, vy = v[a] * y, vz = v[a] * z;
      out[0] += vx * x, out[1] += vy * y, out[2] += vz * z;
      out[3] += vx * y, out[4] += vy * z, out[5] += vz * x;
    }
    return out;
  }

  /// Adds stress and tangent of a response given in this frame.
  void add(const materials::SpectralResponse<Number> &response, PointResponse<Number, 6> &sum) const
  {
    const auto &t = response.stress;
    const auto &m = response.moduli;
    const auto  stress = tensor(t);
    for (unsigned i = 0; i < 6; ++i)
      sum.stress[i] += stress[i];

    // Normal part: sum of c_ab (n_a n_a)(n_b n_b).
    const std::array<SolidTensor<Number>, 3>   normal{dyad(0, 0), dyad(1, 1), dyad(2, 2)};
    const std::array<std::array<Number, 3>, 3> c{
      {{m[0] - 2.0 * t[0], m[3], m[4]}, {m[3], m[1] - 2.0 * t[1], m[5]}, {m[4], m[5], m[2] - 2.0 * t[2]}}};
    for (unsigned a = 0; a < 3; ++a)
    {
      SolidTensor<Number> row;
      for (unsigned i = 0; i < 6; ++i)
        row[i] = c[a][0] * normal[0][i] + c[a][1] * normal[1][i] + c[a][2] * normal[2][i];
      add_product(normal[a], row, sum);
    }
    // Shear of each principal plane: modulus times (n_a n_b + n_b n_a)(n_a n_b + n_b n_a).
    for (const auto &[a, b, ab] : {std::array{0, 1, 3}, std::array{0, 2, 4}, std::array{1, 2, 5}})
    {
      SolidTensor<Number> plane = dyad(a, b);
      for (unsigned i = 0; i < 3; ++i)
        plane[i] = 2.0 * plane[i];
      const Number        shear = shear_modulus(response, a, b, ab);
      SolidTensor<Number> row;
      for (unsigned i = 0; i < 6; ++i)
        row[i] = shear * plane[i];
      add_product(plane, row, sum);
    }
  }

private:
  /// (tau_a - tau_b)/(2 tanh x) - (tau_a + tau_b)/2, x = eps_a - eps_b; for nearly equal strains the quotient
  /// goes over into its limit.
  Number shear_modulus(const materials::SpectralResponse<Number> &response, int a, int b, int ab) const
  {
    using materials::select;
    const auto  &t = response.stress;
    const auto  &m = response.moduli;
    const Number tanh = (excess[a] - excess[b]) / (2.0 + excess[a] + excess[b]); // (b_a - b_b)/(b_a + b_b)
    const auto   apart = tanh * tanh > 1e-10;
    const Number quotient = select(apart, 0.5 * (t[a] - t[b]) / select(apart, tanh, Number(1.0)),
                                   0.25 * (m[a] + m[b] - 2.0 * m[ab]));
    return quotient - 0.5 * (t[a] + t[b]);
  }

  /// n_a n_a, or the off-diagonal entries of n_a n_b + n_b n_a with the halves of its diagonal.
  SolidTensor<Number> dyad(int a, int b) const
  {
    const auto &p = axes[a], &q = axes[b];
    if (a == b)
      return {p[0] * p[0], p[1] * p[1], p[2] * p[2], p[0] * p[1], p[1] * p[2], p[2] * p[0]};
    return {p[0] * q[0],
            p[1] * q[1],
            p[2] * q[2],
            p[0] * q[1] + p[1] * q[0],
            p[1] * q[2] + p[2] * q[1],
            p[2] * q[0] + p[0] * q[2]};
  }

  /// Adds the lower triangle of p q, which is symmetric when all terms are summed.
  static void add_product(const SolidTensor<Number> &p, const SolidTensor<Number> &q,
                          PointResponse<Number, 6> &sum)
  {
    unsigned entry = 0;
    for (unsigned i = 0; i < 6; ++i)
      for (unsigned j = 0; j <= i; ++j, ++entry)
        sum.tangent[entry] += p[i] * q[j];
  }

  static constexpr unsigned n_sweeps = 5;

  /// Turns the axes, at first those of the coordinates, into those of `e`; returns its principal values.
  std::array<Number, 3> turn_to(const SolidTensor<Number> &e)
  {
    std::array<Number, 3> diagonal{e[0], e[1], e[2]};
    Number                xy = e[3], yz = e[4], zx = e[5];
    for (unsigned sweep = 0; sweep < n_sweeps; ++sweep)
    {
      rotate(0, 1, diagonal, xy, zx, yz);
      rotate(0, 2, diagonal, zx, xy, yz);
      rotate(1, 2, diagonal, yz, xy, zx);
    }
    return diagonal;
  }

  /// One rotation in the plane (p, q) that makes `pq` zero; `pr` and `qr` are the entries with the third
  /// axis.
  void rotate(unsigned p, unsigned q, std::array<Number, 3> &diagonal, Number &pq, Number &pr, Number &qr)
  {
    using materials::select;
    using std::sqrt;
    const Number gap = diagonal[q] - diagonal[p], twice = 2.0 * pq;
    const Number length = sqrt(gap * gap + twice * twice);
    const Number below = select(gap < 0.0, gap - length, gap + length);
    const Number t = twice / select(length > 1e-300, below, Number(1.0)); // tangent of the angle
    const Number c = 1.0 / sqrt(1.0 + t * t), s = t * c;
    diagonal[p] -= t * pq;
    diagonal[q] += t * pq;
    pq = Number(0.0);
    turn(c, s, pr, qr);
    for (unsigned i = 0; i < 3; ++i)
      turn(c, s, axes[p][i], axes[q][i]);
  }

  static void turn(const Number &c, const Number &s, Number &p, Number &q)
  {
    const Number before = p;
    p = c * before - s * q;
    q = s * before + c * q;
  }
};

/// Displacement gradient H = F - I and what follows from it.
template <typename Number>
struct SolidMotion
{
  std::array<std::array<Number, 3>, 3> h;

  /// Adds a node's share of the gradient.
  void add(const std::array<Number, 3> &g, double, const Number *u)
  {
    for (unsigned i = 0; i < 3; ++i)
      for (unsigned j = 0; j < 3; ++j)
        h[i][j] += u[i] * g[j];
  }

  Number volume_ratio() const
  {
    const auto f = gradient();
    return f[0][0] * (f[1][1] * f[2][2] - f[1][2] * f[2][1]) +
           f[0][1] * (f[1][2] * f[2][0] - f[1][0] * f[2][2]) +
           f[0][2] * (f[1][0] * f[2][1] - f[1][1] * f[2][0]);
  }

  /// b - I = H + H^T + H H^T.
  SolidTensor<Number> left_excess() const
  {
    const auto entry = [&](unsigned i, unsigned j) {
      return h[i][j] + h[j][i] + (h[i][0] * h[j][0] + h[i][1] * h[j][1] + h[i][2] * h[j][2]);
    };
    return {entry(0, 0), entry(1, 1), entry(2, 2), entry(0, 1), entry(1, 2), entry(2, 0)};
  }

  /// C - I = H + H^T + H^T H.
  SolidTensor<Number> right_excess() const
  {
    const auto entry = [&](unsigned i, unsigned j) {
      return h[i][j] + h[j][i] + (h[0][i] * h[0][j] + h[1][i] * h[1][j] + h[2][i] * h[2][j]);
    };
    return {entry(0, 0), entry(1, 1), entry(2, 2), entry(0, 1), entry(1, 2), entry(2, 0)};
  }

  /// F v.
  std::array<Number, 3> carried(const std::array<Number, 3> &v) const
  {
    auto out = v;
    for (unsigned i = 0; i < 3; ++i)
      for (unsigned j = 0; j < 3; ++j)
        out[i] += h[i][j] * v[j];
    return out;
  }

  /// F a F^T.
  SolidTensor<Number> push_forward(const SolidTensor<Number> &a) const
  {
    const auto                           f = gradient();
    std::array<std::array<Number, 3>, 3> half; // F a
    for (unsigned i = 0; i < 3; ++i)
      half[i] = {f[i][0] * a[0] + f[i][1] * a[3] + f[i][2] * a[5],
                 f[i][0] * a[3] + f[i][1] * a[1] + f[i][2] * a[4],
                 f[i][0] * a[5] + f[i][1] * a[4] + f[i][2] * a[2]};
    const auto entry = [&](unsigned i, unsigned j) {
      return half[i][0] * f[j][0] + half[i][1] * f[j][1] + half[i][2] * f[j][2];
    };
    return {entry(0, 0), entry(1, 1), entry(2, 2), entry(0, 1), entry(1, 2), entry(2, 0)};
  }

  /// The motion whose gradient is F^-1.
  SolidMotion inverse() const
  {
    const auto   f = gradient();
    const Number det = 1.0 / volume_ratio();
    SolidMotion  back;
    for (unsigned i = 0; i < 3; ++i)
      for (unsigned j = 0; j < 3; ++j)
      {
        const unsigned k = (i + 1) % 3, l = (i + 2) % 3, m = (j + 1) % 3, n = (j + 2) % 3;
        back.h[i][j] = (f[m][k] * f[n][l] - f[m][l] * f[n][k]) * det - (i == j ? 1.0 : 0.0);
      }
    return back;
  }

  double vertical_stretch(unsigned lane) const { return 1 + h[2][2][lane]; }

  /// Whether an element of this volume ratio `j` is inside out or beyond its least volume in any lane.
  bool refused(const Number &j, double smallest_ratio) const { return any(j < smallest_ratio); }

private:
  std::array<std::array<Number, 3>, 3> gradient() const
  {
    auto f = h;
    for (unsigned i = 0; i < 3; ++i)
      f[i][i] = 1.0 + f[i][i];
    return f;
  }
};

template <typename Number>
struct SolidKinematics
{
  using Tensor = SolidTensor<Number>;
  using Motion = SolidMotion<Number>;
  using Frame = SolidFrame<Number>;
  using Response = PointResponse<Number, 6>;
  using Gradient = std::array<Number, 3>; ///< current dN/dx, dN/dy, dN/dz

  /// Current gradient of a node; `back` is the inverse motion.
  static Gradient current(const Motion &back, const std::array<Number, 3> &g, const Number &)
  {
    Gradient out = g;
    for (unsigned i = 0; i < 3; ++i)
      for (unsigned j = 0; j < 3; ++j)
        out[j] += g[i] * back.h[i][j];
    return out;
  }

  static std::array<Number, 3> divergence(const Gradient &g) { return g; }

  /// Force of a node from the weighted stress.
  static void add_force(const Tensor &stress, const Gradient &g, Number *f)
  {
    const auto along = times(stress, g);
    for (unsigned i = 0; i < 3; ++i)
      f[i] += along[i];
  }

  /// What a node b brings to its blocks: stress . g_b, and the weighted tangent times the strains of its
  /// three displacements.
  struct Column
  {
    std::array<Number, 3>                stress;
    std::array<std::array<Number, 6>, 3> tangent;
  };
  static Column column(const Response &weighted, const Gradient &g)
  {
    Column out{times(weighted.stress, g), {}};
    for (unsigned i = 0; i < 6; ++i)
    {
      const auto d = [&](unsigned j) -> const Number & {
        return weighted.tangent[i > j ? i * (i + 1) / 2 + j : j * (j + 1) / 2 + i];
      };
      out.tangent[0][i] = d(0) * g[0] + d(3) * g[1] + d(5) * g[2];
      out.tangent[1][i] = d(1) * g[1] + d(3) * g[0] + d(4) * g[2];
      out.tangent[2][i] = d(2) * g[2] + d(4) * g[1] + d(5) * g[0];
    }
    return out;
  }

  /// B_a^T D B_b + g_a . stress . g_b, row by row.
  static void add_block(const Gradient &g, const Column &b, Number *k)
  {
    const Number geometric = g[0] * b.stress[0] + g[1] * b.stress[1] + g[2] * b.stress[2];
    for (unsigned j = 0; j < 3; ++j)
    {
      const auto along = times(b.tangent[j], g);
      for (unsigned i = 0; i < 3; ++i)
        k[3 * i + j] += i == j ? along[i] + geometric : along[i];
    }
  }

  /// Fields for a picture from Cauchy stress and lane values.
  static PointFields<3> fields(const std::array<double, 6> &cauchy, double stretch, double volume_ratio,
                               double energy, double dissipated)
  {
    return {cauchy, stretch, volume_ratio, energy, dissipated};
  }

private:
  static std::array<Number, 3> times(const Tensor &t, const Gradient &g)
  {
    return {t[0] * g[0] + t[3] * g[1] + t[5] * g[2], t[3] * g[0] + t[1] * g[1] + t[4] * g[2],
            t[5] * g[0] + t[4] * g[1] + t[2] * g[2]};
  }
};
} // namespace solemech::solver
