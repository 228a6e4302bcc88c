// SPDX-License-Identifier: Apache-2.0
// Contact in space: slopes on pucks, balls and rollers that sink, slide and tilt; what the body feels is what
// the solid feels, moments included.
#include "solver/contributions/solid_contact.h"
#include "tests/support/hex_mesh.h"
#include "tests/unit/solver/slopes.h"

using namespace solemech;
using namespace solemech::tests;
using solver::Freedom;

namespace
{
/// A block of 3 x 2 x 1 cells, nothing held but its base.
HexMesh block()
{
  auto mesh = hex_grid(even_lines(0, size, 3), even_lines(0, 0.8 * size, 2), {0, size});
  hold(mesh, [](const Point3 &p) {
    const bool base = p[2] < 1e-9;
    return std::array{base, base, base};
  });
  return mesh;
}

std::vector<solver::SolidFace> faces_at(const HexMesh &mesh, double level)
{
  std::vector<solver::SolidFace> out;
  for (const auto &face : outer_faces(mesh))
    if (std::abs(face_centre(mesh, face)[2] - level) < 1e-9)
      out.push_back(face);
  return out;
}

/// A body that sinks and leans both ways, about a point above its face.
solver::RigidBody leaning_body(const HexMesh &mesh)
{
  return {{Freedom::along_z, Freedom::about_x, Freedom::about_y},
          {0, 0, 0},
          {0.4 * size, 0.3 * size, 1.5 * size},
          mesh.n_unknowns()};
}

constexpr Point3 lowest{0.4 * size, 0.3 * size, size};

solver::SolidContact contact(const HexMesh &mesh, const geometry::SweptSurface &surface,
                             const solver::ContactSettings &settings)
{
  return {"tool", mesh, faces_at(mesh, size), surface, settings, leaning_body(mesh), lowest, false};
}
} // namespace

TEST_CASE("outer faces of a block of hexahedra", "[contributions]")
{
  const auto mesh = block();
  CHECK(outer_faces(mesh).size() == 2 * (3 * 2 + 2 + 3));
  double area = 0;
  for (const auto &point : surface_points(mesh, outer_faces(mesh)))
    area += point.area;
  CHECK(area == Approx(2 * size * size * (0.8 + 0.8 + 1)).epsilon(1e-12));
}

TEST_CASE("contact in space: slopes at face, edge, ball and roller, leaning", "[contributions]")
{
  Random                        random;
  const auto                    mesh = block();
  const solver::ContactSettings settings{.penalty = 1e12};
  const auto                    x = random_state(mesh, random, {-0.06 * size, 0.03, -0.02});
  for (const geometry::SweptSurface &surface :
       {geometry::SweptSurface{geometry::FlatPuck(0.5 * size, 0.2 * size)},
        geometry::SweptSurface{geometry::Sphere(2 * size)},
        geometry::SweptSurface{geometry::Sphere(size), geometry::Sweep::along_y},
        geometry::SweptSurface{geometry::Plane()}})
  {
    const auto part = contact(mesh, surface, settings);
    check_force(part, x);
    check_tangent(part, mesh, x, 3);
  }
  SECTION("on a fixed ground below")
  {
    auto loose = hex_grid({0, size}, {0, size}, {0, size});
    hold(loose, free_everywhere);
    const auto                 down = random_state(loose, random);
    const solver::SolidContact ground("floor", loose, faces_at(loose, 0), {geometry::Plane()}, settings, {},
                                      {0, 0, 0.005 * size}, true);
    check_force(ground, down);
    check_tangent(ground, loose, down, 0);
    CHECK(ground.state(down).force[2] < 0);
  }
  SECTION("friction, part of the points sticking, part slipping")
  {
    auto       part = contact(mesh, {geometry::Sphere(2 * size)},
                              {.penalty = 1e12, .friction = 0.5, .slip_length = 0.004 * size});
    const auto first = random_state(mesh, random, {-0.05 * size, 0, 0.01});
    part.settle(first);
    CHECK(part.settle(first) == 0);
    check_force(part, x);
    check_tangent(part, mesh, x, 3);
  }
  SECTION("what has touched sticks")
  {
    auto part = contact(mesh, {geometry::Sphere(2 * size)}, {.penalty = 1e12, .stick = 1e9});
    part.accept(random_state(mesh, random, {-0.05 * size, 0, 0.01}), 1);
    check_force(part, x);
    check_tangent(part, mesh, x, 3);
  }
}

TEST_CASE("a body in space feels what the solid feels", "[contributions]")
{
  Random     random;
  const auto mesh = block();
  const auto part = contact(mesh, {geometry::FlatPuck(0.5 * size, 0.2 * size)}, {.penalty = 1e12});
  // It lies level, so that its turns are about the axes of space through its reference.
  const Vector x = random_state(mesh, random, {-0.06 * size, 0, 0});
  const Vector force = force_at(part, x);
  const auto   state = part.state(x);
  const int    n = mesh.n_unknowns();
  Point3       sum{}, moment{};
  const Point3 centre = part.place_on_body({}, x);
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
  {
    Point3 pull{}, arm{};
    for (unsigned c = 0; c < 3; ++c)
    {
      const int dof = mesh.dof(node, c);
      pull[c] = dof >= 0 ? force[dof] : 0;
      arm[c] = mesh.nodes()[node][c] + (dof >= 0 ? x[dof] : 0.0) - centre[c];
      sum[c] += pull[c];
    }
    for (unsigned c = 0; c < 3; ++c)
      moment[c] += arm[(c + 1) % 3] * pull[(c + 2) % 3] - arm[(c + 2) % 3] * pull[(c + 1) % 3];
  }
  for (unsigned c = 0; c < 3; ++c)
  {
    CHECK(state.force[c] == Approx(sum[c]).epsilon(1e-10));
    CHECK(state.moment[c] == Approx(moment[c]).epsilon(1e-10).margin(1e-12 * size * state.force[2]));
  }
  CHECK(state.force[2] > 0);
  CHECK(force[n] == Approx(-state.force[2]).epsilon(1e-12));
  // About its reference, half a size and what it has sunk above the face.
  const double arm = 0.5 * size;
  CHECK(-force[n + 1] == Approx(state.moment[0] + arm * state.force[1]).epsilon(1e-10));
  CHECK(-force[n + 2] == Approx(state.moment[1] - arm * state.force[0]).epsilon(1e-10));
}
