// SPDX-License-Identifier: Apache-2.0
// The faces of a plug that nothing holds: top and side as one line from the axis to the ground, and the inner
// walls of each air unit. The model lets them pass through each other, and lets the side pass through the
// striker (only the top is in contact with it), so a run in which they meet has to stop. Side on base is
// contact, and film on film a pile of fibres: these may meet. So may faces that both lie against the striker:
// round its edge the few points of a coarse mesh slide past each other, which is no fold.
#pragma once

#include "solver/contributions/contact.h"

#include <optional>
#include <string>

namespace solemech::solver
{
/// Where free faces meet, in words for a message.
struct FaceMeeting
{
  Point place{}; ///< current (r, z) [m]
  std::string
    where; ///< e.g. "the top of foam folds onto itself 13.1 mm from the axis, 21.0 mm above the ground"
};

/// What helps against it, for the end of a message.
extern const char *const cure_of_meeting_faces;

class FreeFaces
{
public:
  /// @param striker  what touches the top
  FreeFaces(const Discretisation &mesh, const Contact &striker);

  /// The first meeting at the unknowns x, if there is one.
  std::optional<FaceMeeting> meeting(const Vector &x) const;

private:
  /// Faces joined end to end.
  struct Line
  {
    std::vector<unsigned> faces; ///< indices into PlugMesh::faces
    std::vector<unsigned> nodes; ///< two a face, and the last one
    std::vector<bool>     piles; ///< per face: film that may lie on other film
  };

  const Discretisation *mesh_;
  const Contact        *striker_;
  std::vector<Line>     lines_;

  Line                       joined(std::vector<unsigned> faces) const;
  std::string                face_name(unsigned face) const;
  Point                      place(unsigned node, const Vector &x) const;
  bool                       touches_striker(unsigned face, const Vector &x) const;
  FaceMeeting                words(const Point &place, const std::string &what) const;
  std::optional<FaceMeeting> side_on_striker(const Vector &x) const;
};
} // namespace solemech::solver
