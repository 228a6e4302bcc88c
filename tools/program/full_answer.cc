// SPDX-License-Identifier: Apache-2.0
#include "tools/program/full_answer.h"

#include "tools/program/calculate.h"
#include "tools/program/compare_run.h"
#include "tools/program/failures.h"
#include "tools/program/learn_run.h"
#include "tools/program/pair_run.h"
#include "tools/program/plan_run.h"
#include "tools/program/progress.h"
#include "tools/program/record.h"
#include "tools/program/trial_run.h"
#include "tools/study/settle.h"

#include <fmt/format.h>

#include <optional>

namespace solemech::tools
{
namespace
{
struct FullAnswer
{
  Job &job;

  Exit operator()(const RunRequest &request) const { return calculate(request, job); }
  Exit operator()(const PairRequest &request) const { return answer_pair(request, job); }
  Exit operator()(const CompareRequest &request) const { return calculate_comparison(request, job); }
  Exit operator()(const LearnRequest &request) const { return answer_lesson_request(request, job); }
  Exit operator()(const TrialRequest &request) const { return answer_trial(request, job); }
  Exit operator()(const PlanRequest &request) const { return answer_plan(request, job); }
  template <typename Other>
  Exit operator()(const Other &) const
  {
    throw UsageError("this is the solver that `solemech run` calls; use `solemech` instead.");
  }
};

/// Whether a command is to say nothing while it calculates.
struct IsQuiet
{
  bool operator()(const LearnRequest &request) const { return request.quiet || request.json; }
  template <typename Other>
  bool operator()(const Other &request) const
  {
    if constexpr (requires { request.quiet; })
      return request.quiet;
    else
      return true;
  }
};

Exit said(Exit exit, const std::string &text)
{
  fmt::print(stderr, "solemech: {}\n", text);
  return exit;
}

/// Says what the fault is. @return what it amounts to
Exit said(const std::exception_ptr &fault)
try
{
  std::rethrow_exception(fault);
}
catch (const std::exception &error)
{
  return explain(error);
}
} // namespace

Exit full_answer(const Request &request, const Solve &solve, const std::atomic<bool> &interrupted)
{
  std::optional<Progress> progress; // its clock runs from the first run on, not while a person thinks
  const auto              told = [&](double fraction, const std::string &what) {
    if (!progress)
      progress.emplace(progress_on_standard_error(), std::visit(IsQuiet(), request));
    what.empty() ? progress->clear() : progress->update(fraction, what);
  };
  Job job(solve, RunStore(RunStore::default_folder, answering_version()), told, interrupted);
  try
  {
    const Exit exit = std::visit(FullAnswer{job}, request);
    if (!job.not_kept().empty() && exit != Exit::results)
      said(exit, fmt::format("finished runs are not kept for the next time: {}", job.not_kept()));
    if (exit != Exit::ok || !job.failure())
      return exit;
    said(exit, "a run of this answer failed and is left out:");
    said(job.failure());
    return Exit::run_failed;
  }
  catch (const Interrupted &)
  {
    return said(Exit::interrupted,
                job.n_kept() == 0 ? "interrupted. No results were written."
                                  : "interrupted. No results were written. Finished runs are kept: the same "
                                    "command goes on from there.");
  }
  catch (const settle::ImpossibleInput &error)
  {
    return said(Exit::usage, error.what());
  }
  catch (const settle::PredictionFailed &error)
  {
    // Of a far set of values a stack may well be refused: that is why only when nothing else went wrong.
    const Exit exit = said(Exit::run_failed, error.what());
    if (job.failure())
      return said(job.failure());
    if (!job.early_stop().empty())
      return said(exit, "a run stopped early: " + job.early_stop());
    return job.refusal() ? said(job.refusal()) : exit;
  }
}
} // namespace solemech::tools
