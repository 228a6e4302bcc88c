// SPDX-License-Identifier: Apache-2.0
// A section (r, z) with a hoop or out-of-plane direction t: motion, principal strains and the way back
// (stress and spatial tangent of an isotropic law from its response in principal logarithmic strains), and
// what a node adds to force and stiffness. In plane strain the hoop terms vanish because 1/R is stored as
// zero. Components are ordered rr, zz, tt, rz; of the tangent rr.rr, zz.zz, tt.tt, rz.rz, rr.zz, rr.tt,
// zz.tt, rr.rz, zz.rz, tt.rz. The in-plane eigenproblem is solved by double-angle formulas from b - I, so
// that small strains keep all digits (formulas: Ogden, Non-Linear Elastic Deformations, ch. 6).
#pragma once

#include "materials/law.h"
#include "solver/kernels/element_group.h"
#include "solver/kernels/point_response.h"

#include <array>
#include <cmath>

namespace solemech::solver
{
/// Symmetric tensor of a section: rr, zz, tt, rz.
template <typename Number>
using SectionTensor = std::array<Number, 4>;

/// Principal frame of a symmetric section tensor.
template <typename Number>
struct SectionFrame
{
  materials::LogStrains<Number> strains{};       ///< principal logarithmic strains
  Number                        cosine, sine;    ///< of twice the angle of the first principal direction
  Number                        tanh_difference; ///< tanh(eps_1 - eps_2) >= 0

  /// A frame for what is the same in all.
  static SectionFrame any()
  {
    return {{Number(0.0), Number(0.0), Number(0.0)}, Number(1.0), Number(0.0), Number(0.0)};
  }

  /// Frame of b given by b - I.
  static SectionFrame of_excess(const SectionTensor<Number> &e)
  {
    using std::log1p;
    SectionFrame frame;
    const auto [mean, radius] = frame.orient(e);
    frame.strains = {0.5 * log1p(mean + radius), 0.5 * log1p(mean - radius), 0.5 * log1p(e[2])};
    frame.tanh_difference = radius / (1.0 + mean); // (b1 - b2)/(b1 + b2)
    return frame;
  }

  /// Frame of a logarithmic strain tensor.
  static SectionFrame of_strain(const SectionTensor<Number> &e)
  {
    SectionFrame frame;
    const auto [mean, radius] = frame.orient(e);
    frame.strains = {mean + radius, mean - radius, e[2]};
    frame.tanh_difference = tanh(2.0 * radius);
    return frame;
  }

  /// The tensor with the principal values `v` in this frame.
  SectionTensor<Number> tensor(const std::array<Number, 3> &v) const
  {
    const Number mean = 0.5 * (v[0] + v[1]), half = 0.5 * (v[0] - v[1]);
    return {mean + half * cosine, mean - half * cosine, v[2], half * sine};
  }

  /// Adds stress and tangent of a response given in this frame.
  void add(const materials::SpectralResponse<Number> &response, PointResponse<Number, 4> &sum) const
  {
    using materials::select;
    using std::sqrt;
    const auto &t = response.stress;
    const auto &m = response.moduli;

    const auto stress = tensor(t);
    for (unsigned i = 0; i < 4; ++i)
      sum.stress[i] += stress[i];

    // Shear modulus of the principal plane: (tau1 - tau2)/(2 tanh x) - (tau1 + tau2)/2, x = eps1 - eps2 >= 0;
    // for nearly equal strains the quotient goes over into its limit.
    const auto   apart = tanh_difference > 1e-5;
    const Number quotient = select(apart, 0.5 * (t[0] - t[1]) / select(apart, tanh_difference, Number(1.0)),
                                   0.25 * (m[0] + m[1] - 2.0 * m[3]));
    const Number shear = quotient - 0.5 * (t[0] + t[1]);

    const Number a11 = m[0] - 2.0 * t[0], a22 = m[1] - 2.0 * t[1], a33 = m[2] - 2.0 * t[2];
    const Number mean = a11 + a22 + 2.0 * m[3], skew = a11 - a22, deviatoric = a11 + a22 - 2.0 * m[3];
    const Number c = cosine, s = sine;
    const Number dd = deviatoric * c * c + 4.0 * shear * s * s;
    const Number ss = deviatoric * s * s + 4.0 * shear * c * c;
    const Number ds = (deviatoric - 4.0 * shear) * c * s;
    auto        &d = sum.tangent;
    d[0] += 0.25 * (mean + 2.0 * skew * c + dd);
    d[1] += 0.25 * (mean - 2.0 * skew * c + dd);
    d[2] += a33;
    d[3] += 0.25 * ss;
    d[4] += 0.25 * (mean - dd);
    d[5] += 0.5 * (m[4] + m[5] + c * (m[4] - m[5]));
    d[6] += 0.5 * (m[4] + m[5] - c * (m[4] - m[5]));
    d[7] += 0.25 * (skew * s + ds);
    d[8] += 0.25 * (skew * s - ds);
    d[9] += 0.5 * s * (m[4] - m[5]);
  }

private:
  struct MeanAndRadius
  {
    Number mean, radius;
  };

  MeanAndRadius orient(const SectionTensor<Number> &e)
  {
    using materials::select;
    using std::sqrt;
    const Number half = 0.5 * (e[0] - e[1]);
    const Number radius = sqrt(half * half + e[3] * e[3]);
    const auto   oriented = radius > 1e-300;
    const Number inverse = 1.0 / select(oriented, radius, Number(1.0));
    cosine = select(oriented, half * inverse, Number(1.0));
    sine = select(oriented, e[3] * inverse, Number(0.0));
    return {0.5 * (e[0] + e[1]), radius};
  }

