// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/plug_changes.h"

#include "tools/answers/compare/layer_words.h"
#include "tools/language/case_text.h"
#include "tools/language/described_case.h"
#include "tools/language/member_differences.h"
#include "tools/rigs/difference.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace
{
using rigs::add_row;
using rigs::Details;

bool same_plug(const solver::Plug &a, const solver::Plug &b)
{
  return same_to_a_run(a, b);
}
} // namespace

std::vector<ChangeDetail> plug_details(const solver::Plug &a, const solver::Plug &b)
{
  Details      details;
  solver::Plug same_radius = b;
  same_radius.radius = a.radius;
  if (same_plug(a, same_radius))
    return details;
  const char *sections[] = {"round plug", "slice"};
  const auto  side = [](const solver::Plug &plug) {
    switch (plug.side)
    {
    case solver::Side::free:
      return std::string("cut free");
    case solver::Side::ring:
      return fmt::format("wrapped in {} {}", short_length(plug.side_thickness), plug.side_material.name);
    case solver::Side::shell:
      return fmt::format("shell left on, {:.3g} N/mm3", plug.shell_stiffness * 1e-9);
    }
    return std::string();
  };
  const auto base = [](const solver::Plug &plug) {
    const char *words[] = {"bonded", "resting", "clamped", "sliding"};
    return std::string(words[static_cast<int>(plug.base)]) +
           (plug.base == solver::Base::resting ? fmt::format(", friction {:.2g}", plug.base_friction) : "");
  };
  add_row(details, "section", sections[static_cast<int>(a.section)], sections[static_cast<int>(b.section)]);
  add_row(details, "side of the plug", side(a), side(b));
  add_row(details, "base of the plug", base(a), base(b));
  // Entries without effect, such as the friction of a bonded base, are no difference.
  return details;
}

std::vector<ChangeDetail> surroundings_details(const solver::Case &a, const solver::Case &b)
{
  Details details;
  add_differences(details, a, b);
  return details;
}
} // namespace solemech::tools
