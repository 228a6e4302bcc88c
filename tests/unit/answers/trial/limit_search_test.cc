// SPDX-License-Identifier: Apache-2.0
// The search for the load at which a margin is used up, on functions with a known zero.
#include "tests/support/catch.h"
#include "tools/answers/trial/limit_search.h"

#include <cmath>
#include <functional>

using solemech::tools::LimitSearch;
using Outcome = LimitSearch::Outcome;

namespace
{
using Margin = std::function<std::optional<double>(double)>;

/// Answer, and how many rounds and evaluations it took.
struct Found
{
  LimitSearch::Answer answer;
  int                 rounds = 0, evaluations = 0;
};

Found search(const Margin &margin, double start, double lowest, double highest)
{
  LimitSearch limit(start, lowest, highest, 0.02);
  Found       found;
  for (auto loads = limit.next(); !loads.empty() && found.rounds < 60; loads = limit.next(), ++found.rounds)
    for (const double load : loads)
    {
      limit.take(load, margin(load));
      ++found.evaluations;
    }
  found.answer = limit.answer();
  return found;
}
} // namespace

TEST_CASE("a zero is found to the tolerance, whatever the curve")
{
  // Closed forms: straight line, root (a spring under a drop), steep end, kink, beyond which the margin
  // stays.
  const std::pair<Margin, double> curves[] = {
    {[](double x) { return 1 - x / 30; }, 30},
    {[](double x) { return 1 - std::sqrt(x / 17.3); }, 17.3},
    {[](double x) { return 1 - std::pow(x / 41, 6); }, 41},
    {[](double x) { return x < 12.5 ? 0.4 : 12.4999 - x; }, 12.5},
    {[](double x) { return x < 8 ? 1 - x / 8 : 0; }, 8},
  };
  for (const auto &[margin, zero] : curves)
    for (const double start : {4.0, 20.0, 70.0})
    {
      const auto found = search(margin, start, 1, 100);
      INFO("zero " << zero << ", start " << start << ", found " << found.answer.load);
      CHECK(found.answer.outcome == Outcome::found);
      CHECK(std::abs(found.answer.load / zero - 1) <= 0.02);
      CHECK(found.rounds <= 15);
    }
}

TEST_CASE("a smooth curve takes few rounds")
{
  CHECK(search([](double x) { return 1 - std::sqrt(x / 17.3); }, 10, 1, 100).rounds <= 5);
}

TEST_CASE("beyond the ends of the search")
{
  const auto above = search([](double) { return 0.3; }, 130, 30, 130);
  CHECK(above.answer.outcome == Outcome::above);
  CHECK(above.answer.load == 130);
  CHECK(above.evaluations == 1);
  const auto below = search([](double) { return -0.1; }, 130, 30, 130);
  CHECK(below.answer.outcome == Outcome::below);
  CHECK(below.answer.load == 30);
}

TEST_CASE("a load without an answer ends the search below it")
{
  const auto stopped =
    search([](double x) { return x < 25 ? std::optional(1 - x / 40) : std::nullopt; }, 10, 1, 100);
  CHECK(stopped.answer.outcome == Outcome::stopped);
  CHECK(stopped.answer.load < 25);
  CHECK(stopped.answer.load > 24);
  CHECK(search([](double) { return std::nullopt; }, 10, 1, 100).answer.outcome == Outcome::stopped);
}
