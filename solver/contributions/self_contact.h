// SPDX-License-Identifier: Apache-2.0
// Free faces that fold onto each other: top and side of a plug as one line from the axis to the ground, and
// the inner walls of each air unit. Five Gauss points of a face against the quadratic edge of another one of
// the same line, both ways, frictionless; pressure c g^2 of the penetration g, as at the striker. Neighbours
// on the line, and films that pile up (fibre_bundle.h), are no pairs. A point and the three nodes of the edge
// that it meets stand in no entry of the mesh's pattern together, so each one adds a term of rank one, 2 c g
// v v^T with v = dg/du; the turn of the normal is left out of the tangent.
#pragma once

#include "solver/contribution.h"
#include "solver/contributions/surface_points.h"

namespace solemech::solver
{
class SelfContact : public Contribution
{
public:
  /// @param penalty  c [Pa/m2]
  SelfContact(const Discretisation &mesh, double penalty);

  void        begin_step(const Vector &x, double dt) override;
  bool        add(const Vector &x, Vector &force, Tangent *tangent) const override;
  void        accept(const Vector &x, double dt) override;
  void        energies(std::vector<EnergyEntry> &entries) const override;
  std::string name() const override { return "folding faces"; }

  /// Where faces have gone deeper into each other than this contact can hold, in words; empty: nowhere so
  /// far.
  const std::string &lost() const { return lost_; }

private:
  struct Face
  {
    unsigned                  number;        ///< index into PlugMesh::faces
    unsigned                  line, place;   ///< which line, and how far along it
    bool                      piles = false; ///< film that may lie on other film
    std::vector<SurfacePoint> points;
  };
  /// A point of one face inside of another one.
  struct Hit
  {
    const Face           *from, *to;     ///< faces of the point and of the edge that it meets
    const SurfacePoint   *point, *edge;  ///< `edge`: any point of the face met, for its nodes
    Point                 place;         ///< of the point [m]
    std::array<double, 3> shape;         ///< of the edge's nodes, at the nearest place
    Point                 normal;        ///< of the edge there, out of the body
    double                depth, length; ///< of the point inside, of the edge [m]
  };

  const Discretisation                *mesh_;
  double                               penalty_, stored_ = 0;
  bool                                 met_ = false;
  std::string                          lost_;
  std::vector<Face>                    faces_;
  std::vector<std::array<unsigned, 2>> near_; ///< faces that may meet within this step

  void        add_line(const std::vector<unsigned> &faces, const std::vector<bool> &piles, unsigned line);
  std::string words(const Hit &hit) const;
  template <typename Action>
  void for_hits(const Vector &x, const Action &action) const;
};
} // namespace solemech::solver
