// SPDX-License-Identifier: Apache-2.0
// Three dimensions: principal frames of symmetric tensors, forces as slopes of the energy, stiffness as slope
// of the forces, and that a turned body answers with turned forces.
#include "solver/kernels/solid_kinematics.h"
#include "tests/support/hex_mesh.h"
#include "tests/support/kernel_examples.h"
#include "tests/support/kernel_response.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double edge = 0.01; ///< of an element [m]

using Tensor = solver::SolidTensor<double>;

Eigen::Matrix3d matrix(const Tensor &t)
{
  Eigen::Matrix3d m;
  m << t[0], t[3], t[5], t[3], t[1], t[4], t[5], t[4], t[2];
  return m;
}

Tensor tensor(const Eigen::Matrix3d &m)
{
  return {m(0, 0), m(1, 1), m(2, 2), m(0, 1), m(1, 2), m(2, 0)};
}

Eigen::Matrix3d rotation(Random &random)
{
  const Eigen::Vector3d axis(random(), random(), random());
  return Eigen::AngleAxisd(3 * random(), axis.normalized()).toRotationMatrix();
}

/// One distorted element in a state with histories, ready for a step.
struct Body
{
  HexMesh                                   mesh = hex_grid({0, edge}, {0, edge}, {0, edge});
  std::unique_ptr<solver::SolidKernelOf<3>> kernel;
  solver::ElementGroupOf<3>                 group;

  explicit Body(const KernelExample<3> &example) : kernel(example.kernel(solver::best_instruction_set()))
  {
    hold(mesh, free_everywhere);
    Random random;
    auto   moves = mesh.nodes();
    for (auto &move : moves)
      for (auto &component : move)
        component = 0.05 * edge * random();
    mesh.move_nodes(moves);
    group = mesh.group("body", {0}, kernel->n_branches(), mesh.nodes(), {});
  }

  /// Displacements that squeeze, shear and disturb the element.
  Vector shape(double share, Random &random) const
  {
    Vector x = 0.02 * edge * random.vector(mesh.n_unknowns());
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    {
      const auto &p = mesh.nodes()[node];
      x[mesh.dof(node, 0)] += share * (0.06 * p[0] + 0.1 * p[2]);
      x[mesh.dof(node, 1)] += share * (0.04 * p[1] - 0.05 * p[0]);
      x[mesh.dof(node, 2)] -= share * 0.2 * p[2];
    }
    return x;
  }

  void step(const Vector &from, const Vector &to, double dt)
  {
    kernel->begin_step(group, from.data(), dt);
    kernel->accept(group, to.data());
  }

  Vector          force(const Vector &x) const { return force_of(*kernel, group, x); }
  Eigen::MatrixXd stiffness(const Vector &x) const { return stiffness_of(*kernel, group, mesh, x); }

  /// All that is stored at the end of the step, with what the step has lost.
  double energy(const Vector &x) const
  {
    auto       copy = group;
    const auto e = kernel->accept(copy, x.data());
    return e.network + e.cell_gas + e.densification + e.relaxing + e.slipping + e.lost_relaxing +
           e.lost_slipping + e.lost_recovery;
  }
};
} // namespace

