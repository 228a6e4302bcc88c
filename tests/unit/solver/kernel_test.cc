// SPDX-License-Identifier: Apache-2.0
// The element loops against a second assembly that shares no code with them
// (tests/support/reference_assembly.h).
#include "solver/kernels/solid_kernel.h"
#include "tests/support/reference_assembly.h"
#include "tests/support/single_body.h"

using namespace solemech;
using namespace solemech::tests;
using solver::InstructionSet;

namespace
{
/// Between the kernel in double and the reference in extended precision, over the largest entry: some hundred
/// roundings an entry, each of 1e-16.
constexpr double same_assembly = 1e-12;

constexpr double atmosphere = 101325;
constexpr double dt = 0.01, relaxation = 0.02, cap = 0.05;

struct Example
{
  std::string                                                         name;
  std::function<std::unique_ptr<solver::SolidKernel>(InstructionSet)> kernel;
  ReferenceMaterial                                                   reference;
  struct BranchNumbers
  {
    double shear, bulk, time, cap;
  };
  std::vector<BranchNumbers> branches;
};

constexpr double no_cap = std::numeric_limits<double>::infinity();

std::vector<Example> examples()
{
  std::vector<Example> all;
  {
    materials::Foam foam{
      {{0.9e6, 4, 0.25}, {0.3e6, -2, 0}}, {0.16, 0.8, atmosphere, 1.2}, {0.16, 2e6, 3}, {}};
    foam.branches = {materials::RelaxingBranch(0.4e6, 0.6e6, relaxation),
                     materials::SlippingBranch(0.3e6, 0.5e6, cap, 5.0)};
    all.push_back(
      {"foam",
       [=](InstructionSet set) { return solver::make_kernel(foam, set); },
       {sum_of({reference_ogden(0.9e6, 4, 0.25), reference_ogden(0.3e6, -2, 0),
                reference_cell_gas(0.16L, 0.8L, atmosphere, 1.2L), reference_densification(0.16L, 2e6, 3)}),
        {},
        0},
       {{0.4e6, 0.6e6, relaxation, no_cap}, {0.3e6, 0.5e6, 5.0, cap}}});
  }
  {
    materials::IsotropicPlate plate{{0.8e9, 1.7e9}, {materials::RelaxingBranch(0.1e9, 0.2e9, relaxation)}};
    all.push_back({"plate",
                   [=](InstructionSet set) { return solver::make_kernel(plate, set); },
                   {reference_hencky(0.8e9, 1.7e9), {}, 0},
                   {{0.1e9, 0.2e9, relaxation, no_cap}}});
  }
  {
    materials::Rubber rubber{
      {0.6e6, -0.05e6, 0.02e6, 0.1e6}, {1e9}, {materials::RelaxingBranch(0.3e6, 0, relaxation)}};
    all.push_back({"rubber",
                   [=](InstructionSet set) { return solver::make_kernel(rubber, set); },
                   {reference_isochoric_rubber(0.6e6, -0.05e6, 0.02e6, 0.1e6), {}, 1e9},
                   {{0.3e6, 0, relaxation, no_cap}}});
  }
  return all;
}

/// Dense lower triangle of the values on a pattern, completed.
Eigen::MatrixXd dense(const solver::Discretisation &mesh, const std::vector<double> &values)
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

class ReferenceBody
{
public:
  ReferenceBody(const Example &example, const solver::Discretisation &mesh,
                const std::vector<Point> &positions)
    : example_(example), mesh_(mesh), positions_(positions)
  {
    history_.assign(mesh.cells().size() * 9 * example.branches.size(), {});
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
      const auto   &nodes = mesh_.cells()[cell];
      NodePositions place;
      for (unsigned a = 0; a < 9; ++a)
        place[a] = positions_[nodes[a]];
      const bool round = mesh_.section() == MeshSection::axisymmetric;
      auto       material = example_.reference;
      const auto before =
        reference_element(place, round, {example_.reference.law, {}, 0}, local(nodes, accepted));
      for (unsigned i = 0; i < example_.branches.size(); ++i)
      {
        const auto     &b = example_.branches[i];
        const Real      remaining = std::exp(-Real(dt) / (2 * Real(b.time)));
        ReferenceBranch branch{std::isfinite(b.cap)
                                 ? reference_huber(remaining, b.shear, b.bulk, b.cap)
                                 : reference_hencky(remaining * b.shear, remaining * b.bulk),
                               {}};
        for (unsigned q = 0; q < 9; ++q)
        {
          const Real33 decayed = 2 * remaining * history(cell, i, q).elastic;
          const Real33 b_e = spectral_map(decayed, [](Real v) { return std::exp(v); });
          const Real33 back = before.deformation[q].inverse();
          branch.inverse_viscous[q] = back * b_e * back.transpose();
        }
        material.branches.push_back(branch);
      }
      const auto element = reference_element(place, round, material, local(nodes, x));
      for (unsigned i = 0; i < 18; ++i)
      {
        const int row = mesh_.dof(nodes[i / 2], i % 2);
        if (row < 0)
          continue;
        out.force[row] += double(element.force[i]);
        for (unsigned j = 0; j < 18; ++j)
          if (const int column = mesh_.dof(nodes[j / 2], j % 2); column >= 0)
            out.stiffness(row, column) += double(element.stiffness(i, j));
      }
      if (accept)
        for (unsigned i = 0; i < example_.branches.size(); ++i)
          for (unsigned q = 0; q < 9; ++q)
          {
            const auto  &b = example_.branches[i];
            const Real33 F = element.deformation[q];
            const Real33 b_e = F * material.branches[i].inverse_viscous[q] * F.transpose();
            Real33       strain = spectral_map(b_e, [](Real v) { return std::log(v) / 2; });
            const Real33 deviator = strain - strain.trace() / 3 * Real33::Identity();
            const Real   r = std::sqrt(2 * (deviator.squaredNorm() + Real(b.bulk) / (2 * Real(b.shear)) *
                                                                     strain.trace() * strain.trace()));
            if (r > b.cap)
              strain *= b.cap / r;
            history(cell, i, q).elastic = std::exp(-Real(dt) / (2 * Real(b.time))) * strain;
          }
    }
    return out;
  }

private:
  const Example                &example_;
  const solver::Discretisation &mesh_;
  std::vector<Point>            positions_;
  std::vector<BranchHistory>    history_;

