// SPDX-License-Identifier: Apache-2.0
// Written as a reader of deal.II's tutorials would: Kirchhoff stress and its spatial moduli as symmetric
// tensors (step-44), FEValues on the drawn mesh, distribute_local_to_global, SparseDirectUMFPACK, Newton's
// method, the generalised-alpha method (J. Chung & G.M. Hulbert 1993; formulas from memory) with steps of one
// length.
#include "tests/benchmark/yardstick.h"

#include "tests/support/b1_reference.h"

#include <Eigen/Dense>
#include <deal.II/base/quadrature_lib.h>
#include <deal.II/base/symmetric_tensor.h>
#include <deal.II/dofs/dof_handler.h>
#include <deal.II/dofs/dof_tools.h>
#include <deal.II/fe/fe_q.h>
#include <deal.II/fe/fe_system.h>
#include <deal.II/fe/fe_values.h>
#include <deal.II/grid/grid_generator.h>
#include <deal.II/grid/tria.h>
#include <deal.II/lac/affine_constraints.h>
#include <deal.II/lac/dynamic_sparsity_pattern.h>
#include <deal.II/lac/sparse_direct.h>
#include <deal.II/lac/sparse_matrix.h>
#include <deal.II/lac/vector.h>
#include <deal.II/numerics/vector_tools.h>

#include <algorithm>
#include <cmath>
#include <ctime>
#include <numbers>
#include <stdexcept>
#include <vector>

