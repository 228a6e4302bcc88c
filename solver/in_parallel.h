// SPDX-License-Identifier: Apache-2.0
// Independent jobs on the one pool of threads of the process (oneTBB): as many threads as processors, however
// deep such calls lie in each other.
#pragma once

#include <tbb/parallel_for.h>
#include <tbb/task_arena.h>

#include <atomic>
#include <cstddef>
#include <stdexcept>
#include <system_error>

namespace solemech::solver
{
/// Calls job(0) ... job(n_jobs - 1), begun in this order. After an exception no further job is begun; the
/// first one is thrown again when those begun have ended.
template <typename Job>
void in_parallel(std::size_t n_jobs, const Job &job)
{
  std::atomic<std::size_t> next{0};
  std::atomic<bool>        job_failed{false};
  const auto               take_next = [&](std::size_t) {
    try
    {
      job(next++);
    }
    catch (...)
    {
      job_failed = true;
      throw;
    }
  };
  try
  {
    // The failure of a job outside, of which this call is part of another, may not leave jobs out here; and a
    // thread that waits here takes up nothing from outside, whose locks and stack would lie on top of ours.
    tbb::task_group_context of_its_own(tbb::task_group_context::isolated);
    tbb::this_task_arena::isolate(
      [&] { tbb::parallel_for(std::size_t{0}, n_jobs, take_next, tbb::simple_partitioner(), of_its_own); });
  }
  catch (const std::runtime_error &)
  {
    if (job_failed)
      throw;
    // The library says so when the system gives it no thread.
    throw std::system_error(std::make_error_code(std::errc::resource_unavailable_try_again));
  }
}
} // namespace solemech::solver
