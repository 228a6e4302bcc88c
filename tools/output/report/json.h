// SPDX-License-Identifier: Apache-2.0
// The JSON type of the report: entries keep their order, so that equal runs give equal files.
#pragma once

#include <nlohmann/json_fwd.hpp>

namespace solemech::tools::report
{
using Json = nlohmann::ordered_json;
}