namespace solemech::tests
{
namespace
{
using namespace dealii;
using Symmetric = SymmetricTensor<2, 3>;

constexpr double   penalty = 2e11;          ///< of contact [N/m3]: 0.004 mm of B1's compression
constexpr double   spectral_radius = 0.6;   ///< of the generalised-alpha method
constexpr double   newton_tolerance = 1e-4; ///< of the contact force
constexpr unsigned most_iterations = 30;

// --- The foam at one point: stress and moduli in principal axes.

struct Principal
{
  std::array<double, 3>                stress{};
  std::array<std::array<double, 3>, 3> moduli{}; ///< d stress_a / d log strain_b
};

struct Response
{
  Symmetric             stress;
  SymmetricTensor<4, 3> moduli;
};

Principal network(const std::array<double, 3> &strain)
{
  const double volume = std::exp(-b1::alpha * b1::beta * (strain[0] + strain[1] + strain[2]));
  Principal    out;
  for (unsigned a = 0; a < 3; ++a)
  {
    const double stretch = std::exp(b1::alpha * strain[a]);
    out.stress[a] = 2 * b1::mu / b1::alpha * (stretch - volume);
    for (unsigned b = 0; b < 3; ++b)
      out.moduli[a][b] = 2 * b1::mu * ((a == b ? stretch : 0) + b1::beta * volume);
  }
  return out;
}

Principal branch(double share, const std::array<double, 3> &strain)
{
  const double mu = share * b1::mu, kappa = 2 * mu * (1. / 3 + b1::beta), lambda = kappa - 2. / 3 * mu;
  Principal    out;
  for (unsigned a = 0; a < 3; ++a)
  {
    out.stress[a] = 2 * mu * strain[a] + lambda * (strain[0] + strain[1] + strain[2]);
    for (unsigned b = 0; b < 3; ++b)
      out.moduli[a][b] = (a == b ? 2 * mu : 0) + lambda;
  }
  return out;
}

/// Adds the spatial response to a left Cauchy-Green tensor b of a law given in principal logarithmic strains.
template <typename Law>
void add_response(const Symmetric &b, const Law &law, Response &out)
{
  const auto               pairs = eigenvectors(b);
  std::array<double, 3>    strain;
  std::array<Symmetric, 3> dyad;
  for (unsigned a = 0; a < 3; ++a)
  {
    strain[a] = std::log(pairs[a].first) / 2;
    dyad[a] = symmetrize(outer_product(pairs[a].second, pairs[a].second));
  }
  const auto principal = law(strain);
  for (unsigned a = 0; a < 3; ++a)
  {
    out.stress += principal.stress[a] * dyad[a];
    for (unsigned c = 0; c < 3; ++c)
      out.moduli +=
        (principal.moduli[a][c] - (a == c ? 2 * principal.stress[a] : 0)) * outer_product(dyad[a], dyad[c]);
    for (unsigned c = 0; c < a; ++c)
    {
      const double    x = pairs[a].first, y = pairs[c].first;
      const double    shear = std::abs(x - y) > 1e-6 * (x + y)
                                ? (principal.stress[a] * y - principal.stress[c] * x) / (x - y)
                                : (principal.moduli[a][a] - principal.moduli[a][c]) / 2 - principal.stress[a];
      const Symmetric both = symmetrize(outer_product(pairs[a].second, pairs[c].second));
      out.moduli += 4 * shear * outer_product(both, both);
    }
  }
}

/// What a point remembers: C_v^-1 of each branch, as it pushes in the next step.
using Memory = std::array<Symmetric, b1::share.size()>;

Symmetric pushed(const Tensor<2, 3> &F, const Symmetric &inverse_viscous)
{
  return symmetrize(F * Tensor<2, 3>(inverse_viscous) * transpose(F));
}

Response response(const Tensor<2, 3> &F, const Memory &memory)
{
  Response out;
  add_response(symmetrize(F * transpose(F)), network, out);
  for (unsigned i = 0; i < memory.size(); ++i)
    add_response(
      pushed(F, memory[i]), [i](const auto &strain) { return branch(b1::share[i], strain); }, out);
  return out;
}

/// Elastic strains decay over the second half of a step and the first half of the next.
void relax(const Tensor<2, 3> &F, double dt, Memory &memory)
{
  const auto inverse = invert(F);
  for (unsigned i = 0; i < memory.size(); ++i)
  {
    Tensor<2, 3> left;
    for (const auto &[value, axis] : eigenvectors(pushed(F, memory[i])))
      left += std::pow(value, std::exp(-dt / b1::time[i])) * outer_product(axis, axis);
    memory[i] = symmetrize(inverse * left * transpose(inverse));
  }
}

// --- The weight: signed distance of a flat face with a round edge and a side wall.

struct Touch
{
  double       depth = 0; ///< of penetration [m]; 0: free
  Tensor<1, 2> away;      ///< from the weight
  bool         round = false;
  double       distance = 0; ///< from the middle of the round edge [m]
};

Touch touch(const Point<2> &at, double face)
{
  const double across = std::max(at[0] - (b1::tup_radius - b1::edge_radius), 0.);
  const double below = std::max(face + b1::edge_radius - at[1], 0.);
  Touch        out;
  out.distance = std::hypot(across, below);
  out.depth = std::max(b1::edge_radius - out.distance, 0.);
  out.round = across > 0 && below > 0;
  if (out.distance > 0)
    out.away = Tensor<1, 2>({across / out.distance, -below / out.distance});
  return out;
}

// --- The finite elements.

/// Lines from `from` to `to`, `n` intervals whose length changes by a factor of `ratio` from first to last.
void add_lines(std::vector<double> &lengths, double length, unsigned n, double ratio)
{
  double sum = 0;
  for (unsigned i = 0; i < n; ++i)
    sum += std::pow(ratio, n > 1 ? double(i) / (n - 1) : 0);
  for (unsigned i = 0; i < n; ++i)
    lengths.push_back(length / sum * std::pow(ratio, n > 1 ? double(i) / (n - 1) : 0));
}

class Blow
{
public:
  Blow(unsigned columns, unsigned rows, double dt);
  YardstickBlow run();

private:
  static constexpr unsigned top = 3, base = 2, axis = 0;

