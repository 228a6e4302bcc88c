// SPDX-License-Identifier: Apache-2.0
// The share done of several jobs that run at the same time. It only rises, whoever tells and in whatever
// order.
#pragma once

#include <algorithm>
#include <mutex>
#include <numeric>
#include <vector>

namespace solemech::tools
{
class SharedProgress
{
public:
  explicit SharedProgress(std::size_t n_jobs) : done_(n_jobs, 0.0) {}

  /// A job has come so far, 0..1. @return what `tell` makes of the share of all; one call of it at a time
  template <typename Tell>
  auto reached(std::size_t job, double share, const Tell &tell)
  {
    const std::lock_guard lock(guard_);
    done_[job] = std::max(done_[job], share);
    return tell(std::accumulate(done_.begin(), done_.end(), 0.0) / static_cast<double>(done_.size()));
  }

private:
  std::mutex          guard_;
  std::vector<double> done_;
};
} // namespace solemech::tools
