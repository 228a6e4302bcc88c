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

namespace
{
using Entries = Eigen::Matrix<Real, 9, 1>; ///< of a 3 x 3 tensor, column by column
using Square9 = Eigen::Matrix<Real, 9, 9>;

Entries entries(const Real33 &a)
{
  return Eigen::Map<const Entries>(a.data());
}

/// An element under work: what each point contributes, and the sums.
template <int dim>
struct Work
{
  static constexpr unsigned n = dim == 2 ? 9 : 27, n_dofs = dim * n; // nodes and points alike
  static constexpr int      n_modes = dim + 1;                       // of the linear pressure

  std::vector<Eigen::Matrix<Real, 9, n_dofs>>  B; ///< entries of grad u from nodal displacements
  std::vector<Real>                            weight;
  std::vector<Eigen::Matrix<Real, dim + 1, 1>> phi; ///< linear pressure fields
  ReferenceElement out{ReferenceVector::Zero(n_dofs), ReferenceMatrix::Zero(n_dofs, n_dofs), {}};

  Work(const std::vector<std::array<double, dim>> &nodes, bool axisymmetric,
       const std::vector<double> &displacement);

  void add(unsigned q, const Real33 &stress, const Square9 &tangent)
  {
    out.force += weight[q] * B[q].transpose() * entries(stress);
    out.stiffness += weight[q] * B[q].transpose() * tangent * B[q];
  }
  void add_law(const ReferenceMaterial &material);
  void add_volume(Real bulk_modulus);
};

template <int dim>
Work<dim>::Work(const std::vector<std::array<double, dim>> &nodes, bool axisymmetric,
                const std::vector<double> &displacement)
  : B(n, Eigen::Matrix<Real, 9, n_dofs>::Zero()), weight(n), phi(n)
{
  using namespace dealii;
  Triangulation<dim> one_cell;
  GridGenerator::hyper_cube(one_cell);
  const FESystem<dim> element(FE_Q<dim>(2), dim);
  DoFHandler<dim>     handler(one_cell);
  handler.distribute_dofs(element);
  std::vector<types::global_dof_index> indices(n_dofs);
  handler.begin_active()->get_dof_indices(indices);
  // Local number of component c of the node with lexicographic number a.
  const auto lexicographic = FETools::lexicographic_to_hierarchic_numbering<dim>(2);
  std::array<std::array<unsigned, dim>, n> local;
  for (unsigned i = 0; i < n_dofs; ++i)
    for (unsigned a = 0; a < n; ++a)
    {
      const auto [component, base] = element.system_to_component_index(i);
      if (lexicographic[a] == base)
        local[a][component] = i;
    }
  dealii::Vector<double> positions(n_dofs);
  for (unsigned a = 0; a < n; ++a)
    for (unsigned c = 0; c < dim; ++c)
      positions[indices[local[a][c]]] = nodes[a][c];
  const MappingFEField<dim, dim, dealii::Vector<double>> mapping(handler, positions);
  const QGauss<dim>                                      rule(3);
  FEValues<dim> values(mapping, element, rule, update_values | update_gradients | update_JxW_values);
  values.reinit(handler.begin_active());
  const FE_DGP<dim> linear(1);

  const Eigen::Matrix<Real, n_dofs, 1> u =
    Eigen::Map<const Eigen::Matrix<double, n_dofs, 1>>(displacement.data()).template cast<Real>();
  for (unsigned q = 0; q < n; ++q)
  {
    Real radius = 0;
    for (unsigned a = 0; a < n; ++a)
      radius += nodes[a][0] * Real(values.shape_value(local[a][0], q));
    for (unsigned a = 0; a < n; ++a)
      for (unsigned c = 0; c < dim; ++c)
      {
        const auto gradient = values.shape_grad(local[a][c], q);
        for (unsigned d = 0; d < dim; ++d)
          B[q](c + 3 * d, dim * a + c) = gradient[d];
        if (axisymmetric && c == 0)
          B[q](8, dim * a) = values.shape_value(local[a][0], q) / radius;
      }
    const Real depth = axisymmetric ? 2 * std::numbers::pi_v<Real> * radius : Real(dim == 2 ? 2 : 1);
    weight[q] = values.JxW(q) * depth;
    const Entries gradient = B[q] * u;
    out.deformation.push_back(Real33::Identity() + Eigen::Map<const Real33>(gradient.data()));
    for (int m = 0; m < n_modes; ++m)
      phi[q][m] = linear.shape_value(m, rule.point(q));
  }
}

template <int dim>
void Work<dim>::add_law(const ReferenceMaterial &material)
{
  for (unsigned q = 0; q < n; ++q)
  {
    const Real33 &F = out.deformation[q];
    const auto    shared = piola(material.law, F);
    add(q, shared.stress, shared.tangent);
    for (const auto &branch : material.branches)
    {
      // W(F G) with G G^T = C_v^-1: P = P_e G^T, and the same on both sides of the tangent.
      const Real33 G = branch.inverse_viscous[q].llt().matrixL();
      const auto   own = piola(branch.push, F * G);
      Square9      right = Square9::Zero(); // entries of F to those of F G
      for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j)
          for (int k = 0; k < 3; ++k)
            right(i + 3 * k, i + 3 * j) = G(j, k);
      add(q, own.stress * G.transpose(), right.transpose() * own.tangent * right);
    }
  }
}

