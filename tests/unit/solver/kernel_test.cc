// SPDX-License-Identifier: Apache-2.0
// The element loops against a second assembly that shares no code with them
// (tests/support/reference_assembly.h).
#include "tests/support/hex_mesh.h"
#include "tests/support/kernel_examples.h"

using namespace solemech;
using namespace solemech::tests;
using solver::InstructionSet;

namespace
{
/// Between the kernel in double and the reference in extended precision, over the largest entry: some hundred
/// roundings an entry, each of 1e-16.
constexpr double same_assembly = 1e-12;

constexpr double dt = 0.01;

/// Dense lower triangle of the values on a pattern, completed.
template <int dim>
Eigen::MatrixXd dense(const solver::QuadraticMesh<dim> &mesh, const std::vector<double> &values)
{
  solver::SparseMatrix matrix = mesh.pattern();
  std::copy_n(values.begin(), matrix.nonZeros(), matrix.valuePtr());
  return Eigen::MatrixXd(matrix).selfadjointView<Eigen::Lower>();
}

/// History of one branch of the reference at one point: elastic logarithmic strain in the spatial frame.
struct BranchHistory
{
  Real33 elastic = Real33::Zero();
};

template <int dim>
class ReferenceBody
{
public:
  static constexpr unsigned n_points = solver::QuadraticElement<dim>::n_points;
  static constexpr unsigned n_dofs = solver::QuadraticElement<dim>::n_dofs;
  using Place = std::array<double, dim>;
  using Mesh = solver::QuadraticMesh<dim>;

  ReferenceBody(const KernelExample<dim> &example, const Mesh &mesh, bool round,
                const std::vector<Place> &positions)
    : example_(example), mesh_(mesh), round_(round), positions_(positions)
  {
    history_.assign(mesh.cells().size() * n_points * example.branches.size(), {});
  }

  struct System
  {
    Eigen::VectorXd force;
    Eigen::MatrixXd stiffness;
  };

  /// Force and stiffness at x after a step that began at `accepted`; with `accept` also takes the step.
  System step(const Vector &accepted, const Vector &x, bool accept)
  {
    const int n = mesh_.n_unknowns();
    System    out{Eigen::VectorXd::Zero(n), Eigen::MatrixXd::Zero(n, n)};
    for (std::size_t cell = 0; cell < mesh_.cells().size(); ++cell)
    {
      const auto        &nodes = mesh_.cells()[cell];
      std::vector<Place> place;
      for (const unsigned node : nodes)
        place.push_back(positions_[node]);
      const auto before =
        reference_element<dim>(place, round_, {example_.reference.law, {}, 0}, local(nodes, accepted));
      const auto material = pushed(cell, before);
      const auto element = reference_element<dim>(place, round_, material, local(nodes, x));
      for (unsigned i = 0; i < n_dofs; ++i)
      {
        const int row = mesh_.dof(nodes[i / dim], i % dim);
        if (row < 0)
          continue;
        out.force[row] += double(element.force[i]);
        for (unsigned j = 0; j < n_dofs; ++j)
          if (const int column = mesh_.dof(nodes[j / dim], j % dim); column >= 0)
            out.stiffness(row, column) += double(element.stiffness(i, j));
      }
      if (accept)
        take(cell, material, element);
    }
    return out;
  }

private:
  const KernelExample<dim>  &example_;
  const Mesh                &mesh_;
  bool                       round_;
  std::vector<Place>         positions_;
  std::vector<BranchHistory> history_;

  /// The material with its branches after the first half decay, in the shape `before` the step.
  ReferenceMaterial pushed(std::size_t cell, const ReferenceElement &before)
  {
    auto material = example_.reference;
    for (unsigned i = 0; i < example_.branches.size(); ++i)
    {
      const auto     &b = example_.branches[i];
      const Real      remaining = std::exp(-Real(dt) / (2 * Real(b.time)));
      ReferenceBranch branch{std::isfinite(b.cap) ? reference_huber(remaining, b.shear, b.bulk, b.cap)
                                                  : reference_hencky(remaining * b.shear, remaining * b.bulk),
                             {}};
      for (unsigned q = 0; q < n_points; ++q)
      {
        const Real33 decayed = 2 * remaining * history(cell, i, q).elastic;
        const Real33 b_e = spectral_map(decayed, [](Real v) { return std::exp(v); });
        const Real33 back = before.deformation[q].inverse();
        branch.inverse_viscous.push_back(back * b_e * back.transpose());
      }
      material.branches.push_back(branch);
    }
    return material;
  }

