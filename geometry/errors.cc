// SPDX-License-Identifier: Apache-2.0
#include "geometry/errors.h"

#include <sstream>

namespace solemech::geometry
{
namespace
{
std::string with_unit(double value, const std::string &unit)
{
  std::ostringstream text;
  text << value << (unit.empty() ? "" : " ") << unit;
  return text.str();
}
} // namespace

InvalidGeometry::InvalidGeometry(const std::string &name, double value, const std::string &allowed)
  : std::invalid_argument(name + " is " + in_mm(value) + "; allowed: " + allowed), name_(name), value_(value),
    allowed_(allowed)
{
}

InvalidGeometry::InvalidGeometry(const std::string &name, double value, const std::string &unit,
                                 const std::string &allowed)
  : std::invalid_argument(name + " is " + with_unit(value, unit) + "; allowed: " + allowed), name_(name),
    value_(value), allowed_(allowed)
{
}

std::string in_mm(double length)
{
  return with_unit(length * 1e3, "mm");
}
} // namespace solemech::geometry
