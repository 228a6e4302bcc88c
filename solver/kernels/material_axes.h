// SPDX-License-Identifier: Apache-2.0
// Stress and spatial tangent of a law quadratic in the logarithmic strain of the material frame, E = ln U.
// With C = F^T F of principal values c_a and axes N_a, divided differences of ln make all derivatives:
//   dE_ab = ln[c_a, c_b] dC_ab / 2,   d2E_ab = sum_c ln[c_a, c_c, c_b] dC_ac dC_cb,
// so that S_ab = ln[c_a, c_b] T_ab with T = dW/dE, and the moduli of S by Green's strain are
//   ln[c_a, c_b] C_abcd ln[c_c, c_d] + 4 T : d2E.
// Both are carried to space by the vectors F N_a. Sources: Yu.L. Daleckii & S.G. Krein 1965 for derivatives
// of functions of matrices; C. Miehe & M. Lambrecht, Commun. Numer. Meth. Engng 17 (2001) 337 for the
// logarithmic strain (both from memory). Shear components are engineering ones.
#pragma once

#include "materials/log_strain_law.h"
#include "solver/kernels/solid_kinematics.h"

namespace solemech::solver
{
/// Pairs of axes of the components xx, yy, zz, xy, yz, zx.
inline constexpr unsigned pair_of[6][2] = {{0, 0}, {1, 1}, {2, 2}, {0, 1}, {1, 2}, {2, 0}};

/// Stress and moduli whose axes turn into the vectors v: t_rs = sum v_i[r] v_j[s] t_ij.
template <typename Number>
PointResponse<Number, 6> carried(const PointResponse<Number, 6>             &from,
                                 const std::array<std::array<Number, 3>, 3> &v)
{
  std::array<std::array<Number, 6>, 6> p; // column: where a component goes
  for (unsigned to = 0; to < 6; ++to)
    for (unsigned of = 0; of < 6; ++of)
    {
      const auto [r, s] = pair_of[to];
      const auto [i, j] = pair_of[of];
      p[to][of] = v[i][r] * v[j][s];
      if (i != j)
        p[to][of] += v[j][r] * v[i][s];
    }
  PointResponse<Number, 6> out;
  for (unsigned a = 0; a < 6; ++a)
  {
    std::array<Number, 6> row{};
    for (unsigned i = 0; i < 6; ++i)
    {
      out.stress[a] += p[a][i] * from.stress[i];
      for (unsigned j = 0; j < 6; ++j)
        row[j] += p[a][i] * from.tangent[materials::entry_of(i, j)];
    }
    for (unsigned b = 0; b <= a; ++b)
      for (unsigned j = 0; j < 6; ++j)
        out.tangent[materials::entry_of(a, b)] += row[j] * p[b][j];
  }
  return out;
}

/// Divided differences of ln at the principal values of C.
template <typename Number>
class LogDifferences
{
public:
  /// @param excess  c_a - 1
  LogDifferences(const std::array<Number, 3> &excess, const std::array<Number, 3> &log_stretch)
  {
    using materials::select;
    for (unsigned a = 0; a < 3; ++a)
      for (unsigned b = 0; b < 3; ++b)
      {
        const Number gap = excess[a] - excess[b], sum = 2.0 + excess[a] + excess[b];
        const Number ratio = gap / sum, square = ratio * ratio;
        // ln x - ln y = 2 artanh((x - y)/(x + y))
        const Number near = (2.0 / sum) * (1.0 + square * (1.0 / 3 + square * (1.0 / 5 + square / 7.0)));
        const auto   close = square < 1e-4;
        first_[a][b] =
          select(close, near, 2.0 * (log_stretch[a] - log_stretch[b]) / select(close, Number(1.0), gap));
      }
    for (unsigned a = 0; a < 3; ++a)
      for (unsigned b = a; b < 3; ++b)
        for (unsigned c = b; c < 3; ++c)
          set(a, b, c, triple(excess, a, b, c));
  }

  const Number &operator()(unsigned a, unsigned b) const { return first_[a][b]; }
  const Number &operator()(unsigned a, unsigned b, unsigned c) const { return second_[a][b][c]; }

private:
  std::array<std::array<Number, 3>, 3>                first_;
  std::array<std::array<std::array<Number, 3>, 3>, 3> second_;

  void set(unsigned a, unsigned b, unsigned c, const Number &value)
  {
    second_[a][b][c] = second_[a][c][b] = second_[b][a][c] = value;
    second_[b][c][a] = second_[c][a][b] = second_[c][b][a] = value;
  }

