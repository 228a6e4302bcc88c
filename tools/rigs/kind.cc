// SPDX-License-Identifier: Apache-2.0
#include "tools/rigs/kind.h"

#include "tools/language/described_rigs.h"
#include "tools/language/member_differences.h"

namespace solemech::tools::rigs
{
std::optional<InputRange> range_beside(const Run &run, const std::string &reading, const char *why)
{
  const auto *low = run.result.find(reading + "_lowest"), *high = run.result.find(reading + "_highest");
  if (!low || !high || !(low->value < high->value))
    return std::nullopt;
  return InputRange{low->value, high->value, why};
}

std::vector<RigDifference> Kind::differences(const solver::Case &a, const solver::Case &b) const
{
  const auto &tup_a = tup_of(a.rig), &tup_b = tup_of(b.rig);
  Details     details;
  add_row(details, "striker", striker_words(tup_a), striker_words(tup_b));
  add_row(details, "edge of the striker", quantity(tup_a.edge_radius, "mm", 1e3),
          quantity(tup_b.edge_radius, "mm", 1e3));
  add_row(details, "friction of the striker", quantity(tup_a.friction, ""), quantity(tup_b.friction, ""));
  for (auto &row : detail_rows(a, b))
    details.push_back(std::move(row));
  if (details.empty())
    details.push_back({"rig", "its other entries", "its other entries"});
  return {{details.size() == 1 ? details[0].what : "rig", details,
           [](solver::Case &to, const solver::Case &from) { to.rig = from.rig; }}};
}

Details Kind::detail_rows(const solver::Case &a, const solver::Case &b) const
{
  Details rows;
  std::visit(
    [&]<typename Struct>(const Struct &from) {
      if (const auto *to = std::get_if<Struct>(&b.rig))
        add_differences(rows, from, *to);
    },
    a.rig);
  return rows;
}
} // namespace solemech::tools::rigs
