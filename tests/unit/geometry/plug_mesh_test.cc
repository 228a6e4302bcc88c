// SPDX-License-Identifier: Apache-2.0
// The mesh against the drawing: volumes per part by cylinder formulas, faces complete, chambers closed.
#include "geometry/chamber.h"
#include "geometry/errors.h"
#include "geometry/plug_mesh.h"
#include "tests/support/catch.h"
#include "tests/unit/geometry/sample_outlines.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <random>
#include <set>

using namespace solemech;
using namespace solemech::geometry;
using std::numbers::pi;

namespace
{
constexpr double rounding = 1e-12; // relative; sums of some hundred products

struct Box
{
  double left, right, bottom, top;
};

Box box(const PlugMesh &mesh, const PlugCell &cell)
{
  const auto &low = mesh.vertices[cell.vertices[0]], &high = mesh.vertices[cell.vertices[3]];
  return {low[0], high[0], low[1], high[1]};
}

std::map<std::string, double> volumes(const PlugMesh &mesh)
{
  std::map<std::string, double> sum;
  for (const PlugCell &cell : mesh.cells)
  {
    const Box b = box(mesh, cell);
    sum[mesh.part_names[cell.part]] += pi * (b.right * b.right - b.left * b.left) * (b.top - b.bottom);
  }
  return sum;
}

double cylinder(double radius, double height)
{
  return pi * radius * radius * height;
}

std::vector<EdgeNodes> wetted_edges(const PlugMesh &mesh, const ChamberMesh &chamber)
{
  std::vector<EdgeNodes> edges;
  for (const unsigned f : chamber.wetted_faces)
  {
    const auto [a, b] = face_vertices(mesh.cells[mesh.faces[f].cell], mesh.faces[f].face);
    const auto &p = mesh.vertices[a], &q = mesh.vertices[b];
    edges.push_back({p, {(p[0] + q[0]) / 2, (p[1] + q[1]) / 2}, q});
  }
  return edges;
}

// What must hold for every mesh, whatever the drawing.
void check_soundness(const PlugMesh &mesh)
{
  std::vector<bool>                       used(mesh.vertices.size(), false);
  std::map<std::set<unsigned>, int>       n_cells_at; // cells on either side of an edge
  std::set<std::pair<unsigned, unsigned>> places;
  for (const PlugCell &cell : mesh.cells)
  {
    const auto &v = cell.vertices;
    for (const unsigned number : v)
      used.at(number) = true;
    const Box b = box(mesh, cell);
    CHECK(b.right > b.left);
    CHECK(b.top > b.bottom);
    CHECK(mesh.vertices[v[1]] == std::array<double, 2>{b.right, b.bottom});
    CHECK(mesh.vertices[v[2]] == std::array<double, 2>{b.left, b.top});
    CHECK(b.left == mesh.lines.r[cell.column]);
    CHECK(b.bottom == mesh.lines.z[cell.row]);
    CHECK(places.insert({cell.column, cell.row}).second);
    for (const unsigned face : {left_face, right_face, bottom_face, top_face})
    {
      const auto [a, c] = face_vertices(cell, face);
      ++n_cells_at[{a, c}];
    }
  }
  CHECK(std::all_of(used.begin(), used.end(), [](bool is_used) { return is_used; }));

  // exactly the edges with one cell are boundary faces, each once
  std::set<std::set<unsigned>> boundary;
  for (const BoundaryFace &face : mesh.faces)
  {
    const auto [a, b] = face_vertices(mesh.cells[face.cell], face.face);
    CHECK(boundary.insert({a, b}).second);
  }
  std::size_t n_single = 0;
  for (const auto &[edge, n] : n_cells_at)
  {
    CHECK(n <= 2);
    CHECK((n == 1) == boundary.contains(edge));
    n_single += n == 1;
  }
  CHECK(n_single == mesh.faces.size());
}

void check_chamber(const PlugMesh &mesh, const ChamberMesh &chamber, int id)
{
  std::size_t n_wetted = 0;
  for (const BoundaryFace &face : mesh.faces)
    n_wetted += face.id == id;
  CHECK(n_wetted == chamber.wetted_faces.size());

  // the way round the gas is connected and runs from axis to axis
  const auto edges = wetted_edges(mesh, chamber);
  CHECK(edges.front()[0][0] == 0);
  CHECK(edges.back()[2][0] == 0);
  for (std::size_t i = 0; i + 1 < edges.size(); ++i)
    CHECK(edges[i][2] == edges[i + 1][0]);
  CHECK(enclosed_volume(edges, Section::axisymmetric) == Approx(chamber.drawn_volume).epsilon(rounding));
  CHECK(enclosed_volume(edges, Section::plane_strain) == Approx(chamber.drawn_area).epsilon(rounding));

  REQUIRE_FALSE(chamber.facing.empty());
  double before = -1;
  for (const auto &[lower, upper] : chamber.facing)
  {
    const PlugCell &below = mesh.cells[mesh.faces[lower].cell], &above = mesh.cells[mesh.faces[upper].cell];
    CHECK(mesh.faces[lower].face == top_face);
    CHECK(mesh.faces[upper].face == bottom_face);
    CHECK(below.column == above.column);
    CHECK(box(mesh, below).left > before);
    CHECK(box(mesh, below).top < box(mesh, above).bottom);
    before = box(mesh, below).left;
  }
}
} // namespace

