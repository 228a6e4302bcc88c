// SPDX-License-Identifier: Apache-2.0
// The error a shape throws when it cannot be built: which dimension, its value, what is allowed.
#pragma once

#include <stdexcept>
#include <string>

namespace solemech::geometry
{
/// A dimension outside its allowed range. `what()` reads
/// "<name> is <value> mm; allowed: <allowed>", with lengths in millimetres for people.
class InvalidGeometry : public std::invalid_argument
{
public:
  /// @param name     the dimension, in words of the trade, e.g. "air unit diameter in strip 3"
  /// @param value    the offending value [m]
  /// @param allowed  the allowed range in words, e.g. "more than 0, at most 84 mm (the plug)"
  InvalidGeometry(const std::string &name, double value, const std::string &allowed);

  /// For counts and other plain numbers: the value is printed with `unit` ("" for none).
  InvalidGeometry(const std::string &name, double value, const std::string &unit, const std::string &allowed);

  const std::string &name() const { return name_; }
  double             value() const { return value_; } ///< in SI, as given
  const std::string &allowed() const { return allowed_; }

private:
  std::string name_;
  double      value_;
  std::string allowed_;
};

/// A length as people read it, e.g. 0.0012 -> "1.2 mm".
std::string in_mm(double length);
} // namespace solemech::geometry
