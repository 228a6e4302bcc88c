// SPDX-License-Identifier: Apache-2.0
// Two hundred random, valid cases: each ends in an answer whose energy account closes, or in a refusal that says
// why. Nothing else may come out, and refusals stay rare.
#include "geometry/errors.h"
#include "materials/errors.h"
#include "solver/run.h"
#include "tests/support/catch.h"
#include "tests/support/random_cases.h"

#include <atomic>
#include <cmath>
#include <iostream>
#include <mutex>
#include <thread>

using namespace solemech;

namespace
{
constexpr unsigned n_cases = 200, n_threads = 2;
constexpr double   closed = 0.005;        // of the energy put in, numerical and residual together
constexpr double   rounding = 1e-6;       // of it, in the sum of all rows
constexpr unsigned most_refusals = 20;    // one in ten; common practice, no source

struct Outcome
{
  bool        answered = false, refused = false;
  std::string text;      ///< why refused, or what is wrong
  double      open = 0;  ///< share of the energy put in
};

Outcome outcome_of(const solver::Case &input)
{
  Outcome outcome;
  try
  {
    solver::RunOptions options;
    options.pictures = false;
    options.estimate_error = false;
    const auto result = solver::run(input, options);
    outcome.answered = true;
    outcome.open = result.facts.ledger_numerical + result.facts.ledger_residual;
    if (!(outcome.open <= closed))
      outcome.text = "account open by " + std::to_string(100 * outcome.open) + " %";
    double sum = 0;
    for (const auto &row : result.ledger)
      sum += row.values.back();
    const bool   drop = std::holds_alternative<solver::DropRig>(input.rig);
    const double expected = drop ? result.input_energy : 0;
    if (!(std::abs(sum - expected) <= rounding * result.input_energy))
      outcome.text += " rows add up to " + std::to_string(sum) + " J instead of " + std::to_string(expected) + " J";
    for (const auto &reading : result.readings)
      if (!std::isfinite(reading.value))
        outcome.text += " " + reading.name + " is not finite";
  }
  catch (const solver::RunFailed &refusal)
  {
    outcome.refused = true, outcome.text = refusal.what();
  }
  catch (const materials::InvalidParameter &refusal)
  {
    outcome.refused = true, outcome.text = refusal.what();
  }
  catch (const geometry::InvalidGeometry &refusal)
  {
    outcome.refused = true, outcome.text = refusal.what();
  }
  catch (const std::exception &error)
  {
    outcome.text = std::string("unexplained: ") + error.what();
  }
  return outcome;
}
} // namespace

TEST_CASE("random stacks end in a closed account or an explained refusal", "[random]")
{
  std::vector<Outcome>     outcomes(n_cases);
  std::atomic<unsigned>    next = 0;
  std::vector<std::thread> workers;
  for (unsigned worker = 0; worker < n_threads; ++worker)
    workers.emplace_back([&] {
      for (unsigned i = next++; i < n_cases; i = next++)
        outcomes[i] = outcome_of(tests::random_case(i));
    });
  for (auto &worker : workers)
    worker.join();

  unsigned n_refused = 0;
  double   most_open = 0;
  for (unsigned i = 0; i < n_cases; ++i)
  {
    const auto &outcome = outcomes[i];
    INFO("case " << i << ": " << outcome.text);
    CHECK((outcome.answered || outcome.refused));
    if (outcome.answered)
      CHECK(outcome.text.empty());
    if (outcome.refused)
    {
      CHECK_FALSE(outcome.text.empty());
      std::cout << "case " << i << " refused: " << outcome.text << '\n';
    }
    n_refused += outcome.refused;
    most_open = std::max(most_open, outcome.open);
  }
  std::cout << n_cases - n_refused << " answers, " << n_refused << " refusals; greatest open account "
            << 100 * most_open << " %\n";
  CHECK(n_refused <= most_refusals);
}