TEST_CASE("Parts have the volumes of the drawing")
{
  const double R = 42e-3;
  for (const double level : {1.0, 1.7, 3.0})
  {
    INFO("level " << level);
    auto heel = volumes(make_plug_mesh(tests::heel_plug(), MeshSize(level)));
    CHECK(heel["core"] == Approx(cylinder(27e-3, 16e-3)).epsilon(rounding));
    CHECK(heel["firm"] == Approx(cylinder(R, 23e-3) - cylinder(27e-3, 16e-3)).epsilon(rounding));
    CHECK(heel["board"] == Approx(cylinder(R, 1.5e-3)).epsilon(rounding));

    const double   unit = cylinder(31e-3, 8e-3), gas = cylinder(30.4e-3, 6.8e-3);
    const PlugMesh mesh = make_plug_mesh(tests::forefoot_plug(), MeshSize(level));
    auto           forefoot = volumes(mesh);
    CHECK(mesh.chambers.at(0).drawn_volume == Approx(gas).epsilon(rounding));
    CHECK(forefoot["film"] == Approx(unit - gas).epsilon(rounding));
    CHECK(forefoot["firm"] == Approx(cylinder(R, 16.5e-3) - unit).epsilon(rounding));

    auto         two = volumes(make_plug_mesh(tests::two_unit_plug(), MeshSize(level)));
    const double upper = cylinder(40e-3, 10e-3) - cylinder(39e-3, 8e-3);
    CHECK(two["film"] == Approx(unit - gas + upper).epsilon(rounding));
    CHECK(two["wall"] == Approx(cylinder(42e-3, 23e-3) - cylinder(40e-3, 23e-3)).epsilon(rounding));
    CHECK(two.count("ring") == 0); // the unit as wide as the plug leaves no ring
  }
}

TEST_CASE("Meshes are sound and chambers closed")
{
  for (const auto &outline :
       {tests::foam_cylinder(), tests::heel_plug(), tests::forefoot_plug(), tests::two_unit_plug()})
    for (const double level : {0.5, 1.0, 1.5, 2.5})
    {
      const PlugMesh mesh = make_plug_mesh(outline, MeshSize(level));
      check_soundness(mesh);
      for (std::size_t c = 0; c < mesh.chambers.size(); ++c)
        check_chamber(mesh, mesh.chambers[c],
                      static_cast<int>(BoundaryId::chamber_first) + static_cast<int>(c));
    }
}

