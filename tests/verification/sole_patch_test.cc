// SPDX-License-Identifier: Apache-2.0
// Columns of a sole in the element loops: with a ring, a rim and layers on an arc, its cells meet in threes
// and fives and are skewed. A homogeneous strain is in balance at every inner node of any mesh whose cells
// fit together (the patch test: Irons & Razzaque, in Aziz (ed.), Mathematical Foundations of the Finite
// Element Method, 1972), and the forces at the surface do the work of the stress, sum f X = P V.
#include "geometry/sole_mesh/column_mesh.h"
#include "solver/part_law.h"
#include "tests/support/drawn_soles.h"
#include "tests/support/hex_mesh.h"

#include <cmath>

using namespace solemech;
using namespace solemech::tests;

namespace
{
geometry::ColumnMesh curved_sole()
{
  const auto plan = geometry::make_plan_mesh(
    ellipse(0.13, 0.045), {.along = 20e-3,
                           .across = 14e-3,
                           .lines = {{0.02, 0.05}},
                           .rings = {geometry::ring_along_circle({-0.06, 0.005}, 0.02, 4e-3)}});
  REQUIRE(plan.rings_fitted[0]);
  return geometry::make_column_mesh(
    plan,
    [](const geometry::PlanPoint &p) -> std::vector<double> {
      return {0, 3e-3, 0.02 + 0.03 * p[0]};
    },
    {1, 2},
    [](double x, double z) -> std::array<double, 2> {
      return {x - 2 * x * z, z + x * x};
    });
}

HexMesh quadratic(const geometry::ColumnMesh &columns)
{
  std::vector<HexMesh::Corners> cells;
  for (const auto &cell : columns.cells)
    cells.push_back(cell.vertices);
  return {columns.vertices, cells};
}

/// Nodes of the surface, by the local numbers of a face's nodes: 3 x 3 x 3, the first direction fastest.
std::vector<bool> on_surface(const HexMesh &mesh, const geometry::ColumnMesh &columns)
{
  std::vector<bool> found(mesh.n_nodes());
  for (const auto &face : columns.faces)
    for (unsigned a = 0; a < 27; ++a)
    {
      const std::array<unsigned, 3> place{a % 3, a / 3 % 3, a / 9};
      if (place[face.face / 2] == 2 * (face.face % 2))
        found[mesh.cells()[face.cell][a]] = true;
    }
  return found;
}
/// A foam, a rubber, a plate.
std::vector<materials::Material> materials_of_a_sole()
{
  std::vector<materials::Material> all(3);
  materials::FoamData              foam;
  foam.network = {{0.3e6, 6, 0.1}};
  all[0].data = foam;
  all[1].data = materials::RubberData{.c10 = 0.6e6, .bulk_modulus = 600e6, .relaxing = {}};
  all[2].data = materials::PlateData{.youngs_modulus = 30e9, .poisson_ratio = 0.3, .relaxing = {}};
  return all;
}
} // namespace

TEST_CASE("the columns of a sole carry a homogeneous state exactly", "[patch]")
{
  const auto columns = curved_sole();
  auto       mesh = quadratic(columns);
  hold(mesh, free_everywhere);
  const auto      surface = on_surface(mesh, columns);
  Eigen::Matrix3d gradient;
  gradient << 0.05, 0.06, 0.1, 0, 0.03, -0.05, 0, 0, -0.2;
  double drawn = 0;
  for (unsigned c = 0; c < columns.cells.size(); ++c)
    drawn += geometry::cell_volume(columns, c);

  for (const auto &material : materials_of_a_sole())
  {
    const auto kernel = solver::make_part_kernel<3>(material, 1.0, solver::Case());
    auto       group = mesh.group("body", all_cells(mesh), 0, mesh.nodes(), {});
    double     volume = 0;
    for (const auto &batch : group.batches)
      for (const auto &weight : batch.weight)
        for (const double w : weight)
          volume += w;
    CHECK(volume == Approx(drawn).epsilon(1e-12)); // both integrate exactly

    Vector x = Vector::Zero(mesh.n_unknowns());
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    {
      const Eigen::Vector3d u = gradient * Eigen::Map<const Eigen::Vector3d>(mesh.nodes()[node].data());
      for (unsigned c = 0; c < 3; ++c)
        x[mesh.dof(node, c)] = u[c];
    }
    Vector              force = Vector::Zero(mesh.n_unknowns());
    std::vector<double> values(mesh.pattern().nonZeros() + 1, 0.0);
    REQUIRE(kernel->assemble(group, x.data(), force.data(), values.data()));

    double          inner = 0, outer = 0;
    Eigen::Matrix3d work = Eigen::Matrix3d::Zero();
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    {
      Eigen::Vector3d f;
      for (unsigned c = 0; c < 3; ++c)
        f[c] = force[mesh.dof(node, c)];
      (surface[node] ? outer : inner) = std::max(surface[node] ? outer : inner, f.norm());
      work += f * Eigen::Map<const Eigen::Vector3d>(mesh.nodes()[node].data()).transpose();
    }
    CHECK(inner < 1e-11 * outer); // rounding of a sum over cells; rubber has its bulk modulus in it
    // P F^T is symmetric for any material that does not care how it is turned
    const Eigen::Matrix3d kirchhoff = work * (Eigen::Matrix3d::Identity() + gradient).transpose();
    CHECK((kirchhoff - kirchhoff.transpose()).norm() < 1e-10 * kirchhoff.norm());
  }
}
