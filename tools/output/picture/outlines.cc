// SPDX-License-Identifier: Apache-2.0
#include "tools/output/picture/outlines.h"

#include <map>
#include <set>
#include <utility>

namespace solemech::tools
{
std::vector<std::vector<std::size_t>> boundary_loops(const std::vector<NineNodeCell> &cells,
                                                     const std::vector<int>          &part,
                                                     const std::function<bool(int)>  &belongs)
{
  using Edge = std::pair<std::size_t, std::size_t>;
  std::set<Edge>        edges;
  constexpr std::size_t around[] = {0, 1, 2, 5, 8, 7, 6, 3};
  for (std::size_t c = 0; c < cells.size(); ++c)
    if (belongs(part[c]))
      for (std::size_t i = 0; i < 8; ++i)
      {
        const Edge edge(cells[c][around[i]], cells[c][around[(i + 1) % 8]]);
        if (!edges.erase({edge.second, edge.first}))
          edges.insert(edge);
      }
  std::multimap<std::size_t, std::size_t> next(edges.begin(), edges.end());
  std::vector<std::vector<std::size_t>>   loops;
  while (!next.empty())
  {
    std::vector<std::size_t> loop;
    std::size_t              node = next.begin()->first;
    for (auto step = next.begin(); step != next.end(); step = next.find(node))
    {
      loop.push_back(node);
      node = step->second;
      next.erase(step);
    }
    loops.push_back(std::move(loop));
  }
  return loops;
}
} // namespace solemech::tools