  void take(std::size_t cell, const ReferenceMaterial &material, const ReferenceElement &element)
  {
    for (unsigned i = 0; i < example_.branches.size(); ++i)
      for (unsigned q = 0; q < n_points; ++q)
      {
        const auto  &b = example_.branches[i];
        const Real33 F = element.deformation[q];
        const Real33 b_e = F * material.branches[i].inverse_viscous[q] * F.transpose();
        Real33       strain = spectral_map(b_e, [](Real v) { return std::log(v) / 2; });
        const Real33 deviator = strain - strain.trace() / 3 * Real33::Identity();
        const Real   r = std::sqrt(2 * (deviator.squaredNorm() +
                                      Real(b.bulk) / (2 * Real(b.shear)) * strain.trace() * strain.trace()));
        if (r > b.cap)
          strain *= b.cap / r;
        history(cell, i, q).elastic = std::exp(-Real(dt) / (2 * Real(b.time))) * strain;
      }
  }

  BranchHistory &history(std::size_t cell, unsigned branch, unsigned q)
  {
    return history_[(cell * example_.branches.size() + branch) * n_points + q];
  }
  std::vector<double> local(const typename Mesh::Cell &nodes, const Vector &x) const
  {
    std::vector<double> u(n_dofs, 0.0);
    for (unsigned i = 0; i < n_dofs; ++i)
      if (const int dof = mesh_.dof(nodes[i / dim], i % dim); dof >= 0)
        u[i] = x[dof];
    return u;
  }
};

/// Kernel and reference side by side through three steps.
template <int dim>
void compare(const KernelExample<dim> &example, const solver::QuadraticMesh<dim> &mesh, bool round,
             InstructionSet set, double size)
{
  // Nodes moved, edges curved; nothing leaves the axis.
  Random random;
  auto   positions = mesh.nodes();
  for (auto &x : positions)
    for (int c = dim - 1; c >= 0; --c)
      if (c > 0 || x[0] > 0)
        x[c] += 0.05 * size * random();

  const auto         kernel = example.kernel(set);
  auto               group = mesh.group("body", all_cells(mesh), kernel->n_branches(), positions, {});
  ReferenceBody<dim> reference(example, mesh, round, positions);
  // A compressed and sheared shape with a random part, different at each step.
  const auto shape = [&](double share) {
    Vector x = 0.04 * size * random.vector(mesh.n_unknowns());
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    {
      const auto &p = positions[node];
      if (const int dof = mesh.dof(node, 0); dof >= 0)
        x[dof] += share * (0.05 * p[0] + 0.1 * p[dim - 1]);
      if (const int dof = mesh.dof(node, dim - 1); dof >= 0)
        x[dof] -= share * 0.25 * p[dim - 1];
    }
    return x;
  };
  Vector accepted = Vector::Zero(mesh.n_unknowns());
  for (const double share : {0.3, 0.8, 0.6})
  {
    const Vector x = shape(share);
    kernel->begin_step(group, accepted.data(), dt);
    Vector              force = Vector::Zero(mesh.n_unknowns());
    std::vector<double> values(mesh.pattern().nonZeros() + 1, 0.0);
    REQUIRE(kernel->assemble(group, x.data(), force.data(), values.data()));
    const auto   expected = reference.step(accepted, x, true);
    const double force_error =
      (force - expected.force).cwiseAbs().maxCoeff() / expected.force.cwiseAbs().maxCoeff();
    const double stiffness_error = (dense(mesh, values) - expected.stiffness).cwiseAbs().maxCoeff() /
                                   expected.stiffness.cwiseAbs().maxCoeff();
    CHECK(force_error < same_assembly);
    CHECK(stiffness_error < same_assembly);
    kernel->accept(group, x.data());
    accepted = x;
  }
}

/// Stiffness against the reference at `x` in one step from rest.
template <int dim>
double stiffness_error(const KernelExample<dim> &example, const solver::QuadraticMesh<dim> &mesh, bool round,
                       const Vector &x)
{
  const auto   kernel = example.kernel(solver::best_instruction_set());
  auto         group = mesh.group("body", all_cells(mesh), kernel->n_branches(), mesh.nodes(), {});
  const Vector rest = Vector::Zero(x.size());
  kernel->begin_step(group, rest.data(), dt);
  Vector              force = rest;
  std::vector<double> values(mesh.pattern().nonZeros() + 1, 0.0);
  REQUIRE(kernel->assemble(group, x.data(), force.data(), values.data()));
  if (x.isZero())
    CHECK(force.cwiseAbs().maxCoeff() == 0);
  const auto expected = ReferenceBody<dim>(example, mesh, round, mesh.nodes()).step(rest, x, false);
  return (dense(mesh, values) - expected.stiffness).cwiseAbs().maxCoeff() /
         expected.stiffness.cwiseAbs().maxCoeff();
}

/// `n` elements in a row; in three dimensions held at x = 0 along x.
solver::Discretisation quads(unsigned n, double size, MeshSection section)
{
  return {grid(even_lines(0, n * size, n), even_lines(0, size, 1)), section, HeldFaces{}};
}
HexMesh hexes(unsigned n, double size)
{
  auto mesh = hex_grid(even_lines(0, n * size, n), {0, size}, {0, size});
  hold(mesh, [](const Point3 &x) { return std::array{x[0] == 0, false, false}; });
  return mesh;
}

std::vector<InstructionSet> sets()
{
  if (solver::best_instruction_set() == InstructionSet::avx2)
    return {InstructionSet::baseline, InstructionSet::avx2};
  return {InstructionSet::baseline};
}

constexpr double edge = 0.01; ///< of an element [m]
} // namespace

