// SPDX-License-Identifier: Apache-2.0
#include "solver/models/lug_model.h"

#include "solver/part_law.h"

#include <algorithm>
#include <limits>

namespace solemech::solver
{
namespace
{
/// Penetration over the lug height at a pressure of one Young's modulus.
constexpr double penetration_share = 5e-4;

/// Left and right end of the skin, row by row.
std::vector<std::pair<unsigned, unsigned>> joined_ends(const geometry::PlugMesh &mesh)
{
  std::vector<unsigned> left, right;
  for (unsigned f = 0; f < mesh.faces.size(); ++f)
  {
    if (mesh.faces[f].id == static_cast<int>(geometry::BoundaryId::axis))
      left.push_back(f);
    if (mesh.faces[f].id == static_cast<int>(geometry::BoundaryId::side))
      right.push_back(f);
  }
  const auto by_row = [&](unsigned a, unsigned b) {
    return mesh.cells[mesh.faces[a].cell].row < mesh.cells[mesh.faces[b].cell].row;
  };
  std::sort(left.begin(), left.end(), by_row);
  std::sort(right.begin(), right.end(), by_row);
  std::vector<std::pair<unsigned, unsigned>> pairs;
  for (std::size_t i = 0; i < left.size(); ++i)
    pairs.emplace_back(left[i], right[i]);
  return pairs;
}
} // namespace

LugModel::LugModel(const LugCell &the_cell, const Case &input, double mesh_level, double the_slip_length)
  : cell(the_cell), slip_length(the_slip_length), drawn(geometry::make_lug_mesh(cell.outline, mesh_level))
{
  if (cell.neighbours == LugNeighbours::periodic)
    drawn.mesh.joined_faces = joined_ends(drawn.mesh);
  stand_on(std::make_unique<Discretisation>(
    drawn.mesh, MeshSection::whole_plane, [](const geometry::BoundaryFace &face) {
      const bool bonded = face.id == static_cast<int>(geometry::BoundaryId::base);
      return std::array<bool, 2>{bonded, bonded};
    }));
  move_onto_curves();
  equation.add(lifted_body(0));
  make_bodies(input);
  find_face();
  add_court(equilibrium_modulus(cell.lug, input));
}

/// Mid nodes of the outline go onto its curves; a cell's inner node follows by half.
void LugModel::move_onto_curves()
{
  std::vector<Point> shift(mesh->nodes().size(), Point{});
  for (const auto &[f, place] : drawn.on_curves)
  {
    const auto    &face = drawn.mesh.faces[f];
    const unsigned middle = mesh->edge(face)[1], inner = mesh->cells()[face.cell][4];
    for (unsigned c = 0; c < 2; ++c)
    {
      shift[middle][c] = place[c] - mesh->nodes()[middle][c];
      shift[inner][c] += 0.5 * shift[middle][c];
    }
  }
  mesh->move_nodes(shift);
}

void LugModel::make_bodies(const Case &input)
{
  const materials::Material *part_materials[2] = {&cell.skin, &cell.lug};
  for (int part = 0; part < 2; ++part)
  {
    auto kernel = make_part_kernel(*part_materials[part], 1.0, input);
    auto group = mesh->group(part, kernel->n_branches(), mesh->nodes(), {});
    bodies.push_back(&equation.contribute<SolidBody>(std::move(group), std::move(kernel)));
  }
}

void LugModel::find_face()
{
  face_left_ = std::numeric_limits<double>::max(), face_right_ = -face_left_;
  for (const unsigned f : drawn.face)
    for (const unsigned v :
         geometry::face_vertices(drawn.mesh.cells[drawn.mesh.faces[f].cell], drawn.mesh.faces[f].face))
    {
      face_left_ = std::min(face_left_, drawn.mesh.vertices[v][0]);
      face_right_ = std::max(face_right_, drawn.mesh.vertices[v][0]);
    }
}

/// @param modulus  Young's, of the lug at rest [Pa]
void LugModel::add_court(double modulus)
{
  std::vector<geometry::BoundaryFace> top;
  double                              highest = 0;
  for (const auto &face : drawn.mesh.faces)
    if (face.id == static_cast<int>(geometry::BoundaryId::top))
      top.push_back(face);
  // A curved face may stand higher than its vertices.
  for (const auto &point : surface_points(*mesh, top))
    highest = std::max(highest, point.at_rest[1]);
  const double depth = penetration_share * cell.outline.height;
  court = &equation.contribute<SlidingContact>("court", *mesh, top, modulus / (depth * depth), slip_length, 0,
                                               highest);
  load = &equation.contribute<AppliedForce>(court_unknown());
}
} // namespace solemech::solver
