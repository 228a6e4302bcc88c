// SPDX-License-Identifier: Apache-2.0
// Structured quadrilateral mesh of a plug over (r, z): a tensor grid with the cells of chamber voids left
// out. Straight-sided cells; quadratic nodes, if wanted, lie halfway between vertices.
#pragma once

#include "geometry/grading.h"
#include "geometry/stack_outline.h"

#include <array>
#include <cstddef>
#include <utility>
#include <vector>

namespace solemech::geometry
{
enum class BoundaryId : int {
  axis = 0,
  base = 1,
  side = 2,
  top = 3,
  chamber_first = 10 ///< wetted faces of chamber c carry chamber_first + c, chambers counted from the ground
};

/// Face numbers of a cell, as in the lexicographic convention of most quadrilateral codes.
enum FaceNumber : unsigned { left_face = 0, right_face = 1, bottom_face = 2, top_face = 3 };

struct PlugCell
{
  std::array<unsigned, 4> vertices{}; ///< bottom-left, bottom-right, top-left, top-right
  int                     part = 0;   ///< index into PlugOutline::part_names
  unsigned                column = 0; ///< between lines.r[column] and lines.r[column + 1]
  unsigned                row = 0;    ///< between lines.z[row] and lines.z[row + 1]
  unsigned                strip = 0;  ///< index into PlugOutline::strips
};

struct BoundaryFace
{
  unsigned cell = 0;
  unsigned face = 0; ///< FaceNumber
  int      id = 0;   ///< BoundaryId as a number
};

/// The surroundings of one void.
struct ChamberMesh
{
  unsigned strip = 0; ///< index into PlugOutline::strips

  /// Indices into PlugMesh::faces, counter-clockwise round the gas in the (r, z) plane: along the lower film
  /// outwards, up the side wall, along the upper film back to the axis.
  std::vector<unsigned> wetted_faces;

  /// Lower and upper wetted face of one column, as indices into PlugMesh::faces, from the axis outwards.
  std::vector<std::pair<unsigned, unsigned>> facing;

  std::vector<unsigned> film_cells;       ///< indices into PlugMesh::cells
  double                drawn_volume = 0; ///< of the body of revolution [m3]
  double                drawn_area = 0;   ///< of the right half section, volume per depth [m2]
};

struct PlugMesh
{
  std::vector<std::array<double, 2>> vertices; ///< (r, z) [m], all used
  std::vector<PlugCell>              cells;    ///< columns fastest, from the ground up
  std::vector<BoundaryFace>          faces;    ///< every face that has a cell on one side only
  std::vector<ChamberMesh>           chambers; ///< from the ground up
  std::vector<std::string>           part_names;
  GridLines                          lines;

  /// Pairs of indices into `faces` whose nodes move alike: left and right end of a section that repeats
  /// itself.
  std::vector<std::pair<unsigned, unsigned>> joined_faces = {};
};

/// The two vertices of a face so that the gas of a chamber lies to the left of the way from first to second
/// (for an outer boundary: the surroundings). Q2 users put the mid node between them.
std::array<unsigned, 2> face_vertices(const PlugCell &cell, unsigned face);

/// Mesh on given lines. The lines must pass through every part boundary of the outline to rounding.
/// Throws InvalidGeometry for an outline that cannot be built and std::invalid_argument for unfit lines.
PlugMesh make_plug_mesh(const PlugOutline &outline, const GridLines &lines);

/// Mesh on graded lines.
PlugMesh make_plug_mesh(const PlugOutline &outline, MeshSize size);
} // namespace solemech::geometry
