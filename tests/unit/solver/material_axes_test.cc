// SPDX-License-Identifier: Apache-2.0
// Laws in axes of the material: an isotropic one answers as in principal strains, whatever the strains; of a
// laminate stress is the slope of the energy, stiffness that of the forces; a body that turns takes its axes
// along; at rest there is no stress.
#include "materials/laminate.h"
#include "solver/kernels/material_axes.h"
#include "tests/support/hex_mesh.h"
#include "tests/support/kernel_response.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double edge = 0.01; ///< of an element [m]

using Motion = solver::SolidMotion<double>;

Motion motion(const Eigen::Matrix3d &gradient)
{
  Motion out;
  for (unsigned i = 0; i < 3; ++i)
    for (unsigned j = 0; j < 3; ++j)
      out.h[i][j] = gradient(i, j) - (i == j ? 1.0 : 0.0);
  return out;
}

Eigen::Matrix3d rotation(Random &random)
{
  const Eigen::Vector3d axis(random(), random(), random());
  return Eigen::AngleAxisd(3 * random(), axis.normalized()).toRotationMatrix();
}

/// Moduli of an isotropic body in axes.
materials::AxesModuli isotropic(double shear, double bulk)
{
  materials::AxesModuli moduli{};
  for (unsigned i = 0; i < 3; ++i)
    for (unsigned j = 0; j <= i; ++j)
      moduli[materials::entry_of(i, j)] = bulk + (i == j ? 4.0 : -2.0) / 3 * shear;
  for (unsigned i = 3; i < 6; ++i)
    moduli[materials::entry_of(i, i)] = shear;
  return moduli;
}

materials::Laminate woven()
{
  const auto ply = [](double share, double angle) {
    return materials::Ply{1.2e9, 0.08e9, 0.045e9, 0.3, share * edge, angle};
  };
  return materials::make_laminate({ply(0.4, 0.3), ply(0.3, -0.7), ply(0.3, 1.2)});
}

/// One element of a law.
struct Body
{
  HexMesh                                   mesh = hex_grid({0, edge}, {0, edge}, {0, edge});
  std::unique_ptr<solver::SolidKernelOf<3>> kernel;
  solver::ElementGroupOf<3>                 group;

  explicit Body(std::unique_ptr<solver::SolidKernelOf<3>> made) : kernel(std::move(made))
  {
    hold(mesh, free_everywhere);
    group = mesh.group("body", {0}, 0, mesh.nodes(), {});
  }
  Vector shape(Random &random) const
  {
    Vector x = 0.01 * edge * random.vector(mesh.n_unknowns());
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
      x[mesh.dof(node, 0)] += 0.3 * mesh.nodes()[node][2];
    return x;
  }
  double          energy(const Vector &x) { return kernel->accept(group, x.data()).network; }
  Vector          force(const Vector &x) const { return force_of(*kernel, group, x); }
  Eigen::MatrixXd stiffness(const Vector &x) const { return stiffness_of(*kernel, group, mesh, x); }
};
} // namespace

TEST_CASE("an isotropic law in axes answers as in principal strains", "[kernel]")
{
  const materials::Hencky law{0.8e9, 1.7e9};
  Random                  random;
  for (unsigned go = 0; go < 400; ++go)
  {
    // Stretches that lie apart by 1 to 1e-14, about one or far from it.
    const double    apart = 0.4 * std::pow(10.0, -(int(go) % 15));
    Eigen::Vector3d stretch(1 + apart * random(), 1 + apart * random(), 1 + apart * random());
    if (go % 2)
      stretch *= 1 + 0.5 * random();
    if (go % 3 == 2)
      stretch[1] *= 1.6;
    const Eigen::Matrix3d turn = rotation(random);
    const auto            here = motion(rotation(random) * turn * stretch.asDiagonal() * turn.transpose());
    const auto            obtained = solver::in_space(isotropic(law.shear_modulus, law.bulk_modulus), here);
    solver::PointResponse<double, 6> expected;
    const auto                       frame = solver::SolidFrame<double>::of_excess(here.left_excess());
    frame.add(law.response(frame.strains), expected);
    constexpr double rounding = 1e-11; // some hundred roundings, and series of that error
    INFO("apart " << apart << ", stretches " << stretch.transpose());
    for (unsigned i = 0; i < 6; ++i)
      CHECK(obtained.stress[i] == Approx(expected.stress[i]).margin(rounding * law.bulk_modulus));
    for (unsigned i = 0; i < 21; ++i)
      CHECK(obtained.tangent[i] == Approx(expected.tangent[i]).margin(10 * rounding * law.bulk_modulus));
  }
}

TEST_CASE("a laminate: forces are slopes of the energy, stiffness is the slope of the forces", "[kernel]")
{
  constexpr double by_differences = 1e-6, h = 1e-8; // truncation 1e-9, rounding 1e-8 of the largest
  Random           random;
  for (const auto set : {solver::InstructionSet::baseline, solver::best_instruction_set()})
  {
    Body            body(solver::make_kernel<3>(woven(), set));
    const Vector    x = body.shape(random), force = body.force(x);
    const auto      stiffness = body.stiffness(x);
    Vector          slope(x.size());
    Eigen::MatrixXd slopes(x.size(), x.size());
    for (int i = 0; i < x.size(); ++i)
    {
      Vector up = x, down = x;
      up[i] += h, down[i] -= h;
      slope[i] = (body.energy(up) - body.energy(down)) / (2 * h);
      slopes.col(i) = (body.force(up) - body.force(down)) / (2 * h);
    }
    CHECK((force - slope).cwiseAbs().maxCoeff() < by_differences * force.cwiseAbs().maxCoeff());
    CHECK((stiffness - slopes).cwiseAbs().maxCoeff() < by_differences * stiffness.cwiseAbs().maxCoeff());
  }
}

TEST_CASE("a laminate that turns takes its axes along, and at rest it is free of stress", "[kernel]")
{
  Random       random;
  Body         body(solver::make_kernel<3>(woven()));
  const Vector x = body.shape(random), force = body.force(x);
  CHECK(body.force(Vector::Zero(x.size())).cwiseAbs().maxCoeff() == 0);
  const Eigen::Matrix3d turn = rotation(random);
  Vector                turned(x.size());
  const auto            at = [&](const Vector &v, unsigned node) {
    return Eigen::Vector3d(v[body.mesh.dof(node, 0)], v[body.mesh.dof(node, 1)], v[body.mesh.dof(node, 2)]);
  };
  for (unsigned node = 0; node < body.mesh.n_nodes(); ++node)
  {
    const Eigen::Vector3d place(body.mesh.nodes()[node].data());
    const Eigen::Vector3d moved = turn * (place + at(x, node)) - place;
    for (unsigned c = 0; c < 3; ++c)
      turned[body.mesh.dof(node, c)] = moved[c];
  }
  const Vector     answer = body.force(turned);
  constexpr double rounding = 1e-9; // strains of 0.1 under turns of a radian
  for (unsigned node = 0; node < body.mesh.n_nodes(); ++node)
    CHECK((at(answer, node) - turn * at(force, node)).norm() < rounding * force.cwiseAbs().maxCoeff());
  CHECK(body.energy(turned) == Approx(body.energy(x)).epsilon(rounding));
}