TEST_CASE("principal frames of symmetric tensors, distinct or clustered, keep all digits", "[kernel]")
{
  constexpr double rounding = 4e-15; ///< some ten rotations, each a few roundings of the largest entry
  Random           random;
  for (unsigned go = 0; go < 2000; ++go)
  {
    // Principal values that lie apart by 1 to 1e-16 of the largest, and are small by 1 to 1e-12.
    const double apart = std::pow(10.0, -(int(go) % 17)), size = 0.5 * std::pow(10.0, -(int(go / 17) % 13));
    Eigen::Vector3d values(random(), random(), random());
    values = size * (Eigen::Vector3d::Ones() + apart * values);
    if (go % 3 == 1)
      values[2] = -size;
    const Eigen::Matrix3d turn = go % 5 ? rotation(random) : Eigen::Matrix3d(Eigen::Matrix3d::Identity());
    const Eigen::Matrix3d whole = turn * values.asDiagonal() * turn.transpose();
    const auto            e = tensor(whole);
    const auto            frame = solver::SolidFrame<double>::of_excess(e);
    Eigen::Matrix3d       axes;
    for (unsigned a = 0; a < 3; ++a)
      for (unsigned i = 0; i < 3; ++i)
        axes(i, a) = frame.axes[a][i];
    INFO("apart " << apart << ", size " << size);
    const Eigen::Matrix3d gram = axes.transpose() * axes - Eigen::Matrix3d::Identity();
    CHECK(gram.cwiseAbs().maxCoeff() < rounding);
    CHECK((matrix(frame.tensor(frame.excess)) - matrix(e)).cwiseAbs().maxCoeff() < rounding * 2 * size);

    // Logarithmic strain 1/2 ln(I + e) by another way and in more digits.
    const Real33 log = spectral_map(matrix(e).cast<Real>(), [](Real v) { return std::log1p(v) / 2; });
    const double smallest = 1 + values.minCoeff();
    CHECK((matrix(frame.tensor(frame.strains)).cast<Real>() - log).cwiseAbs().maxCoeff() <
          rounding * 2 * size / smallest);
  }
}

TEST_CASE("in three dimensions forces are slopes of the energy and the stiffness that of the forces",
          "[kernel]")
{
  // Central differences: truncation 1e-9, rounding 1e-8 of the largest.
  constexpr double by_differences = 1e-6, h = 1e-8;
  for (const auto &example : kernel_examples<3>())
  {
    INFO(example.name);
    Random       random;
    Body         body(example);
    const Vector before = body.shape(0.4, random), x = body.shape(1, random);
    body.step(Vector::Zero(x.size()), before, 0.01);

    // Nothing decays in a step of no time, so that what is stored and lost has the forces as its slope.
    body.kernel->begin_step(body.group, before.data(), 1e-12);
    const Vector force = body.force(x);
    Vector       slope(x.size());
    for (int i = 0; i < x.size(); ++i)
    {
      Vector up = x, down = x;
      up[i] += h, down[i] -= h;
      slope[i] = (body.energy(up) - body.energy(down)) / (2 * h);
    }
    CHECK((force - slope).cwiseAbs().maxCoeff() < by_differences * force.cwiseAbs().maxCoeff());

    body.kernel->begin_step(body.group, before.data(), 0.01);
    const auto      stiffness = body.stiffness(x);
    Eigen::MatrixXd slopes(x.size(), x.size());
    for (int i = 0; i < x.size(); ++i)
    {
      Vector up = x, down = x;
      up[i] += h, down[i] -= h;
      slopes.col(i) = (body.force(up) - body.force(down)) / (2 * h);
    }
    CHECK((stiffness - slopes).cwiseAbs().maxCoeff() < by_differences * stiffness.cwiseAbs().maxCoeff());
  }
}

TEST_CASE("a body that is turned between steps answers with turned forces and the same energies", "[kernel]")
{
  constexpr double rounding = 1e-11; ///< over the largest; rubber loses digits to its bulk modulus
  for (const auto &example : kernel_examples<3>())
  {
    INFO(example.name);
    Random       random;
    Body         still(example), turned(example);
    const Vector zero = Vector::Zero(still.mesh.n_unknowns()), first = still.shape(0.5, random),
                 second = still.shape(1, random);
    const auto turn = [&](const Eigen::Matrix3d &Q, const Vector &x, bool place) {
      Vector out(x.size());
      for (unsigned node = 0; node < still.mesh.n_nodes(); ++node)
      {
        const Eigen::Vector3d p = Eigen::Map<const Eigen::Vector3d>(still.mesh.nodes()[node].data());
        Eigen::Vector3d       u;
        for (unsigned c = 0; c < 3; ++c)
          u[c] = x[still.mesh.dof(node, c)];
        const Eigen::Vector3d v = place ? Eigen::Vector3d(Q * (p + u) - p) : Eigen::Vector3d(Q * u);
        for (unsigned c = 0; c < 3; ++c)
          out[still.mesh.dof(node, c)] = v[c];
      }
      return out;
    };
    const auto   Q1 = rotation(random), Q2 = rotation(random);
    const Vector first_turned = turn(Q1, first, true), second_turned = turn(Q2, second, true);
    still.step(zero, first, 0.01);
    turned.step(zero, first_turned, 0.01);
    still.kernel->begin_step(still.group, first.data(), 0.01);
    turned.kernel->begin_step(turned.group, first_turned.data(), 0.01);
    const Vector wanted = turn(Q2, still.force(second), false);
    CHECK((turned.force(second_turned) - wanted).cwiseAbs().maxCoeff() <
          rounding * wanted.cwiseAbs().maxCoeff());
    CHECK(turned.energy(second_turned) == Approx(still.energy(second)).epsilon(rounding));
  }
}

