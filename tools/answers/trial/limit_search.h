// SPDX-License-Identifier: Apache-2.0
// Where a margin that falls with the load reaches zero, by few evaluations that may run side by side: widen
// until the zero lies between two loads, then narrow by the chord (regula falsi, from memory) with a point on
// either side of its guess. The caller evaluates, so that several searches can share one batch.
#pragma once

#include <map>
#include <optional>
#include <vector>

namespace solemech::tools
{
class LimitSearch
{
public:
  enum class Outcome {
    found,  ///< the zero is at `load`
    above,  ///< not even the highest load reaches it; `load` is that load
    below,  ///< the lowest load is beyond it already
    stopped ///< no answer could be had above `load`, where there still is a margin
  };
  struct Answer
  {
    Outcome outcome = Outcome::stopped;
    double  load = 0;
  };

  /// @param start      first load to try
  /// @param lowest, highest  where the search ends
  /// @param tolerance  of the load, relative
  LimitSearch(double start, double lowest, double highest, double tolerance);

  /// Loads to evaluate next; empty: done.
  std::vector<double> next() const;

  /// The margin at a load; nothing: no answer could be had there.
  void take(double load, std::optional<double> margin);

  Answer answer() const;

private:
  struct Bracket
  {
    std::optional<std::pair<double, double>>                low;  ///< greatest load with margin, its margin
    std::optional<std::pair<double, std::optional<double>>> high; ///< smallest load without
  };
  Bracket bracket() const;
  bool    is_done(const Bracket &bracket) const;

  double                                  start_, lowest_, highest_, tolerance_;
  std::map<double, std::optional<double>> known_;
};
} // namespace solemech::tools
