// SPDX-License-Identifier: Apache-2.0
#include "tools/rigs/tup_text.h"

namespace solemech::tools::rigs
{
std::string tup_text(const solver::Tup &tup, Lengths lengths)
{
  const std::string size = length_text(tup.diameter, lengths);
  switch (tup.shape)
  {
  case solver::TupShape::flat:
    return "flat " + size + " face";
  case solver::TupShape::sphere:
    return size + " ball";
  case solver::TupShape::spherical_ended:
    return size + " rod with a " + length_text(tup.end_radius, lengths) + " round end";
  case solver::TupShape::cone:
    return "cone on a " + size + " rod";
  }
  return size;
}
} // namespace solemech::tools::rigs
