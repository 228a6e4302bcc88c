// SPDX-License-Identifier: Apache-2.0
#include "tools/study/job.h"

#include "solver/in_parallel.h"
#include "solver/results/result_check.h"
#include "tools/language/case_text.h"
#include "tools/language/doubted_case.h"

#include <fmt/format.h>

#include <algorithm>
#include <deque>
#include <filesystem>
#include <new>
#include <unordered_map>

namespace solemech::tools
{
namespace
{
constexpr double cost_of_coarser = 0.4, cost_of_stored = 0.01;

solver::Result not_answered(const std::exception_ptr &fault)
{
  solver::Result result;
  result.complete = false;
  try
  {
    std::rethrow_exception(fault);
  }
  catch (const std::invalid_argument &refusal)
  {
    result.stop_reason = refusal.what();
  }
  catch (const std::bad_alloc &)
  {
    result.stop_reason = "not enough memory. Run it alone, or set a coarser accuracy";
  }
  catch (const std::exception &error)
  {
    result.stop_reason =
      fmt::format("a fault of the program, not of your input ({}). Please report it", error.what());
  }
  return result;
}

/// Half the difference of both ends of each direction, the upper one first, of each reading that all have.
void set_shifts(solver::Result &result, const std::vector<const solver::Result *> &ends)
{
  for (auto &reading : result.readings)
  {
    std::vector<double> shifts;
    for (std::size_t i = 0; i + 1 < ends.size(); i += 2)
    {
      const auto *upper = ends[i]->find(reading.name), *lower = ends[i + 1]->find(reading.name);
      if (upper && lower)
        shifts.push_back(0.5 * (upper->value - lower->value));
    }
    if (2 * shifts.size() == ends.size())
      reading.shifts = std::move(shifts);
  }
}
} // namespace

double cost_of(const SolveWish &wish)
{
  return (wish.level < 0 ? cost_of_coarser : 1) + (wish.estimate_error ? cost_of_coarser : 0);
}

/// The different runs behind a list, and which of them each case of it is answered from.
class Job::Plan
{
public:
  explicit Plan(const std::vector<WantedRun> &list)
  {
    for (const WantedRun &wanted : list)
    {
      Answer answer;
      auto   middle = wanted;
      middle.setup.doubts.clear(); // the solver never sees them
      answer.middle = number_of(std::move(middle));
      if (wanted.wish.estimate_error)
        for (const auto &direction : independent_doubts(wanted.setup.doubts))
          for (const double sign : {1.0, -1.0})
            answer.ends.push_back(number_of({moved(wanted.setup, direction, sign), coarser_run}));
      answers_.push_back(std::move(answer));
    }
  }

  std::deque<Single> singles; ///< jobs side by side hold on to theirs
  double             cost = 0, done = 0;
  std::size_t        n_done = 0;

  /// Taken once.
  solver::Result result_of(std::size_t i)
  {
    const Answer  &answer = answers_[i];
    Single        &middle = singles[answer.middle];
    solver::Result result = --middle.n_uses == 0 ? std::move(middle.result) : middle.result;
    if (!result.complete || answer.ends.empty())
      return result;
    std::vector<const solver::Result *> ends;
    for (const std::size_t number : answer.ends)
    {
      const Single &end = singles[number];
      ends.push_back(&end.result);
      if (end.result.complete)
        continue;
      result.warnings.push_back({"", no_bands(end)});
      return result;
    }
    set_shifts(result, ends);
    return result;
  }

  std::vector<solver::Result> results()
  {
    std::vector<solver::Result> all;
    for (std::size_t i = 0; i < answers_.size(); ++i)
      all.push_back(result_of(i));
    return all;
  }

  const std::exception_ptr &fault_of(std::size_t i) const { return singles[answers_[i].middle].fault; }

private:
  struct Answer
  {
    std::size_t              middle = 0;
    std::vector<std::size_t> ends; ///< of its doubts
  };

  static std::string no_bands(const Single &end)
  {
    const char *why = end.refused ? "within its ± the stack cannot be built"
                      : end.fault ? "a run at an end of the ± failed"
                                  : "a run at an end of the ± stopped";
    return fmt::format("No bands: {} ({}).", why, end.result.stop_reason);
  }

  std::size_t number_of(WantedRun wanted)
  {
    const auto [entry, is_new] =
      known_.try_emplace(canonical_text(wanted.setup) + text_of(wanted.wish), singles.size());
    if (is_new)
      singles.push_back({std::move(wanted)});
    ++singles[entry->second].n_uses;
    return entry->second;
  }

