// SPDX-License-Identifier: Apache-2.0
#include "tests/support/reference_assembly.h"

#include <deal.II/base/quadrature_lib.h>
#include <deal.II/dofs/dof_handler.h>
#include <deal.II/fe/fe_dgp.h>
#include <deal.II/fe/fe_q.h>
#include <deal.II/fe/fe_system.h>
#include <deal.II/fe/fe_tools.h>
#include <deal.II/fe/fe_values.h>
#include <deal.II/fe/mapping_fe_field.h>
#include <deal.II/grid/grid_generator.h>
#include <deal.II/grid/tria.h>
#include <deal.II/lac/vector.h>

#include <cmath>
#include <numbers>

namespace solemech::tests
{
namespace
{
const Real33 ones = Real33::Ones();

/// A law of the volume alone: energy, pressure p = -dW/dJ and its slope.
PrincipalEnergy of_volume(Real J, Real energy, Real pressure, Real slope)
{
  return {energy, Real3::Constant(-pressure * J), -J * (pressure + J * slope) * ones};
}
} // namespace

ReferenceLaw reference_ogden(Real mu, Real alpha, Real beta)
{
  return [=](const Real3 &e) {
    const Real3     lambda = (alpha * e).array().exp();
    const Real      J = std::exp(e.sum()), volume = std::pow(J, -alpha * beta);
    PrincipalEnergy out;
    out.energy =
      2 * mu / (alpha * alpha) * (lambda.sum() - 3 + (beta > 0 ? (volume - 1) / beta : -alpha * std::log(J)));
    out.slope = 2 * mu / alpha * (lambda.array() - volume);
    out.curvature = 2 * mu * (Real33(lambda.asDiagonal()) + beta * volume * ones);
    return out;
  };
}

ReferenceLaw reference_cell_gas(Real R, Real share, Real atmosphere, Real n)
{
  return [=](const Real3 &e) {
    const Real J = std::exp(e.sum()), x = (J - R) / (1 - R), scale = share * atmosphere;
    const Real work = n == 1 ? std::log(x) : (std::pow(x, 1 - n) - 1) / (1 - n);
    return of_volume(J, -scale * (1 - R) * (work - (x - 1)), scale * (std::pow(x, -n) - 1),
                     -scale * n / (1 - R) * std::pow(x, -n - 1));
  };
}

ReferenceLaw reference_densification(Real R, Real modulus, Real m)
{
  return [=](const Real3 &e) {
    const Real J = std::exp(e.sum()), x = (J - R) / (1 - R);
    if (x >= 1)
      return PrincipalEnergy{};
    const Real energy = (std::pow(x, 1 - m) - 1) / (m - 1) + x - 1 - m * (1 - x) * (1 - x) / 2;
    return of_volume(J, modulus * (1 - R) * energy, modulus * (std::pow(x, -m) - 1 - m * (1 - x)),
                     modulus * (-m * std::pow(x, -m - 1) + m) / (1 - R));
  };
}

ReferenceLaw reference_hencky(Real mu, Real kappa)
{
  return [=](const Real3 &e) {
    const Real33 C = 2 * mu * (Real33::Identity() - ones / 3) + kappa * ones;
    return PrincipalEnergy{e.dot(C * e) / 2, C * e, C};
  };
}

ReferenceLaw reference_isochoric_rubber(Real c10, Real c20, Real c30, Real c01)
{
  return [=](const Real3 &strains) {
    const Real33    P = Real33::Identity() - ones / 3;
    const Real3     e = P * strains, up = (2 * e).array().exp(), down = (-2 * e).array().exp();
    const Real      i1 = up.sum() - 3, i2 = down.sum() - 3;
    const Real      w1 = c10 + 2 * c20 * i1 + 3 * c30 * i1 * i1, w11 = 2 * c20 + 6 * c30 * i1;
    PrincipalEnergy out;
    out.energy = c10 * i1 + c20 * i1 * i1 + c30 * i1 * i1 * i1 + c01 * i2;
    out.slope = P * Real3(2 * w1 * up - 2 * c01 * down);
    const Real33 H = Real33(Real3(4 * w1 * up + 4 * c01 * down).asDiagonal()) + 4 * w11 * up * up.transpose();
    out.curvature = P * H * P;
    return out;
  };
}

ReferenceLaw reference_huber(Real share, Real mu, Real kappa, Real cap)
{
  return [=, elastic = reference_hencky(mu, kappa)](const Real3 &e) {
    auto       out = elastic(e);
    const Real r = std::sqrt(2 * out.energy / mu);
    if (r > cap)
    {
      // mu (cap r - cap^2/2); r' = tau/(mu r), r'' = (C - tau tau^T/(mu r^2))/(mu r).
      out.energy = mu * (cap * r - cap * cap / 2);
      out.curvature = cap / r * (out.curvature - out.slope * out.slope.transpose() / (mu * r * r));
      out.slope *= cap / r;
    }
    return PrincipalEnergy{share * out.energy, share * out.slope, share * out.curvature};
  };
}

ReferenceLaw sum_of(std::vector<ReferenceLaw> laws)
{
  return [laws = std::move(laws)](const Real3 &e) {
    PrincipalEnergy out;
    for (const auto &law : laws)
    {
      const auto term = law(e);
      out.energy += term.energy, out.slope += term.slope, out.curvature += term.curvature;
    }
    return out;
  };
}

PiolaResponse piola(const ReferenceLaw &law, const Real33 &F)
{
  const Eigen::JacobiSVD<Real33> svd(F, Eigen::ComputeFullU | Eigen::ComputeFullV);
  const Real3                    l = svd.singularValues();
  const auto                     here = law(l.array().log());
  const Real3                    P = here.slope.cwiseQuotient(l); // dW/dlambda
  Real33                         dP;
  for (int a = 0; a < 3; ++a)
    for (int b = 0; b < 3; ++b)
      dP(a, b) = here.curvature(a, b) / (l[a] * l[b]) - (a == b ? P[a] / l[a] : 0);

  const Real33 &U = svd.matrixU(), &V = svd.matrixV();
  PiolaResponse out{here.energy, U * P.asDiagonal() * V.transpose(), Eigen::Matrix<Real, 9, 9>::Zero()};
  const auto    dyad = [&](int a, int b) -> Eigen::Matrix<Real, 9, 1> {
    const Real33 n = U.col(a) * V.col(b).transpose();
    return Eigen::Map<const Eigen::Matrix<Real, 9, 1>>(n.data());
  };
  for (int a = 0; a < 3; ++a)
    for (int b = 0; b < 3; ++b)
    {
      out.tangent += dP(a, b) * dyad(a, a) * dyad(b, b).transpose();
      if (a == b)
        continue;
      Real straight, crossed; // P_ab per F_ab and per F_ba
      if (const Real gap = l[a] * l[a] - l[b] * l[b]; std::abs(gap) > 1e-12L)
      {
        straight = (l[a] * P[a] - l[b] * P[b]) / gap;
        crossed = (l[b] * P[a] - l[a] * P[b]) / gap;
      }
      else
      {
        const Real half = (dP(a, a) - dP(a, b)) / 2;
        straight = half + P[a] / (2 * l[a]), crossed = half - P[a] / (2 * l[a]);
      }
      out.tangent +=
        straight * dyad(a, b) * dyad(a, b).transpose() + crossed * dyad(a, b) * dyad(b, a).transpose();
    }
  return out;
}

Real33 spectral_map(const Real33 &a, const std::function<Real(Real)> &f)
{
  const Eigen::SelfAdjointEigenSolver<Real33> eigen(a);
  const Real3                                 values = eigen.eigenvalues().unaryExpr(f);
  return eigen.eigenvectors() * values.asDiagonal() * eigen.eigenvectors().transpose();
}

ReferenceElement reference_element(const NodePositions &nodes, bool axisymmetric,
                                   const ReferenceMaterial      &material,
                                   const std::array<double, 18> &displacement)
{
  using namespace dealii;
  Triangulation<2> one_cell;
  GridGenerator::hyper_cube(one_cell);
  const FESystem<2> element(FE_Q<2>(2), 2);
  DoFHandler<2>     handler(one_cell);
  handler.distribute_dofs(element);
  std::vector<types::global_dof_index> indices(18);
  handler.begin_active()->get_dof_indices(indices);
  // Local number of component c of the node with lexicographic number a.
  const auto                             lexicographic = FETools::lexicographic_to_hierarchic_numbering<2>(2);
  std::array<std::array<unsigned, 2>, 9> local;
  for (unsigned i = 0; i < 18; ++i)
    for (unsigned a = 0; a < 9; ++a)
    {
      const auto [component, base] = element.system_to_component_index(i);
      if (lexicographic[a] == base)
        local[a][component] = i;
    }
  dealii::Vector<double> positions(18);
  for (unsigned a = 0; a < 9; ++a)
    for (unsigned c = 0; c < 2; ++c)
      positions[indices[local[a][c]]] = nodes[a][c];
  const MappingFEField<2, 2, dealii::Vector<double>> mapping(handler, positions);
  const QGauss<2>                                    rule(3);
  FEValues<2> values(mapping, element, rule, update_values | update_gradients | update_JxW_values);
  values.reinit(handler.begin_active());
  const FE_DGP<2> linear(1);

  ReferenceElement out{ReferenceVector::Zero(), ReferenceMatrix::Zero(), {}};
  // B: entries of grad u (column by column) from nodal displacements.
  std::array<Eigen::Matrix<Real, 9, 18>, 9>      B;
  std::array<Real, 9>                            weight;
  Eigen::Map<const Eigen::Matrix<double, 18, 1>> u(displacement.data());
  for (unsigned q = 0; q < 9; ++q)
  {
    B[q].setZero();
    Real radius = 0;
    for (unsigned a = 0; a < 9; ++a)
      radius += nodes[a][0] * Real(values.shape_value(local[a][0], q));
    for (unsigned a = 0; a < 9; ++a)
      for (unsigned c = 0; c < 2; ++c)
      {
        const auto gradient = values.shape_grad(local[a][c], q);
        B[q](c, 2 * a + c) = gradient[0];     // F_c,r
        B[q](3 + c, 2 * a + c) = gradient[1]; // F_c,z
        if (axisymmetric && c == 0)
          B[q](8, 2 * a) = values.shape_value(local[a][0], q) / radius;
      }
    weight[q] = values.JxW(q) * (axisymmetric ? 2 * std::numbers::pi_v<Real> * radius : Real(2));
    const Eigen::Matrix<Real, 9, 1> gradient = B[q] * u.cast<Real>();
    out.deformation[q] = Real33::Identity() + Eigen::Map<const Real33>(gradient.data());
  }

  const auto add = [&](unsigned q, const Real33 &stress, const Eigen::Matrix<Real, 9, 9> &tangent) {
    out.force += weight[q] * B[q].transpose() * Eigen::Map<const Eigen::Matrix<Real, 9, 1>>(stress.data());
    out.stiffness += weight[q] * B[q].transpose() * tangent * B[q];
  };
  for (unsigned q = 0; q < 9; ++q)
  {
    const Real33 &F = out.deformation[q];
    const auto    shared = piola(material.law, F);
    add(q, shared.stress, shared.tangent);
    for (const auto &branch : material.branches)
    {
      // W(F G) with G G^T = C_v^-1: P = P_e G^T, and the same on both sides of the tangent.
      const Real33              G = branch.inverse_viscous[q].llt().matrixL();
      const auto                own = piola(branch.push, F * G);
      Eigen::Matrix<Real, 9, 9> right = Eigen::Matrix<Real, 9, 9>::Zero(); // entries of F to those of F G
      for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j)
          for (int k = 0; k < 3; ++k)
            right(i + 3 * k, i + 3 * j) = G(j, k);
      add(q, own.stress * G.transpose(), right.transpose() * own.tangent * right);
    }
  }
  if (material.bulk_modulus == 0)
    return out;

