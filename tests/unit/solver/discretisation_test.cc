// SPDX-License-Identifier: Apache-2.0
// Nodes, unknowns, edges and element data of a mesh against plain geometry.
#include "solver/mesh/discretisation.h"
#include "tests/support/single_body.h"
#include "tests/unit/geometry/sample_outlines.h"

#include <set>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double rounding = 1e-12; ///< of sums of some thousand terms
}

TEST_CASE("weights add up to the volume and masses to the mass", "[discretisation]")
{
  const double                 R = 0.03, H = 0.02, density = 150;
  const auto                   section = GENERATE(MeshSection::axisymmetric, MeshSection::plane_strain);
  const double                 volume = section == MeshSection::axisymmetric ? M_PI * R * R * H : 2 * R * H;
  const solver::Discretisation mesh(grid(even_lines(0, R, 5), even_lines(0, H, 3)), section,
                                    HeldFaces{.axis = {false, false}});
  const auto                   group = mesh.group(0, 0, mesh.nodes(), {});
  double                       sum = 0;
  for (const auto &batch : group.batches)
    for (const auto &weight : batch.weight)
      for (const double one : weight)
        sum += one;
  CHECK(sum == Approx(volume).epsilon(rounding));

  std::vector<double> mass(mesh.pattern().nonZeros() + 1, 0.0);
  mesh.add_mass(group, density, mass.data());
  solver::SparseMatrix matrix = mesh.pattern();
  std::copy_n(mass.begin(), matrix.nonZeros(), matrix.valuePtr());
  const Vector rise = unknown_values(mesh, field(mesh, [](const Point &) { return Point{0, 1}; }));
  const Vector momentum = matrix.selfadjointView<Eigen::Lower>() * rise;
  CHECK(rise.dot(momentum) == Approx(density * volume).epsilon(rounding));
  // Moving sideways and moving up do not mix.
  const Vector widen = unknown_values(mesh, field(mesh, [](const Point &x) { return Point{x[0], 0}; }));
  CHECK(widen.dot(momentum) == Approx(0).margin(rounding * density * volume));
}

TEST_CASE("held faces lose their unknowns, every other component has one of its own", "[discretisation]")
{
  const solver::Discretisation mesh(grid(even_lines(0, 1, 3), even_lines(0, 1, 2)), MeshSection::axisymmetric,
                                    HeldFaces{.base = {true, true}, .top = {false, true}});
  CHECK(mesh.n_nodes() == 7 * 5);
  std::set<int> seen;
  int           n_held = 0;
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    for (unsigned c = 0; c < 2; ++c)
    {
      const auto &x = mesh.nodes()[node];
      const bool  held = x[1] == 0 || (x[0] == 0 && c == 0) || (x[1] == 1 && c == 1);
      CHECK((mesh.dof(node, c) < 0) == held);
      n_held += held;
      if (!held)
        CHECK(seen.insert(mesh.dof(node, c)).second);
    }
  CHECK(mesh.n_unknowns() == 2 * 35 - n_held);
  CHECK(*seen.rbegin() == mesh.n_unknowns() - 1);
}

TEST_CASE("edges run as the faces of the mesh do, with the mid node between", "[discretisation]")
{
  for (const auto &outline : {heel_plug(), forefoot_plug(), two_unit_plug()})
  {
    const auto                   plug = geometry::make_plug_mesh(outline, geometry::MeshSize(1));
    const solver::Discretisation mesh(plug, MeshSection::axisymmetric, HeldFaces{});
    for (const auto &face : plug.faces)
    {
      const auto edge = mesh.edge(face);
      const auto ends = geometry::face_vertices(plug.cells[face.cell], face.face);
      for (unsigned c = 0; c < 2; ++c)
      {
        const double first = plug.vertices[ends[0]][c], last = plug.vertices[ends[1]][c];
        CHECK(mesh.nodes()[edge[0]][c] == Approx(first).margin(1e-15));
        CHECK(mesh.nodes()[edge[2]][c] == Approx(last).margin(1e-15));
        CHECK(mesh.nodes()[edge[1]][c] == Approx(0.5 * (first + last)).margin(1e-15));
      }
    }
  }
}

TEST_CASE("facing films of a chamber are coupled in the pattern", "[discretisation]")
{
  const auto                   plug = geometry::make_plug_mesh(forefoot_plug(), geometry::MeshSize(1));
  const solver::Discretisation mesh(plug, MeshSection::axisymmetric, HeldFaces{});
  for (const auto &[lower, upper] : plug.chambers.front().facing)
    for (const unsigned a : mesh.edge(plug.faces[lower]))
      for (const unsigned b : mesh.edge(plug.faces[upper]))
      {
        const int i = mesh.dof(a, 1), j = mesh.dof(b, 1);
        const int place = mesh.slot(std::max(i, j), std::min(i, j));
        REQUIRE(place < mesh.pattern().nonZeros());
        CHECK(mesh.pattern().innerIndexPtr()[place] == std::max(i, j));
      }
}
