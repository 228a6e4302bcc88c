// SPDX-License-Identifier: Apache-2.0
// A long section of a sole, drawn as a whole, in plane strain. Each part counts with a width of its own, so
// that a plate narrower than the foam brings the energy of its own width, and a cell that holds a plate over
// some of the width and foam beside it belongs to both. Plane strain holds a narrow plate stiffer than it is,
// by up to 1/(1 - nu^2).
#pragma once

#include "solver/case.h"
#include "solver/contributions/solid_body.h"
#include "solver/mesh/discretisation.h"
#include "solver/model.h"

#include <string>
#include <vector>

namespace solemech::solver
{
/// A material and the cells that hold it.
struct SectionPart
{
  std::string              name;
  materials::Material      material;
  std::vector<std::size_t> cells;
  std::vector<double>      widths; ///< of the material in each of them [m]
};

/// What is drawn: x along the foot, z up.
struct LongSection
{
  geometry::PlugMesh       mesh;
  std::vector<SectionPart> parts;
};

/// The greatest width of its parts together in any cell [m].
double greatest_width(const LongSection &section);

class SectionModel : public ModelOf<Discretisation>
{
public:
  /// @param input  surroundings of the materials
  SectionModel(const LongSection &section, const Case &input, const Held &held);

  const double             width;  ///< of the section [m]
  std::vector<SolidBody *> bodies; ///< one a part, in the order of the section's
};
} // namespace solemech::solver
