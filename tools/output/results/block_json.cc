// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/block_json.h"

#include "solver/results/result_check.h"

#include <fmt/format.h>

#include <cmath>

namespace solemech::tools
{
namespace
{
/// The library would write null in silence.
void require_finite(const Json &value, const std::string &place)
{
  if (value.is_number_float() && !std::isfinite(value.get<double>()))
    throw solver::ResultsError(place + " is not a finite number; nothing was written");
  if (value.is_object())
    for (const auto &[name, entry] : value.items())
      require_finite(entry, place.empty() ? name : place + "." + name);
  else if (value.is_array())
    for (std::size_t i = 0; i < value.size(); ++i)
      if (value[i].is_structured() || value[i].is_number_float())
        require_finite(value[i], fmt::format("{}[{}]", place, i));
}
} // namespace

std::string text_of(const Json &value, int indent)
{
  require_finite(value, "");
  return value.dump(indent, ' ', false, Json::error_handler_t::replace);
}
} // namespace solemech::tools