namespace
{
/// Stress and energy of one element that is stretched evenly in two steps, histories and all.
struct Stretched
{
  double vertical, lateral, out_of_plane; ///< Cauchy stress [Pa]
  double energy;                          ///< held and lost in the step, per volume [J/m3]
};

template <int dim>
Stretched stretch(const KernelExample<dim> &example, const solver::QuadraticMesh<dim> &mesh, double volume,
                  const std::array<double, dim> &strain)
{
  const auto kernel = example.kernel(solver::best_instruction_set());
  auto       group = mesh.group("body", {0}, kernel->n_branches(), mesh.nodes(), {});
  Vector     from = Vector::Zero(mesh.n_unknowns()), to = from;
  Stretched  out{};
  for (const double share : {0.6, 1.0})
  {
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
      for (unsigned c = 0; c < dim; ++c)
        if (const int dof = mesh.dof(node, c); dof >= 0)
          to[dof] = share * strain[c] * mesh.nodes()[node][c];
    kernel->begin_step(group, from.data(), 0.01);
    const auto e = kernel->accept(group, to.data());
    out.energy = (e.network + e.cell_gas + e.densification + e.relaxing + e.slipping + e.lost_relaxing +
                  e.lost_slipping + e.lost_recovery) /
                 volume;
    from = to;
  }
  const auto point = kernel->fields(group, to.data()).front()[4];
  if constexpr (dim == 2)
    out.vertical = point.vertical_stress, out.lateral = point.radial_stress,
    out.out_of_plane = point.hoop_stress;
  else
    out.vertical = point.stress[2], out.lateral = point.stress[0], out.out_of_plane = point.stress[1];
  return out;
}
} // namespace

TEST_CASE("a cube stretched evenly answers like a section in plane strain and one round an axis", "[kernel]")
{
  constexpr double rounding = 1e-12; ///< over the largest stress; of rubber also over its bulk modulus
  const double     down = -0.2, wide = 0.08;
  auto             cube = hex_grid({0, edge}, {0, edge}, {0, edge});
  hold(cube, free_everywhere);
  const auto plane_examples = kernel_examples<2>();
  const auto solid_examples = kernel_examples<3>();
  for (const bool round : {true, false})
    for (std::size_t i = 0; i < solid_examples.size(); ++i)
    {
      INFO(solid_examples[i].name << (round ? ", round" : ", plane"));
      const solver::Discretisation section(grid({0, edge}, {0, edge}),
                                           round ? MeshSection::axisymmetric : MeshSection::plane_strain,
                                           HeldFaces{});
      const double depth = round ? M_PI * edge : 2; // of the section: the disc over its radius
      const auto   flat = stretch<2>(plane_examples[i], section, depth * edge * edge, {wide, down});
      const auto   solid =
        stretch<3>(solid_examples[i], cube, edge * edge * edge, {wide, round ? wide : 0.0, down});
      const double largest =
        std::max(std::abs(flat.vertical), double(solid_examples[i].reference.bulk_modulus));
      CHECK(std::abs(solid.vertical - flat.vertical) < rounding * largest);
      CHECK(std::abs(solid.lateral - flat.lateral) < rounding * largest);
      CHECK(std::abs(solid.out_of_plane - flat.out_of_plane) < rounding * largest);
      CHECK(solid.energy == Approx(flat.energy).epsilon(rounding));
    }
}