TEST_CASE("Outer boundaries have the lengths of the drawing")
{
  const PlugMesh        mesh = make_plug_mesh(tests::two_unit_plug(), MeshSize(1));
  std::map<int, double> length;
  for (const BoundaryFace &face : mesh.faces)
  {
    const auto [a, b] = face_vertices(mesh.cells[face.cell], face.face);
    length[face.id] +=
      std::hypot(mesh.vertices[b][0] - mesh.vertices[a][0], mesh.vertices[b][1] - mesh.vertices[a][1]);
  }
  CHECK(length[static_cast<int>(BoundaryId::base)] == Approx(42e-3).epsilon(rounding));
  CHECK(length[static_cast<int>(BoundaryId::top)] == Approx(42e-3).epsilon(rounding));
  CHECK(length[static_cast<int>(BoundaryId::side)] == Approx(23e-3).epsilon(rounding));
  CHECK(length[static_cast<int>(BoundaryId::axis)] == Approx(23e-3 - 6.8e-3 - 8e-3).epsilon(rounding));
  CHECK(length[static_cast<int>(BoundaryId::chamber_first)] ==
        Approx(2 * 30.4e-3 + 6.8e-3).epsilon(rounding));
  CHECK(length[static_cast<int>(BoundaryId::chamber_first) + 1] ==
        Approx(2 * 39e-3 + 8e-3).epsilon(rounding));
}

TEST_CASE("Thin layers and film keep their aspect ratio")
{
  for (const auto &outline : {tests::heel_plug(), tests::forefoot_plug(), tests::two_unit_plug()})
    for (const double level : {0.5, 1.0, 1.5, 2.5})
    {
      const PlugMesh mesh = make_plug_mesh(outline, MeshSize(level));
      for (const PlugCell &cell : mesh.cells)
      {
        const Box    b = box(mesh, cell);
        const double width = b.right - b.left, tall = b.top - b.bottom;
        CHECK(width / tall <= 8 * (1 + 1e-9)); // lying layers, all parts
        if (mesh.part_names[cell.part] == "film")
          CHECK(tall / width <= 8 * (1 + 1e-9));
      }
    }
}

TEST_CASE("Random plugs with air units mesh soundly")
{
  std::mt19937                           random(20240607);
  std::uniform_real_distribution<double> share(0, 1);
  for (int trial = 0; trial < 60; ++trial)
  {
    PlugOutline outline;
    outline.radius = 25e-3 + 25e-3 * share(random);
    outline.part_names = {"foam", "film", "ring"};
    outline.tup_contact_radius = outline.radius * (0.1 + share(random));
    outline.tup_edge_radius = 3e-3 * share(random);
    double     gas = 0;
    const auto n_strips = 1 + random() % 6;
    for (std::size_t s = 0; s < n_strips; ++s)
    {
      Strip strip{.thickness = 1e-3 + 15e-3 * share(random), .zones = {}, .chamber = {}};
      if (share(random) < 0.5)
        strip.zones.push_back({outline.radius * (0.2 + 0.7 * share(random)), 0});
      strip.zones.push_back({outline.radius, 2});
      if (strip.thickness > 4e-3 && share(random) < 0.5)
      {
        strip.chamber =
          AirUnitOutline{outline.radius * (0.3 + 0.7 * share(random)), 0.3e-3 + 1e-3 * share(random), 1};
        const Cavity hole = cavity(strip);
        gas += cylinder(hole.outer_radius, hole.top - hole.bottom);
      }
      outline.strips.push_back(strip);
    }
    INFO("trial " << trial);
    const PlugMesh mesh = make_plug_mesh(outline, MeshSize(0.7 + 2 * share(random)));
    check_soundness(mesh);
    for (std::size_t c = 0; c < mesh.chambers.size(); ++c)
      check_chamber(mesh, mesh.chambers[c],
                    static_cast<int>(BoundaryId::chamber_first) + static_cast<int>(c));
    double solid = 0;
    for (const auto &[part, volume] : volumes(mesh))
      solid += volume;
    CHECK(solid + gas == Approx(cylinder(outline.radius, height(outline))).epsilon(1e-10));
  }
}

TEST_CASE("Lines that miss a part boundary are refused")
{
  CHECK_THROWS_WITH(make_plug_mesh(tests::heel_plug(), GridLines{{0, 42e-3}, {0, 28.9e-3}}),
                    Catch::Contains("miss the part boundary"));
  CHECK_THROWS_WITH(make_plug_mesh(tests::foam_cylinder(), GridLines{{0, 50e-3, 40e-3}, {0, 25e-3}}),
                    Catch::Contains("must start at 0 and increase"));
  CHECK_NOTHROW(make_plug_mesh(tests::foam_cylinder(), GridLines{{0, 40e-3}, {0, 25e-3}}));
}
