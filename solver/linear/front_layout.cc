// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/front_layout.h"

#include "solver/linear/elimination_tree.h"

#include <algorithm>
#include <stdexcept>

namespace solemech::solver
{
namespace
{
int padded(int n)
{
  constexpr int lanes = 4;
  return (n + lanes - 1) / lanes * lanes;
}

/// Pivots and rows of a front as the columns are gathered; columns count in post-order.
struct Gathered
{
  std::vector<int> pivots, rows;
  std::vector<int> children;
  int              parent = -1;
  bool             joined = false; ///< its pivots went to its parent
};

double operations(double s, double u)
{
  return s * s * s / 6 + s * s * u / 2 + s * u * u / 2;
}

/// Cost of a front in cycles or so: fixed, arithmetic, memory.
double cost(int n_pivots, int n_rows)
{
  constexpr double fixed = 250, rate = 5, moved = 1.0;
  const double     s = padded(n_pivots), u = padded(n_rows);
  return fixed + operations(s, u) / rate + moved * (0.5 * n_rows * n_rows + s * (s + u));
}

/// Columns of like pattern gathered; children before parents.
std::vector<Gathered> gather(const Columns &below, const std::vector<int> &parent)
{
  const int             n = below.size();
  Columns               pattern(n), children(n);
  std::vector<int>      seen(n, -1), front_of(n, -1);
  std::vector<Gathered> fronts;
  for (int column = 0; column < n; ++column)
  {
    auto &rows = pattern[column];
    seen[column] = column;
    const auto add = [&](const std::vector<int> &from) {
      for (const int row : from)
        if (seen[row] != column)
          seen[row] = column, rows.push_back(row);
    };
    add(below[column]);
    for (const int child : children[column])
      add(pattern[child]);
    if (parent[column] >= 0)
      children[parent[column]].push_back(column);

    const bool like =
      column > 0 && parent[column - 1] == column && pattern[column - 1].size() == rows.size() + 1;
    if (like)
      front_of[column] = front_of[column - 1];
    else
      front_of[column] = fronts.size(), fronts.emplace_back();
    auto &front = fronts[front_of[column]];
    front.pivots.push_back(column);
    front.rows = rows;
    for (const int child : children[column])
      pattern[child].clear();
    if (!like)
      for (const int child : children[column])
        front.children.push_back(front_of[child]);
    else
      for (const int child : children[column])
        if (child != column - 1)
          front.children.push_back(front_of[child]);
  }
  for (int f = 0; f < static_cast<int>(fronts.size()); ++f)
    for (const int child : fronts[f].children)
      fronts[child].parent = f;
  return fronts;
}

void join(std::vector<Gathered> &fronts)
{
  for (auto &front : fronts)
  {
    std::vector<int> kept, open = front.children;
    while (!open.empty())
    {
      const int child = open.back();
      open.pop_back();
      auto     &other = fronts[child];
      const int s = front.pivots.size(), u = front.rows.size(), t = other.pivots.size(),
                w = other.rows.size();
      if (cost(s + t, u) < cost(s, u) + cost(t, w))
      {
        front.pivots.insert(front.pivots.begin(), other.pivots.begin(), other.pivots.end());
        open.insert(open.end(), other.children.begin(), other.children.end());
        other.joined = true;
      }
      else
        kept.push_back(child);
    }
    front.children = kept;
  }
  for (int f = 0; f < static_cast<int>(fronts.size()); ++f)
    for (const int child : fronts[f].children)
      fronts[child].parent = f;
}

/// Places for the updates in one array: an update lives from its front to that of its parent.
class WorkSpace
{
public:
  std::size_t take(std::size_t length)
  {
    for (auto hole = holes_.begin(); hole != holes_.end(); ++hole)
      if (hole->length >= length)
      {
        const std::size_t start = hole->start;
        hole->start += length, hole->length -= length;
        if (hole->length == 0)
          holes_.erase(hole);
        return start;
      }
    // Nothing fits: at the end, into a last hole if one is there.
    std::size_t start = end_;
    if (!holes_.empty() && holes_.back().start + holes_.back().length == end_)
      start = holes_.back().start, holes_.pop_back();
    end_ = start + length;
    return start;
  }

  void give(std::size_t start, std::size_t length)
  {
    if (length == 0)
      return;
    auto next =
      std::find_if(holes_.begin(), holes_.end(), [&](const Hole &hole) { return hole.start > start; });
    next = holes_.insert(next, {start, length});
    if (const auto after = next + 1; after != holes_.end() && next->start + next->length == after->start)
      next->length += after->length, holes_.erase(after);
    if (next != holes_.begin())
      if (const auto before = next - 1; before->start + before->length == next->start)
        before->length += next->length, holes_.erase(next);
  }