  /// Of values that lie close together by Taylor's series about their mean, of others by the pair that lies
  /// farthest apart.
  Number triple(const std::array<Number, 3> &e, unsigned a, unsigned b, unsigned c) const
  {
    using materials::select;
    const Number mean = (e[a] + e[b] + e[c]) / 3.0, m = 1.0 / (1.0 + mean);
    const Number x = m * (e[a] - mean), y = m * (e[b] - mean), z = m * (e[c] - mean);
    // Complete symmetric sums of x, y, z, whose sum is nought: h2 = -(xy + yz + zx), h3 = xyz, h4 = h2^2,
    // h5 = 2 h2 h3, h6 = h2^3 + h3^2.
    const Number h2 = 0.0 - (x * y + y * z + z * x), h3 = x * y * z;
    const Number series = 0.0 - m * m *
                                  (0.5 + h2 / 4.0 - h3 / 5.0 + h2 * h2 / 6.0 - h2 * h3 * (2.0 / 7.0) +
                                   (h2 * h2 * h2 + h3 * h3) / 8.0);

    const Number ab = e[a] - e[b], bc = e[b] - e[c], ca = e[c] - e[a];
    const Number one(1.0);
    const auto   close = h2 < 4e-4;
    const auto   quotient = [&](const Number &over, unsigned i, unsigned j, unsigned k) {
      return (first_[i][j] - first_[j][k]) / over; // (ln[i, j] - ln[j, k])/(e_i - e_k)
    };
    const auto   ab_most = ab * ab > bc * bc;
    const auto   ca_most = ca * ca > select(ab_most, ab * ab, bc * bc);
    const Number by_ab = quotient(select(close, one, select(ab * ab > 0.0, ab, one)), a, c, b),
                 by_bc = quotient(select(close, one, select(bc * bc > 0.0, bc, one)), b, a, c),
                 by_ca = quotient(select(close, one, select(ca * ca > 0.0, ca, one)), c, b, a);
    return select(close, series, select(ca_most, by_ca, select(ab_most, by_ab, by_bc)));
  }
};

/// State of a point in axes of the material.
template <typename Number>
struct MaterialStrain
{
  SolidFrame<Number>  frame; ///< of C
  SolidTensor<Number> log;   ///< E, engineering shear

  explicit MaterialStrain(const SolidMotion<Number> &motion)
    : frame(SolidFrame<Number>::of_excess(motion.right_excess())), log(frame.tensor(frame.strains))
  {
    for (unsigned i = 3; i < 6; ++i)
      log[i] = 2.0 * log[i];
  }
};

/// Adds 4 T : d2E by two Green strains: 2 sum T_ab ln[a, c, b] (G_ac H_cb + H_ac G_cb).
template <typename Number>
void add_curvature(const SolidTensor<Number> &t, const LogDifferences<Number> &ln,
                   PointResponse<Number, 6> &point)
{
  constexpr unsigned component[3][3] = {{0, 3, 5}, {3, 1, 4}, {5, 4, 2}};
  const auto         unit = [&](unsigned i, unsigned a, unsigned b) {
    return component[a][b] != i ? 0.0 : a == b ? 1.0 : 0.5;
  };
  for (unsigned i = 0; i < 6; ++i)
    for (unsigned j = 0; j <= i; ++j)
      for (unsigned a = 0; a < 3; ++a)
        for (unsigned b = 0; b < 3; ++b)
          for (unsigned c = 0; c < 3; ++c)
            if (const double share = 2 * (unit(i, a, c) * unit(j, c, b) + unit(j, a, c) * unit(i, c, b));
                share != 0)
              point.tangent[materials::entry_of(i, j)] += share * t[component[a][b]] * ln(a, c, b);
}
/// Kirchhoff stress and spatial tangent.
template <typename Number>
PointResponse<Number, 6> in_space(const materials::AxesModuli &moduli, const SolidMotion<Number> &motion)
{
  const MaterialStrain<Number> strain(motion);
  const auto                  &axes = strain.frame.axes;
  PointResponse<Number, 6>     own;
  own.stress = materials::stress_of(moduli, strain.log);
  for (unsigned i = 0; i < own.tangent.size(); ++i)
    own.tangent[i] = Number(moduli[i]);
  // To principal axes of C: the axes of the material are the columns of what turns there.
  std::array<std::array<Number, 3>, 3> columns;
  for (unsigned i = 0; i < 3; ++i)
    columns[i] = {axes[0][i], axes[1][i], axes[2][i]};
  PointResponse<Number, 6> point = carried(own, columns);

  const LogDifferences<Number> ln(strain.frame.excess, strain.frame.strains);
  const auto                   t = point.stress;
  for (unsigned i = 0; i < 6; ++i)
  {
    const auto [a, b] = pair_of[i];
    point.stress[i] = ln(a, b) * t[i];
    for (unsigned j = 0; j <= i; ++j)
    {
      const auto [c, d] = pair_of[j];
      auto &entry = point.tangent[materials::entry_of(i, j)];
      entry = ln(a, b) * entry * ln(c, d);
    }
  }
  add_curvature(t, ln, point);

  std::array<std::array<Number, 3>, 3> carriers; // F N_a
  for (unsigned a = 0; a < 3; ++a)
    carriers[a] = motion.carried(axes[a]);
  return carried(point, carriers);
}

} // namespace solemech::solver