  void         make_mesh(unsigned columns, unsigned rows);
  void         assemble();
  void         assemble_mass();
  void         add_contact(const FEFaceValues<2> &values, const std::vector<types::global_dof_index> &indices,
                           FullMatrix<double> &cell_matrix, Vector<double> &cell_force);
  void         step();
  void         accept();
  Tensor<2, 3> deformation(const FEValues<2> &values, const std::vector<Tensor<2, 2>> &gradients,
                           const std::vector<Vector<double>> &displacements, unsigned q) const;

  const double              dt_, alpha_m_, alpha_f_, gamma_, beta_;
  Triangulation<2>          triangulation_;
  FESystem<2>               element_{FE_Q<2>(2), 2};
  DoFHandler<2>             handler_{triangulation_};
  QGauss<2>                 rule_{3};
  QGauss<1>                 face_rule_{5};
  AffineConstraints<double> constraints_;
  SparsityPattern           pattern_;
  SparseMatrix<double>      mass_, tangent_;
  Vector<double>      u_, v_, a_, force_, old_force_, column_; ///< column_: d force / d way of the weight
  double              way_ = 0, speed_ = -std::sqrt(2 * b1::energy / b1::mass), acceleration_ = -b1::gravity;
  double              contact_ = 0, old_contact_ = 0, stiffness_ = 0; ///< force on the weight, its slope
  std::vector<Memory> memory_;
  YardstickBlow       facts_;
};

Blow::Blow(unsigned columns, unsigned rows, double dt)
  : dt_(dt), alpha_m_((2 * spectral_radius - 1) / (spectral_radius + 1)),
    alpha_f_(spectral_radius / (spectral_radius + 1)), gamma_(0.5 - alpha_m_ + alpha_f_),
    beta_(std::pow(1 - alpha_m_ + alpha_f_, 2) / 4)
{
  make_mesh(columns, rows);
  handler_.distribute_dofs(element_);
  VectorTools::interpolate_boundary_values(handler_, base, Functions::ZeroFunction<2>(2), constraints_);
  VectorTools::interpolate_boundary_values(handler_, axis, Functions::ZeroFunction<2>(2), constraints_,
                                           ComponentMask(std::vector<bool>{true, false}));
  constraints_.close();
  DynamicSparsityPattern pattern(handler_.n_dofs());
  DoFTools::make_sparsity_pattern(handler_, pattern, constraints_, false);
  pattern_.copy_from(pattern);
  mass_.reinit(pattern_);
  tangent_.reinit(pattern_);
  for (auto *vector : {&u_, &v_, &a_, &force_, &old_force_, &column_})
    vector->reinit(handler_.n_dofs());
  Memory unstrained;
  unstrained.fill(unit_symmetric_tensor<3>());
  memory_.assign(triangulation_.n_active_cells() * rule_.size(), unstrained);
  facts_.unknowns = handler_.n_dofs() - constraints_.n_constraints() + 1;
  facts_.points = memory_.size();
  assemble_mass();
}

void Blow::make_mesh(unsigned columns, unsigned rows)
{
  const unsigned                   under = (2 * columns + 1) / 3;
  std::vector<std::vector<double>> lengths(2);
  add_lines(lengths[0], b1::tup_radius, under, 0.35);
  add_lines(lengths[0], b1::radius - b1::tup_radius, columns - under, 2.5);
  add_lines(lengths[1], b1::height, rows, 0.35);
  GridGenerator::subdivided_hyper_rectangle(triangulation_, lengths, Point<2>(0, 0),
                                            Point<2>(b1::radius, b1::height), true);
}

void Blow::assemble_mass()
{
  FEValues<2>        values(element_, rule_, update_values | update_quadrature_points | update_JxW_values);
  const unsigned     n = element_.n_dofs_per_cell();
  FullMatrix<double> cell_matrix(n, n);
  std::vector<types::global_dof_index> indices(n);
  for (const auto &cell : handler_.active_cell_iterators())
  {
    values.reinit(cell);
    cell_matrix = 0;
    for (const unsigned q : values.quadrature_point_indices())
      for (unsigned i = 0; i < n; ++i)
        for (unsigned j = 0; j < n; ++j)
          if (element_.system_to_component_index(i).first == element_.system_to_component_index(j).first)
            cell_matrix(i, j) += b1::density * values.shape_value(i, q) * values.shape_value(j, q) * 2 *
                                 std::numbers::pi * values.quadrature_point(q)[0] * values.JxW(q);
    cell->get_dof_indices(indices);
    constraints_.distribute_local_to_global(cell_matrix, indices, mass_);
  }
}

Tensor<2, 3> Blow::deformation(const FEValues<2> &values, const std::vector<Tensor<2, 2>> &gradients,
                               const std::vector<Vector<double>> &displacements, unsigned q) const
{
  Tensor<2, 3> F;
  for (unsigned i = 0; i < 2; ++i)
    for (unsigned j = 0; j < 2; ++j)
      F[i][j] = (i == j) + gradients[q][i][j];
  F[2][2] = 1 + displacements[q][0] / values.quadrature_point(q)[0];
  return F;
}

/// Forces and their slopes at the present displacements: foam, then contact.
void Blow::assemble()
{
  const std::clock_t                   begin = std::clock();
  FEValues<2>                          values(element_, rule_,
                                              update_values | update_gradients | update_quadrature_points | update_JxW_values);
  FEFaceValues<2>                      face_values(element_, face_rule_,
                                                   update_values | update_quadrature_points | update_JxW_values);
  const unsigned                       n = element_.n_dofs_per_cell();
  FullMatrix<double>                   cell_matrix(n, n);
  Vector<double>                       cell_force(n);
  std::vector<types::global_dof_index> indices(n);
  std::vector<Tensor<2, 2>>            gradients(rule_.size());
  std::vector<Vector<double>>          displacements(rule_.size(), Vector<double>(2));
  std::vector<Symmetric>               strains(n);
  const FEValuesExtractors::Vector     vector(0);

  tangent_ = 0, force_ = 0, column_ = 0, contact_ = 0, stiffness_ = 0;
  unsigned point = 0;
  for (const auto &cell : handler_.active_cell_iterators())
  {
    values.reinit(cell);
    values[vector].get_function_gradients(u_, gradients);
    values.get_function_values(u_, displacements);
    cell->get_dof_indices(indices);
    cell_matrix = 0, cell_force = 0;
    for (const unsigned q : values.quadrature_point_indices())
    {
      const double              radius = values.quadrature_point(q)[0];
      const double              weight = 2 * std::numbers::pi * radius * values.JxW(q);
      const Tensor<2, 3>        F = deformation(values, gradients, displacements, q), inverse = invert(F);
      const auto                here = response(F, memory_[point++]);
      const Tensor<2, 3>        stress(here.stress);
      std::vector<Tensor<2, 3>> spatial(n);
      for (unsigned i = 0; i < n; ++i)
      {
        const unsigned c = element_.system_to_component_index(i).first;
        Tensor<2, 3>   gradient;
        for (unsigned j = 0; j < 2; ++j)
          gradient[c][j] = values.shape_grad(i, q)[j];
        if (c == 0)
          gradient[2][2] = values.shape_value(i, q) / radius;
        spatial[i] = gradient * inverse;
        strains[i] = symmetrize(spatial[i]);
      }
      for (unsigned i = 0; i < n; ++i)
      {
        cell_force[i] += weight * (here.stress * strains[i]);
        const Symmetric    material = here.moduli * strains[i];
        const Tensor<2, 3> geometric = spatial[i] * stress;
        for (unsigned j = 0; j <= i; ++j)
          cell_matrix(i, j) += weight * (material * strains[j] + scalar_product(geometric, spatial[j]));
      }
    }
    for (unsigned i = 0; i < n; ++i)
      for (unsigned j = 0; j < i; ++j)
        cell_matrix(j, i) = cell_matrix(i, j);
    for (const auto &face : cell->face_iterators())
      if (face->at_boundary() && face->boundary_id() == top)
      {
        face_values.reinit(cell, face);
        add_contact(face_values, indices, cell_matrix, cell_force);
      }
    constraints_.distribute_local_to_global(cell_matrix, cell_force, indices, tangent_, force_);
  }
  constraints_.set_zero(column_);
  facts_.assembly_seconds += double(std::clock() - begin) / CLOCKS_PER_SEC;
}

void Blow::add_contact(const FEFaceValues<2> &values, const std::vector<types::global_dof_index> &indices,
                       FullMatrix<double> &cell_matrix, Vector<double> &cell_force)
{
  std::vector<Vector<double>> displacements(face_rule_.size(), Vector<double>(2));
  values.get_function_values(u_, displacements);
  for (const unsigned q : values.quadrature_point_indices())
  {
    const Point<2> drawn = values.quadrature_point(q);
    const Point<2> at(drawn[0] + displacements[q][0], drawn[1] + displacements[q][1]);
    const auto     here = touch(at, b1::height + way_);
    if (here.depth == 0)
      continue;
    const double weight = 2 * std::numbers::pi * drawn[0] * values.JxW(q);
    // The force on the foam is penalty depth away; d depth = -away . (d at - d face).
    const Tensor<1, 2> force = weight * penalty * here.depth * here.away;
    Tensor<2, 2>       slope = -weight * penalty * outer_product(here.away, here.away);
    if (here.round)
      slope += weight * penalty * here.depth / here.distance *
               (Tensor<2, 2>(unit_symmetric_tensor<2>()) - outer_product(here.away, here.away));
    contact_ -= force[1];
    stiffness_ -= slope[1][1];
    for (unsigned i = 0; i < indices.size(); ++i)
    {
      const unsigned c = element_.system_to_component_index(i).first;
      const double   shape = values.shape_value(i, q);
      cell_force[i] -= shape * force[c];
      column_[indices[i]] += shape * slope[c][1];
      for (unsigned j = 0; j < indices.size(); ++j)
        cell_matrix(i, j) -=
          shape * slope[c][element_.system_to_component_index(j).first] * values.shape_value(j, q);
    }
  }
}

/// Newton's method for the state at the end of a step; the weight's way borders the foam's matrix.
void Blow::step()
{
  old_force_ = force_;
  old_contact_ = contact_;
  const Vector<double> u_old = u_, v_old = v_, a_old = a_;
  const double         way_old = way_, speed_old = speed_, acceleration_old = acceleration_;
  const double         inertia = (1 - alpha_m_) / (beta_ * dt_ * dt_), share = 1 - alpha_f_;
  Vector<double>       residual(u_.size()), mean(u_.size()), bordered(u_.size());
  for (unsigned iteration = 0; iteration < most_iterations; ++iteration)
  {
    ++facts_.iterations;
    // Newmark's accelerations and speeds of the present displacements.
    const auto newmark = [&](double x, double x_old, double v_old, double a_old, double &v, double &a) {
      a = (x - x_old - dt_ * v_old) / (beta_ * dt_ * dt_) - (0.5 / beta_ - 1) * a_old;
      v = v_old + dt_ * ((1 - gamma_) * a_old + gamma_ * a);
    };
    for (unsigned i = 0; i < u_.size(); ++i)
      newmark(u_[i], u_old[i], v_old[i], a_old[i], v_[i], a_[i]);
    newmark(way_, way_old, speed_old, acceleration_old, speed_, acceleration_);
    assemble();
    mean.equ(1 - alpha_m_, a_);
    mean.add(alpha_m_, a_old);
    mass_.vmult(residual, mean);
    residual.add(share, force_, alpha_f_, old_force_);
    constraints_.set_zero(residual);
    const double weight_residual =
      b1::mass * ((1 - alpha_m_) * acceleration_ + alpha_m_ * acceleration_old + b1::gravity) -
      share * contact_ - alpha_f_ * old_contact_;
    const double scale = std::max({std::abs(contact_), std::abs(old_contact_), 1.});
    if (iteration > 0 && std::hypot(residual.l2_norm(), weight_residual) < newton_tolerance * scale)
      return;
    tangent_ *= share;
    tangent_.add(inertia, mass_);
    SparseDirectUMFPACK solver;
    solver.initialize(tangent_);
    bordered.equ(share, column_);
    const Vector<double> border = bordered;
    solver.solve(residual);
    solver.solve(bordered);
    const double change =
      (border * residual - weight_residual) / (b1::mass * inertia + share * stiffness_ - border * bordered);
    way_ += change;
    residual.add(change, bordered);
    constraints_.set_zero(residual);
    u_ -= residual;
  }
  throw std::runtime_error("yardstick: Newton's method does not converge");
}

void Blow::accept()
{
  FEValues<2> values(element_, rule_, update_values | update_gradients | update_quadrature_points);
  std::vector<Tensor<2, 2>>   gradients(rule_.size());
  std::vector<Vector<double>> displacements(rule_.size(), Vector<double>(2));
  unsigned                    point = 0;
  for (const auto &cell : handler_.active_cell_iterators())
  {
    values.reinit(cell);
    values[FEValuesExtractors::Vector(0)].get_function_gradients(u_, gradients);
    values.get_function_values(u_, displacements);
    for (const unsigned q : values.quadrature_point_indices())
      relax(deformation(values, gradients, displacements, q), dt_, memory_[point++]);
  }
  ++facts_.steps;
}

/// Peak of the polynomial of fourth degree through the samples round the highest one.
double smoothed_peak(const std::vector<double> &forces, double dt)
{
  const auto highest = std::max_element(forces.begin(), forces.end()) - forces.begin();
  const auto half = std::max(static_cast<long>(b1::smoothing_half_width / dt), 3l);
  const long first = std::max(highest - half, 0l), last = std::min<long>(highest + half, forces.size() - 1);
  Eigen::MatrixXd powers(last - first + 1, 5);
  Eigen::VectorXd values(last - first + 1);
  for (long i = first; i <= last; ++i)
  {
    values[i - first] = forces[i];
    for (int k = 0; k < 5; ++k)
      powers(i - first, k) = std::pow(double(i - highest) / half, k);
  }
  const Eigen::VectorXd c = powers.householderQr().solve(values);
  double                peak = 0;
  for (double x = -1; x <= 1; x += 1e-3)
    peak = std::max(peak, c[0] + x * (c[1] + x * (c[2] + x * (c[3] + x * c[4]))));
  return peak;
}

YardstickBlow Blow::run()
{
  std::vector<double> forces{0};
  double              last_speed = speed_;
  while (facts_.steps * dt_ < 0.04)
  {
    last_speed = speed_;
    step();
    accept();
    facts_.compression = std::max(facts_.compression, -way_);
    if (speed_ > 0 && contact_ <= 0)
      break;
    forces.push_back(contact_);
  }
  // Force zero on the straight line through the last two points in contact.
  const double f1 = forces[forces.size() - 2], f2 = forces.back();
  const double part = std::clamp(f2 / (f1 - f2), 0., 1.);
  const double speed = last_speed + part * (speed_ - last_speed);
  facts_.return_by_speed = b1::mass * speed * speed / 2 / b1::energy;
  facts_.peak_force = smoothed_peak(forces, dt_);
  return facts_;
}
} // namespace

YardstickBlow yardstick_blow(unsigned columns, unsigned rows, double dt)
{
  return Blow(columns, rows, dt).run();
}
} // namespace solemech::tests