  std::size_t length() const { return end_; }

private:
  struct Hole
  {
    std::size_t start, length;
  };
  std::vector<Hole> holes_;
  std::size_t       end_ = 0;
};

/// Where a place stands in a front.
int row_in(const Front &front, int place)
{
  if (place < front.first + front.n_pivots)
    return place - front.first;
  const auto found = std::lower_bound(front.rows.begin(), front.rows.end(), place);
  if (found == front.rows.end() || *found != place)
    throw std::invalid_argument("an entry of a matrix outside its pattern");
  return front.size.n_pivots + static_cast<int>(found - front.rows.begin());
}
} // namespace

std::size_t FrontLayout::entry_of(int unknown, int other) const
{
  const auto [first, second] = std::minmax(place[unknown], place[other]);
  const auto &front = fronts[front_of[first]];
  return front.panel + row_in(front, second) +
         static_cast<std::size_t>(first - front.first) * front.size.height();
}

FrontLayout make_front_layout(const Eigen::SparseMatrix<double> &pattern)
{
  const int  n = pattern.rows();
  const auto order = elimination_order(pattern); // [unknown] -> column
  const auto below = permuted(pattern, order);
  auto       gathered = gather(below, elimination_tree(below));
  join(gathered);

  FrontLayout      layout;
  std::vector<int> number(gathered.size(), -1), place_of(n);
  std::vector<int> stack;
  // Final order: children before parents in the joined tree.
  const auto number_front = [&](int g) {
    Front front;
    front.n_pivots = gathered[g].pivots.size();
    front.size = {padded(front.n_pivots), padded(gathered[g].rows.size())};
    front.first = layout.n_places;
    for (int k = 0; k < front.n_pivots; ++k)
      place_of[gathered[g].pivots[k]] = front.first + k;
    layout.n_places += front.size.n_pivots;
    number[g] = layout.fronts.size();
    layout.fronts.push_back(std::move(front));
  };
  for (int root = 0; root < static_cast<int>(gathered.size()); ++root)
  {
    if (gathered[root].joined || gathered[root].parent >= 0)
      continue;
    std::vector<std::pair<int, std::size_t>> path{{root, 0}};
    while (!path.empty())
    {
      auto &[g, next] = path.back();
      if (next < gathered[g].children.size())
      {
        const int child = gathered[g].children[next++];
        path.emplace_back(child, 0);
      }
      else
        number_front(g), path.pop_back();
    }
  }

  layout.children.resize(layout.fronts.size());
  for (std::size_t g = 0; g < gathered.size(); ++g)
  {
    if (gathered[g].joined)
      continue;
    auto &front = layout.fronts[number[g]];
    for (const int row : gathered[g].rows)
      front.rows.push_back(place_of[row]);
    std::sort(front.rows.begin(), front.rows.end());
    if (gathered[g].parent >= 0)
      front.parent = number[gathered[g].parent], layout.children[front.parent].push_back(number[g]);
  }

  WorkSpace space;
  for (std::size_t f = 0; f < layout.fronts.size(); ++f)
  {
    auto      &front = layout.fronts[f];
    const auto height = static_cast<std::size_t>(front.size.height());
    front.panel = layout.n_factors;
    layout.n_factors += height * front.size.n_pivots;
    layout.n_work = std::max(layout.n_work, height * front.size.n_pivots);
    const auto square = [](const Front &any) {
      return static_cast<std::size_t>(any.size.n_rows) * any.size.n_rows;
    };
    front.update = space.take(square(front));
    for (const int child : layout.children[f])
    {
      auto &other = layout.fronts[child];
      for (const int row : other.rows)
        other.in_parent.push_back(row_in(front, row));
      space.give(other.update, square(other));
    }
    for (int k = front.n_pivots; k < front.size.n_pivots; ++k)
      layout.padded.push_back(front.panel + k * height + k);
    layout.n_operations += operations(front.size.n_pivots, front.size.n_rows);
    for (int k = 0; k < front.size.n_pivots; ++k)
      layout.front_of.push_back(static_cast<int>(f));
  }
  layout.n_updates = space.length();

  layout.place.resize(n);
  for (int unknown = 0; unknown < n; ++unknown)
    layout.place[unknown] = place_of[order[unknown]];
  layout.entry.reserve(pattern.nonZeros());
  for (int column = 0; column < n; ++column)
    for (Eigen::SparseMatrix<double>::InnerIterator entry(pattern, column); entry; ++entry)
      layout.entry.push_back(layout.entry_of(entry.row(), column));
  return layout;
}
} // namespace solemech::solver