  std::vector<Answer>                          answers_;
  std::unordered_map<std::string, std::size_t> known_;
};

Job::Job(Solve solve, std::optional<RunStore> store, JobProgress progress,
         const std::atomic<bool> &interrupted)
  : solve_(std::move(solve)), store_(std::move(store)), progress_(std::move(progress)),
    interrupted_(interrupted)
{
}

Job::~Job()
{
  if (!store_ || n_kept_ == 0)
    return;
  try
  {
    store_->shrink_to(RunStore::greatest_size);
  }
  catch (const std::filesystem::filesystem_error &)
  {
    // Another process took the folder away meanwhile: there is nothing to shrink.
  }
}

std::vector<solver::Result> Job::run(const std::vector<WantedRun> &list, const std::string &what)
{
  return calculated(list, what).results();
}

std::vector<solver::Result> Job::run(const std::vector<solver::Case> &cases, const SolveWish &wish,
                                     const std::string &what)
{
  std::vector<WantedRun> list;
  for (const solver::Case &setup : cases)
    list.push_back({setup, wish});
  return run(list, what);
}

solver::Result Job::run_alone(const WantedRun &one, const std::string &what)
{
  Plan plan = calculated({one}, what);
  if (plan.fault_of(0))
    std::rethrow_exception(plan.fault_of(0));
  return plan.result_of(0);
}

Job::Plan Job::calculated(const std::vector<WantedRun> &list, const std::string &what)
{
  Plan   plan(list);
  double announced = 0;
  for (Single &single : plan.singles)
  {
    const auto &[setup, wish] = single.wanted;
    single.cost = store_ && store_->holds(setup, wish) ? cost_of_stored : cost_of(wish);
    announced += cost_of(wish);
    plan.cost += single.cost;
  }
  expected_ = std::max(0.0, expected_ - announced);
  tell(plan, what);

  solver::in_parallel(plan.singles.size(), [&](std::size_t i) {
    Single &single = plan.singles[i];
    fill(single, [&](double share, const char *stage) {
      const std::lock_guard lock(guard_);
      if (share > single.done)
      {
        plan.done += single.cost * (share - single.done);
        plan.n_done += share >= 1 ? 1 : 0;
        single.done = share;
      }
      tell(plan, plan.singles.size() == 1 ? fmt::format("{}: {}", single.wanted.setup.label, stage) : what);
    });
  });
  spent_ += plan.cost;
  if (progress_)
    progress_(furthest_, "");
  if (interrupted_)
    throw Interrupted();
  return plan;
}

void Job::note(Single &single, std::exception_ptr fault, bool refused)
{
  single.result = not_answered(fault);
  single.refused = refused;
  const std::lock_guard lock(guard_);
  auto                 &first = refused ? refusal_ : failure_;
  if (!first)
    first = fault;
  single.fault = std::move(fault);
}

void Job::fill(Single &single, const std::function<void(double, const char *)> &reached)
{
  if (interrupted_)
    return;
  const auto &[setup, wish] = single.wanted;
  if (auto stored = store_ ? store_->find(setup, wish) : std::nullopt)
  {
    single.result = std::move(*stored);
    ++n_from_store_;
    reached(1, "read back");
    return;
  }
  bool told_to_stop = false;
  try
  {
    single.result = solve_(setup, wish, [&](double share, const char *stage) {
      reached(std::min(share, 0.999), stage);
      return !(told_to_stop = told_to_stop || interrupted_);
    });
    if (single.result.complete)
      solver::require_writable(setup.label, single.result);
  }
  catch (const std::invalid_argument &)
  {
    note(single, std::current_exception(), true);
  }
  catch (...)
  {
    note(single, std::current_exception(), false);
  }
  if (told_to_stop)
    return;
  if (!single.result.complete && !single.fault)
  {
    const std::lock_guard lock(guard_);
    if (early_stop_.empty())
      early_stop_ = single.result.stop_reason;
  }
  ++n_calculated_;
  keep(single);
  reached(1, "done");
}

void Job::keep(const Single &single)
try
{
  if (!store_ || !single.result.complete)
    return;
  store_->keep(single.wanted.setup, single.wanted.wish, single.result);
  ++n_kept_;
}
catch (const solver::ResultsError &reason)
{
  const std::lock_guard lock(guard_);
  not_kept_ = reason.what();
}

void Job::tell(const Plan &plan, const std::string &what)
{
  if (!progress_)
    return;
  const auto   n = plan.singles.size();
  const double done = plan.n_done == n ? plan.cost : plan.done;
  furthest_ = std::max(furthest_, (spent_ + done) / (spent_ + plan.cost + expected_));
  const auto counted = fmt::format("{} of {} runs", plan.n_done, n);
  progress_(furthest_, n == 1 ? what : what.empty() ? counted : fmt::format("{}, {}", what, counted));
}
} // namespace solemech::tools