/// Three fields, all unknowns kept: u, dilatation, pressure; the latter two eliminated by a dense solve.
template <int dim>
void Work<dim>::add_volume(Real bulk_modulus)
{
  using Small = Eigen::Matrix<Real, n_modes, n_modes>;
  using Modes = Eigen::Matrix<Real, n_modes, 1>;
  Small M = Small::Zero(), D = Small::Zero();
  Modes moment = Modes::Zero(), load = Modes::Zero();
  for (unsigned q = 0; q < n; ++q)
  {
    M += weight[q] * phi[q] * phi[q].transpose();
    moment += weight[q] * out.deformation[q].determinant() * phi[q];
  }
  const Modes theta = M.llt().solve(moment);
  for (unsigned q = 0; q < n; ++q)
  {
    const Real t = phi[q].dot(theta);
    load += weight[q] * bulk_modulus / 2 * (t - 1 / t) * phi[q];
    D += weight[q] * bulk_modulus / 2 * (1 + 1 / (t * t)) * phi[q] * phi[q].transpose();
  }
  const Modes     p = M.llt().solve(load);
  ReferenceMatrix K_up = ReferenceMatrix::Zero(n_dofs, n_modes);
  for (unsigned q = 0; q < n; ++q)
  {
    const Real33 &F = out.deformation[q], inverse = F.inverse();
    const Real    J = F.determinant(), pressure = phi[q].dot(p);
    const Real33  cofactor = J * inverse.transpose();
    Square9       second; // d2J/dF2 = J (F^-T F^-T - crossed)
    for (int i = 0; i < 3; ++i)
      for (int j = 0; j < 3; ++j)
        for (int k = 0; k < 3; ++k)
          for (int l = 0; l < 3; ++l)
            second(i + 3 * j, k + 3 * l) =
              J * (inverse(j, i) * inverse(l, k) - inverse(l, i) * inverse(j, k));
    add(q, pressure * cofactor, pressure * second);
    K_up += weight[q] * (B[q].transpose() * entries(cofactor)) * phi[q].transpose();
  }
  // Rows: dilatation: D dt - M dp = 0; pressure: K_pu du - M dt = 0.
  ReferenceMatrix inner(2 * n_modes, 2 * n_modes), border(n_dofs, 2 * n_modes);
  inner << D, -M, -M, Small::Zero();
  border << ReferenceMatrix::Zero(n_dofs, n_modes), K_up;
  out.stiffness -= border * inner.partialPivLu().solve(border.transpose().eval());
}
} // namespace

template <int dim>
ReferenceElement reference_element(const std::vector<std::array<double, dim>> &nodes, bool axisymmetric,
                                   const ReferenceMaterial &material, const std::vector<double> &displacement)
{
  Work<dim> work(nodes, axisymmetric, displacement);
  work.add_law(material);
  if (material.bulk_modulus != 0)
    work.add_volume(material.bulk_modulus);
  return work.out;
}

template ReferenceElement reference_element<2>(const std::vector<std::array<double, 2>> &, bool,
                                               const ReferenceMaterial &, const std::vector<double> &);
template ReferenceElement reference_element<3>(const std::vector<std::array<double, 3>> &, bool,
                                               const ReferenceMaterial &, const std::vector<double> &);
} // namespace solemech::tests
