// SPDX-License-Identifier: Apache-2.0
// solemech draw: the drawing of a whole sole, and what it measures.
#include "tools/language/number_text.h"
#include "tools/output/drawing/sole_drawing.h"
#include "tools/program/commands.h"
#include "tools/program/sole_input.h"
#include "tools/program/sole_text.h"
#include "tools/program/write_ours.h"

#include <fmt/format.h>

namespace solemech::tools
{
Exit draw_sole(const DrawRequest &request)
{
  const auto                  file = sole_named(request.sole);
  const geometry::SoleBody    body(solver::shape_of(file.sole));
  const auto                  facts = sole_facts(file.sole, body);
  const std::filesystem::path path =
    request.output.empty() ? file.sole.label + "-drawing.svg" : request.output;
  write_ours(path, sole_drawing(file.sole, body, facts), drawing_mark, "draw");
  if (request.json)
    fmt::print("{}", facts_json(facts));
  else
    fmt::print("{}{}\n", sole_text(facts, file.assumed), fmt::format("drawing: {}", path.string()));
  return Exit::ok;
}
} // namespace solemech::tools