  static Number tanh(const Number &x)
  {
    using std::expm1;
    const Number e = expm1(2.0 * x);
    return e / (e + 2.0);
  }
};

/// Displacement gradient of a section and what follows from it.
template <typename Number>
struct SectionMotion
{
  Number rr, rz, zr, zz, tt; ///< H = F - I; tt is u_r/R, or 0 in plane strain

  /// Adds a node's share of the gradient; of the hoop strain it adds N u_r, still to be divided by R.
  void add(const std::array<Number, 2> &g, double shape, const Number *u)
  {
    rr += g[0] * u[0], rz += g[1] * u[0];
    zr += g[0] * u[1], zz += g[1] * u[1];
    tt += shape * u[0];
  }

  Number volume_ratio() const { return ((1.0 + rr) * (1.0 + zz) - rz * zr) * (1.0 + tt); }

  /// b - I = H + H^T + H H^T.
  SectionTensor<Number> left_excess() const
  {
    return {2.0 * rr + rr * rr + rz * rz, 2.0 * zz + zr * zr + zz * zz, 2.0 * tt + tt * tt,
            rz + zr + rr * zr + rz * zz};
  }

  /// F a F^T.
  SectionTensor<Number> push_forward(const SectionTensor<Number> &a) const
  {
    const Number frr = 1.0 + rr, fzz = 1.0 + zz, ftt = 1.0 + tt;
    const Number row_r[2] = {frr * a[0] + rz * a[3], frr * a[3] + rz * a[1]};
    const Number row_z[2] = {zr * a[0] + fzz * a[3], zr * a[3] + fzz * a[1]};
    return {row_r[0] * frr + row_r[1] * rz, row_z[0] * zr + row_z[1] * fzz, ftt * ftt * a[2],
            row_r[0] * zr + row_r[1] * fzz};
  }

  /// The motion whose gradient is F^-1.
  SectionMotion inverse() const
  {
    const Number det = 1.0 / ((1.0 + rr) * (1.0 + zz) - rz * zr);
    return {(1.0 + zz) * det - 1.0, -rz * det, -zr * det, (1.0 + rr) * det - 1.0, 1.0 / (1.0 + tt) - 1.0};
  }

  double vertical_stretch(unsigned lane) const { return 1 + zz[lane]; }

  /// Whether an element of this volume ratio `j` is inside out or beyond its least volume in any lane.
  bool refused(const Number &j, double smallest_ratio) const
  {
    return any(j < smallest_ratio) || any(1.0 + tt < Number(1e-3));
  }
};

template <typename Number>
struct SectionKinematics
{
  using Tensor = SectionTensor<Number>;
  using Motion = SectionMotion<Number>;
  using Frame = SectionFrame<Number>;
  using Response = PointResponse<Number, 4>;
  using Gradient = std::array<Number, 3>; ///< current dN/dr, dN/dz, N/r

  /// Current gradient of a node; `back` is the inverse motion, `hoop` N/r.
  static Gradient current(const Motion &back, const std::array<Number, 2> &g, const Number &hoop)
  {
    return {g[0] + g[0] * back.rr + g[1] * back.zr, g[1] + g[0] * back.rz + g[1] * back.zz, hoop};
  }

  static std::array<Number, 2> divergence(const Gradient &g) { return {g[0] + g[2], g[1]}; }

  /// Force of a node from the weighted stress.
  static void add_force(const Tensor &stress, const Gradient &g, Number *f)
  {
    const auto &[rr, zz, tt, rz] = stress;
    f[0] += rr * g[0] + rz * g[1] + tt * g[2];
    f[1] += rz * g[0] + zz * g[1];
  }

  /// What a node b brings to its blocks: stress . g_b (r, z, hoop), and the weighted tangent times the
  /// strains of its two displacements.
  struct Column
  {
    std::array<Number, 3> stress;
    std::array<Number, 4> radial, vertical;
  };
  static Column column(const Response &weighted, const Gradient &g)
  {
    const auto &[rr, zz, tt, rz] = weighted.stress;
    const auto &d = weighted.tangent;
    return {{rr * g[0] + rz * g[1], rz * g[0] + zz * g[1], tt * g[2]},
            {d[0] * g[0] + d[5] * g[2] + d[7] * g[1], d[4] * g[0] + d[6] * g[2] + d[8] * g[1],
             d[5] * g[0] + d[2] * g[2] + d[9] * g[1], d[7] * g[0] + d[9] * g[2] + d[3] * g[1]},
            {d[4] * g[1] + d[7] * g[0], d[1] * g[1] + d[8] * g[0], d[6] * g[1] + d[9] * g[0],
             d[8] * g[1] + d[3] * g[0]}};
  }

  /// B_a^T D B_b + g_a . stress . g_b, row by row.
  static void add_block(const Gradient &g, const Column &b, Number *k)
  {
    const auto &[gr, gz, h] = g;
    const Number geometric = gr * b.stress[0] + gz * b.stress[1];
    k[0] += gr * b.radial[0] + h * b.radial[2] + gz * b.radial[3] + geometric + h * b.stress[2];
    k[1] += gr * b.vertical[0] + h * b.vertical[2] + gz * b.vertical[3];
    k[2] += gz * b.radial[1] + gr * b.radial[3];
    k[3] += gz * b.vertical[1] + gr * b.vertical[3] + geometric;
  }

  /// Fields for a picture from Cauchy stress and lane values.
  static PointFields<2> fields(const std::array<double, 4> &cauchy, double stretch, double volume_ratio,
                               double energy, double dissipated)
  {
    return {cauchy[1], cauchy[0], cauchy[2], cauchy[3], stretch, volume_ratio, energy, dissipated};
  }
};
} // namespace solemech::solver