  // Three fields, all unknowns kept: u, dilatation (3), pressure (3), eliminated by a dense solve.
  using Small = Eigen::Matrix<Real, 3, 3>;
  Small                M = Small::Zero(), D = Small::Zero();
  Real3                moment = Real3::Zero(), load = Real3::Zero();
  std::array<Real3, 9> phi;
  for (unsigned q = 0; q < 9; ++q)
  {
    for (unsigned m = 0; m < 3; ++m)
      phi[q][m] = linear.shape_value(m, rule.point(q));
    M += weight[q] * phi[q] * phi[q].transpose();
    moment += weight[q] * out.deformation[q].determinant() * phi[q];
  }
  const Real3 theta = M.llt().solve(moment);
  for (unsigned q = 0; q < 9; ++q)
  {
    const Real t = phi[q].dot(theta), kappa = material.bulk_modulus;
    load += weight[q] * kappa / 2 * (t - 1 / t) * phi[q];
    D += weight[q] * kappa / 2 * (1 + 1 / (t * t)) * phi[q] * phi[q].transpose();
  }
  const Real3                p = M.llt().solve(load);
  Eigen::Matrix<Real, 18, 3> K_up = Eigen::Matrix<Real, 18, 3>::Zero();
  for (unsigned q = 0; q < 9; ++q)
  {
    const Real33             &F = out.deformation[q], inverse = F.inverse();
    const Real                J = F.determinant(), pressure = phi[q].dot(p);
    const Real33              cofactor = J * inverse.transpose();
    Eigen::Matrix<Real, 9, 9> second; // d2J/dF2 = J (F^-T F^-T - crossed)
    for (int i = 0; i < 3; ++i)
      for (int j = 0; j < 3; ++j)
        for (int k = 0; k < 3; ++k)
          for (int l = 0; l < 3; ++l)
            second(i + 3 * j, k + 3 * l) =
              J * (inverse(j, i) * inverse(l, k) - inverse(l, i) * inverse(j, k));
    add(q, pressure * cofactor, pressure * second);
    const ReferenceVector slope =
      B[q].transpose() * Eigen::Map<const Eigen::Matrix<Real, 9, 1>>(cofactor.data());
    K_up += weight[q] * slope * phi[q].transpose();
  }
  // Rows: dilatation: D dt - M dp = 0; pressure: K_pu du - M dt = 0.
  Eigen::Matrix<Real, 6, 6> inner;
  inner << D, -M, -M, Small::Zero();
  Eigen::Matrix<Real, 18, 6> border;
  border << Eigen::Matrix<Real, 18, 3>::Zero(), K_up;
  out.stiffness -= border * inner.partialPivLu().solve(border.transpose().eval());
  return out;
}
} // namespace solemech::tests