  BranchHistory &history(std::size_t cell, unsigned branch, unsigned q)
  {
    return history_[(cell * example_.branches.size() + branch) * 9 + q];
  }
  std::array<double, 18> local(const std::array<unsigned, 9> &nodes, const Vector &x) const
  {
    std::array<double, 18> u{};
    for (unsigned i = 0; i < 18; ++i)
      if (const int dof = mesh_.dof(nodes[i / 2], i % 2); dof >= 0)
        u[i] = x[dof];
    return u;
  }
};
} // namespace

TEST_CASE("force and stiffness are those of a plain assembly", "[kernel]")
{
  const double size = 0.01; // edge of an element [m]
  for (const auto &example : examples())
    for (const auto section : {MeshSection::axisymmetric, MeshSection::plane_strain})
      for (const auto set : {InstructionSet::baseline, InstructionSet::avx2})
      {
        if (set == InstructionSet::avx2 && solver::best_instruction_set() != InstructionSet::avx2)
          continue;
        INFO(example.name << ", " << (section == MeshSection::axisymmetric ? "round" : "plane") << ", "
                          << (set == InstructionSet::avx2 ? "avx2" : "baseline"));
        // Five elements: one full batch and one with a single element. Nodes moved, edges curved.
        HeldFaces                    held;
        const solver::Discretisation mesh(grid(even_lines(0, 5 * size, 5), even_lines(0, size, 1)), section,
                                          held);
        Random                       random;
        auto                         positions = mesh.nodes();
        for (auto &x : positions)
          x = {x[0] > 0 ? x[0] + 0.05 * size * random() : 0.0, x[1] + 0.05 * size * random()};

        const auto    kernel = example.kernel(set);
        auto          group = mesh.group(0, kernel->n_branches(), positions, {});
        ReferenceBody reference(example, mesh, positions);
        // A compressed and sheared shape with a random part, different at each step.
        const auto shape = [&](double share) {
          Vector x = 0.04 * size * random.vector(mesh.n_unknowns());
          for (unsigned node = 0; node < mesh.n_nodes(); ++node)
          {
            if (const int dof = mesh.dof(node, 0); dof >= 0)
              x[dof] += share * (0.05 * positions[node][0] + 0.1 * positions[node][1]);
            if (const int dof = mesh.dof(node, 1); dof >= 0)
              x[dof] -= share * 0.25 * positions[node][1];
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
}

TEST_CASE("the unloaded stiffness, where all principal stretches are equal, is that of a plain assembly",
          "[kernel]")
{
  for (const auto &example : examples())
  {
    INFO(example.name);
    const solver::Discretisation mesh(grid(even_lines(0, 0.02, 2), even_lines(0, 0.01, 1)),
                                      MeshSection::axisymmetric, HeldFaces{});
    const auto                   kernel = example.kernel(solver::best_instruction_set());
    auto                         group = mesh.group(0, kernel->n_branches(), mesh.nodes(), {});
    ReferenceBody                reference(example, mesh, mesh.nodes());
    const Vector                 zero = Vector::Zero(mesh.n_unknowns());
    kernel->begin_step(group, zero.data(), dt);
    Vector              force = zero;
    std::vector<double> values(mesh.pattern().nonZeros() + 1, 0.0);
    REQUIRE(kernel->assemble(group, zero.data(), force.data(), values.data()));
    const auto expected = reference.step(zero, zero, false);
    CHECK(force.cwiseAbs().maxCoeff() == 0);
    CHECK((dense(mesh, values) - expected.stiffness).cwiseAbs().maxCoeff() <
          same_assembly * expected.stiffness.cwiseAbs().maxCoeff());
  }
}

TEST_CASE("a shape turned inside out is refused", "[kernel]")
{
  for (const auto &example : examples())
  {
    INFO(example.name);
    const solver::Discretisation mesh(grid({0, 0.01}, {0, 0.01}), MeshSection::plane_strain, HeldFaces{});
    const auto                   kernel = example.kernel(solver::best_instruction_set());
    const auto                   group = mesh.group(0, kernel->n_branches(), mesh.nodes(), {});
    const Vector x = unknown_values(mesh, field(mesh, [](const Point &p) { return Point{0, -1.1 * p[1]}; }));
    Vector       force = Vector::Zero(mesh.n_unknowns());
    CHECK_FALSE(kernel->assemble(group, x.data(), force.data(), nullptr));
  }
}
