// SPDX-License-Identifier: Apache-2.0
// The runs of one command. A list of cases, each with what is wanted of its run, goes in; the results come
// out in the same order. Equal runs are solved once, those that were made before are read back, and each new
// one is stored under its fingerprint the moment it is there, so that whatever ends the process loses none
// that was finished and the same list again goes on from there. All runs of a list are jobs side by side on
// the one pool of threads, the further runs of a case with doubts (below) included.
//
// Bands from doubts: doubts are independent along the directions of tools/language/doubted_case; the case is
// run at both ends of each, coarser and without pictures, and half the difference of the two is what that
// doubt does to a reading. C. F. Gauss: independent ones add as squares. Linear in the doubts: a reading that
// curves within the band has a middle that differs from the mean.
#pragma once

#include "tools/study/run_store.h"

#include <atomic>
#include <exception>
#include <functional>
#include <mutex>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace solemech::tools
{
/// Told now and then: share of the work of the whole command that is done, 0..1, never falling, and a few
/// words; no words when a list is done. One call at a time.
using JobProgress = std::function<void(double fraction, const std::string &what)>;

/// The person wanted to stop.
struct Interrupted : std::runtime_error
{
  Interrupted() : std::runtime_error("interrupted") {}
};

/// One run that is asked for.
struct WantedRun
{
  solver::Case setup;
  SolveWish    wish;
};

/// Work of one run, in runs at the wished accuracy without estimated error.
double cost_of(const SolveWish &wish);

class Job
{
public:
  /// @param store        nothing: no run is read back or kept
  /// @param progress     may be empty
  /// @param interrupted  becomes true when the person wants to stop: no further run is begun
  Job(Solve solve, std::optional<RunStore> store, JobProgress progress, const std::atomic<bool> &interrupted);

  /// Takes the oldest runs out of a store that has grown too large.
  ~Job();

  /// Announces work of lists to come, so that the share that is done is one of the whole command.
  void expect(double cost) { expected_ += cost; }

  /// Results in the order of the list. A run that the solver refuses or trips over is incomplete, with the
  /// reason, and costs no other. One that has doubts, and whose error is wished, has `shifts` in its
  /// readings; where an end of its doubts cannot be run a warning says so.
  /// @param what  a few words on the list, for the progress
  /// @throws Interrupted
  std::vector<solver::Result> run(const std::vector<WantedRun> &list, const std::string &what = "");
  std::vector<solver::Result> run(const std::vector<solver::Case> &cases, const SolveWish &wish,
                                  const std::string &what = "");

  /// The only run that a question is about: what the solver throws of it is the answer.
  /// @throws Interrupted, and what the solver throws
  solver::Result run_alone(const WantedRun &one, const std::string &what = "");

  const std::atomic<bool> &interrupted() const { return interrupted_; }

  std::size_t n_calculated() const { return n_calculated_; } ///< different runs so far
  std::size_t n_from_store() const { return n_from_store_; }
  std::size_t n_kept() const { return n_kept_; } ///< of the calculated ones: the next command finds them
  const std::string &not_kept() const
  {
    return not_kept_;
  } ///< why finished runs are not kept; empty: they are

  /// The first that the solver refused, and the first that failed otherwise; empty: none. What a question
  /// makes of runs that are missing says nothing of the reason.
  const std::exception_ptr &refusal() const { return refusal_; }
  const std::exception_ptr &failure() const { return failure_; }
  /// Why the first run stopped early that neither of them ended; empty: none did.
  const std::string &early_stop() const { return early_stop_; }

private:
  /// A run that differs from the others of its list.
  struct Single
  {
    WantedRun          wanted;
    std::size_t        n_uses = 0;
    double             cost = 0, done = 0; ///< done: share, 0..1
    solver::Result     result = {};
    std::exception_ptr fault = {};      ///< of the solver
    bool               refused = false; ///< the fault is a stack that cannot be built
  };
  class Plan;

  Plan calculated(const std::vector<WantedRun> &list, const std::string &what);
  void note(Single &single, std::exception_ptr fault, bool refused);
  void fill(Single &single, const std::function<void(double, const char *)> &reached);
  void keep(const Single &single);
  void tell(const Plan &plan, const std::string &what);

  Solve                    solve_;
  std::optional<RunStore>  store_;
  JobProgress              progress_;
  const std::atomic<bool> &interrupted_;
  double                   spent_ = 0, expected_ = 0, furthest_ = 0;
  std::atomic<std::size_t> n_calculated_{0}, n_from_store_{0}, n_kept_{0};
  std::string              not_kept_;
  std::exception_ptr       refusal_, failure_;
  std::string              early_stop_;
  std::mutex               guard_; ///< of what jobs side by side tell: shares that are done, what went wrong
};
} // namespace solemech::tools
