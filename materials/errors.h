// SPDX-License-Identifier: Apache-2.0
// The error every constructor of a material raises when a number is outside its range. The message names the
// entry, the value and the range, so that the reader of a bench sheet can cure it without the source.
#pragma once

#include <cmath>
#include <limits>
#include <sstream>
#include <stdexcept>
#include <string>

namespace solemech::materials
{
/// A parameter outside its allowed range.
class InvalidParameter : public std::invalid_argument
{
public:
  InvalidParameter(const std::string &name, double value, const std::string &allowed)
    : std::invalid_argument(text(name, value, allowed)), name_(name), value_(value), allowed_(allowed)
  {
  }

  const std::string &name() const { return name_; }
  double             value() const { return value_; }
  const std::string &allowed() const { return allowed_; }

private:
  static std::string text(const std::string &name, double value, const std::string &allowed)
  {
    std::ostringstream out;
    out << name << " = " << value << " is not allowed: give " << allowed;
    return out.str();
  }

  std::string name_;
  double      value_;
  std::string allowed_;
};

/// Throws InvalidParameter unless `holds`; a NaN makes every comparison fail and is caught with it.
inline void require(bool holds, const std::string &name, double value, const std::string &allowed)
{
  if (!holds)
    throw InvalidParameter(name, value, allowed);
}

/// Requires a finite number above zero.
inline void require_positive(const std::string &name, double value)
{
  require(value > 0 && std::isfinite(value), name, value, "a finite number above 0");
}

/// Requires a finite number, zero allowed.
inline void require_not_negative(const std::string &name, double value)
{
  require(value >= 0 && std::isfinite(value), name, value, "a finite number, 0 or above");
}
} // namespace solemech::materials
