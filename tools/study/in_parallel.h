// SPDX-License-Identifier: Apache-2.0
// Independent jobs on several threads: each thread takes the next job when it has finished one.
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace solemech::tools
{
/// Calls job(0) ... job(n_jobs - 1). After an exception no further job is begun; the first one is thrown
/// again when all threads have ended.
template <typename Job>
void in_parallel(std::size_t n_jobs, std::size_t n_threads, const Job &job)
{
  std::atomic<std::size_t> next{0};
  std::exception_ptr       first_error;
  std::mutex               error_mutex;
  const auto               work = [&] {
    for (std::size_t i = next++; i < n_jobs; i = next++)
      try
      {
        job(i);
      }
      catch (...)
      {
        const std::lock_guard lock(error_mutex);
        if (!first_error)
          first_error = std::current_exception();
        next = n_jobs;
      }
  };
  {
    std::vector<std::jthread> helpers;
    for (std::size_t i = 1; i < std::min(n_threads, n_jobs); ++i)
      helpers.emplace_back(work);
    work();
  }
  if (first_error)
    std::rethrow_exception(first_error);
}
} // namespace solemech::tools