// Five elements: one full batch and one with a single element.
TEST_CASE("force and stiffness are those of a plain assembly", "[kernel]")
{
  for (const auto set : sets())
  {
    INFO((set == InstructionSet::avx2 ? "avx2" : "baseline"));
    for (const auto &example : kernel_examples<2>())
      for (const auto section : {MeshSection::axisymmetric, MeshSection::plane_strain})
      {
        const bool round = section == MeshSection::axisymmetric;
        INFO(example.name << ", " << (round ? "round" : "plane"));
        compare<2>(example, quads(5, edge, section), round, set, edge);
      }
    for (const auto &example : kernel_examples<3>())
    {
      INFO(example.name << ", solid");
      compare<3>(example, hexes(5, edge), false, set, edge);
    }
  }
}

TEST_CASE("the unloaded stiffness, where all principal stretches are equal, is that of a plain assembly",
          "[kernel]")
{
  const auto mesh = quads(2, edge, MeshSection::axisymmetric);
  for (const auto &example : kernel_examples<2>())
  {
    INFO(example.name);
    CHECK(stiffness_error<2>(example, mesh, true, Vector::Zero(mesh.n_unknowns())) < same_assembly);
  }
  const auto solid = hexes(1, edge);
  for (const auto &example : kernel_examples<3>())
  {
    INFO(example.name << ", solid");
    CHECK(stiffness_error<3>(example, solid, false, Vector::Zero(solid.n_unknowns())) < same_assembly);
  }
}

TEST_CASE("nearly equal principal stretches cost the stiffness no more than their difference quotient",
          "[kernel]")
{
  // The quotient gives way to its limit, off by the square of the difference, at 1e-5; there its rounding is
  // 1e-16/1e-5.
  constexpr double quotient = 1e-9;
  Random           random;
  const auto       solid = hexes(1, edge);
  for (const auto &example : kernel_examples<3>())
    for (const double apart : {1e-3, 1e-4, 3e-5, 1e-5, 3e-6, 1e-6, 1e-7})
    {
      INFO(example.name << ", " << apart);
      const double even = example.reference.bulk_modulus > 0 ? 1e-3 : -0.1;
      Vector       x = apart * edge * random.vector(solid.n_unknowns());
      for (unsigned node = 0; node < solid.n_nodes(); ++node)
        for (unsigned c = 0; c < 3; ++c)
          if (const int dof = solid.dof(node, c); dof >= 0)
            x[dof] += even * solid.nodes()[node][c];
      CHECK(stiffness_error<3>(example, solid, false, x) < quotient);
    }
}

TEST_CASE("a shape turned inside out is refused", "[kernel]")
{
  // Mirrored in the last direction.
  const auto refused = [](const auto &example, const auto &mesh, unsigned last) {
    INFO(example.name);
    const auto kernel = example.kernel(solver::best_instruction_set());
    const auto group = mesh.group("body", all_cells(mesh), kernel->n_branches(), mesh.nodes(), {});
    Vector     x = Vector::Zero(mesh.n_unknowns()), force = x;
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
      if (const int dof = mesh.dof(node, last); dof >= 0)
        x[dof] = -1.1 * mesh.nodes()[node][last];
    CHECK_FALSE(kernel->assemble(group, x.data(), force.data(), nullptr));
  };
  const auto                      plane = quads(1, edge, MeshSection::plane_strain);
  const solver::QuadraticMesh<2> &mesh = plane;
  for (const auto &example : kernel_examples<2>())
    refused(example, mesh, 1);
  for (const auto &example : kernel_examples<3>())
    refused(example, hexes(1, edge), 2);
}
