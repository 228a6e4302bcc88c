// SPDX-License-Identifier: Apache-2.0
// The way from two cases to sentences, with a solver whose answers are known: each layer brings its points.
#include "tests/support/catch.h"
#include "tests/unit/answers/compare/stacks.h"
#include "tools/answers/compare/compare_text.h"
#include "tools/answers/compare/explain.h"
#include "tools/answers/compare/view.h"

#include <algorithm>
#include <cmath>
#include <mutex>

using namespace solemech;
using namespace solemech::tools;
using Catch::Matchers::Contains;
using tests::forefoot;
using tests::heel;

namespace
{
Explanation explained_by(const Solve &solve, const solver::Case &a, const solver::Case &b)
{
  const std::atomic<bool> never{false};
  Job                     job(solve, {}, {}, never);
  return explained(prepared(a, b), job);
}

/// Answers with a rebound and a peak force that are sums over what the stack has. Coarser runs are off by
/// `error`.
struct Sums
{
  double           unit = 0.15, plate = 0.01, unit_and_topper = 0, error = 0, force = 0;
  std::atomic<int> n_calls{0};

  double rebound(const solver::Case &setup) const
  {
    double sum = 0.6;
    bool   has_unit = false, has_topper = false;
    for (const auto &layer : setup.layers)
    {
      has_unit = has_unit || layer.unit;
      has_topper = has_topper || layer.name == "topper";
      sum += layer.name == "plate" ? plate : 0;
    }
    return sum + (has_unit ? unit : 0) + (has_unit && has_topper ? unit_and_topper : 0);
  }

  Explanation explain(const solver::Case &a, const solver::Case &b)
  {
    const Solve solve = [this](const solver::Case &setup, const SolveWish &wish, const RunProgress &) {
      ++n_calls;
      solver::Result result;
      const double   value = rebound(setup) + (wish.level < 0 && setup.layers.size() > 4 ? error : 0);
      result.readings.push_back({"rebound_by_height", value, "1", "", -1});
      result.readings.push_back({"rebound_height", value * 0.1, "m", "", -1});
      result.readings.push_back({"peak_force", 1000 + force * value, "N", "", -1});
      return result;
    };
    return explained_by(solve, a, b);
  }
};

double share_of(const Explanation &explanation, const std::string &change)
{
  for (std::size_t i = 0; i < explanation.plan.changes.size(); ++i)
    if (explanation.plan.changes[i].name == change)
      return explanation.splits.front().shares[i].value;
  FAIL("no change is called " + change);
  return 0;
}
} // namespace

TEST_CASE("each change gets what it brings, and the shares add up")
{
  Sums       sums;
  const auto explanation = sums.explain(heel(), forefoot());
  CHECK(share_of(explanation, "core -> air unit") == Approx(0.15).epsilon(1e-9));
  CHECK(share_of(explanation, "plate added") == Approx(0.01).epsilon(1e-9));
  CHECK(std::abs(share_of(explanation, "carrier -> thinner base")) < 1e-15);
  double sum = 0;
  for (const Banded &share : explanation.splits.front().shares)
    sum += share.value;
  CHECK(sum == Approx(explanation.splits.front().total.value).epsilon(1e-9));
  CHECK(explanation.splits.front().interactions.empty());
  CHECK(explanation.impossible.empty());
  CHECK(explanation.no_shares.empty());
}

TEST_CASE("sentences turn round with the stacks")
{
  Sums       sums;
  const auto there = sums.explain(heel(), forefoot()), back = sums.explain(forefoot(), heel());
  CHECK(main_sentence({there, "heel", "forefoot"}) ==
        "forefoot throws the weight back 16.0 mm (16.0 points of return) higher than heel.");
  CHECK(main_sentence({back, "forefoot", "heel"}) ==
        "heel throws the weight back 16.0 mm (16.0 points of return) lower than forefoot.");
  CHECK(share_sentence(there, there.splits.front()) ==
        "Of +16.0 points, +15.0 come from \"core -> air unit\".");
  CHECK(share_sentence(back, back.splits.front()) ==
        "Of -16.0 points, -15.0 come from \"air unit -> core\".");
}

TEST_CASE("equal stacks: no difference, no mixture, no run but their own")
{
  Sums sums;
  auto other = heel();
  other.label = "other";
  const auto explanation = sums.explain(heel(), other);
  CHECK(sums.n_calls == 2);
  const ComparedPair pair{explanation, "heel", "other"};
  CHECK_THAT(main_sentence(pair), Contains("no difference"));
  CHECK(further_sentences(pair).empty());
  for (const auto &reading : comparison_view(pair, 0, 1).readings)
    CHECK(reading.verdict == "no difference");
  for (const auto &split : explanation.splits)
    CHECK(split.total.value == 0);
}

TEST_CASE("what is within its error cannot be told")
{
  Sums sums;
  sums.unit = 0.004;
  sums.plate = 0;
  sums.error = 0.005; // half a point between the two levels
  const auto         explanation = sums.explain(heel(), forefoot());
  const ComparedPair pair{explanation, "heel", "forefoot"};
  CHECK_THAT(main_sentence(pair), Contains("cannot separate these two"));
  CHECK(comparison_view(pair, 0, 1).readings.front().verdict == "cannot tell");
  CHECK_THAT(comparison_text({pair}, {}), Contains("cannot tell"));
}

TEST_CASE("a difference below two points is told, but not as real")
{
  Sums sums;
  sums.unit = 0.012;
  sums.plate = 0;
  const auto explanation = sums.explain(heel(), forefoot());
  const auto sentences = further_sentences({explanation, "heel", "forefoot"});
  REQUIRE(!sentences.empty());
  CHECK_THAT(sentences.front(), Contains("as real, unless you know"));
  CHECK(comparison_view({explanation, "heel", "forefoot"}, 0, 1).readings.front().verdict ==
        "too small to be taken as real");
}

TEST_CASE("a higher rebound that lands harder is said, and not when it lands softer")
{
  Sums harder, softer;
  harder.force = 1000;
  softer.force = -1000;
  const auto told = [](Sums &sums) {
    const auto  explanation = sums.explain(heel(), forefoot());
    std::string text;
    for (const auto &sentence : further_sentences({explanation, "heel", "forefoot"}))
      text += sentence;
    return text;
  };
  CHECK_THAT(told(harder), Contains("But forefoot hits harder by 10 %"));
  CHECK_THAT(told(softer), Contains("forefoot hits softer") && !Contains("But"));
}

TEST_CASE("two changes that work only together are no single causes")
{
  Sums sums;
  sums.unit = 0;
  sums.plate = 0;
  sums.unit_and_topper = 0.1;
  const auto  explanation = sums.explain(heel(), forefoot());
  const auto &split = explanation.splits.front();
  CHECK(share_of(explanation, "core -> air unit") == Approx(0.05).epsilon(1e-9));
  CHECK(share_of(explanation, "topper added") == Approx(0.05).epsilon(1e-9));
  REQUIRE(split.interactions.size() == 1);
  CHECK(split.interactions[0].value == Approx(0.1).epsilon(1e-9));
  CHECK_THAT(share_sentence(explanation, split), Contains("act on each other") && Contains("neither alone"));
}

TEST_CASE("mixtures that the solver refuses are named, and the shares still add up")
{
  const Solve solve = [](const solver::Case &setup, const SolveWish &, const RunProgress &) {
    bool has_plate = false, has_unit = false;
    for (const auto &layer : setup.layers)
    {
      has_plate = has_plate || layer.name == "plate";
      has_unit = has_unit || layer.unit;
    }
    if (has_plate && !has_unit)
      throw std::invalid_argument("a plate needs a unit");
    solver::Result result;
    result.readings.push_back({"rebound_by_height", has_unit ? 0.8 : 0.6, "1", "", -1});
    return result;
  };
  const auto explanation = explained_by(solve, heel(), forefoot());
  REQUIRE(explanation.impossible.size() == 32); // a plate and no unit, any of five others
  CHECK(explanation.impossible.front().reason == "a plate needs a unit");
  REQUIRE(explanation.possible_orders);
  CHECK(*explanation.possible_orders == Approx(0.5)); // the unit before the plate
  CHECK(share_of(explanation, "core -> air unit") == Approx(0.2).epsilon(1e-9));
  CHECK_THAT(comparison_text({{explanation, "heel", "forefoot"}}, {}), Contains("a plate needs a unit"));
}

TEST_CASE("a drop against a press: what both have, no shares")
{
  auto press = heel();
  press.label = "press";
  press.rig = solver::PressRig{};
  Sums       sums;
  const auto explanation = sums.explain(heel(), press);
  CHECK(explanation.splits.empty());
  CHECK_THAT(explanation.no_shares, Contains("different kinds"));
  CHECK(sums.n_calls == 4);
}

TEST_CASE("of many changes few mixtures are run; orders are sampled where one of those cannot be built")
{
  auto       other = forefoot();
  const bool has_room = GENERATE(true, false);
  if (!has_room) // for the unit in the height of the heel
    for (auto &layer : other.layers)
      if (layer.unit)
        layer.thickness = 25e-3;
  other.temperature += 5;
  other.plug.base = solver::Base::clamped;
  std::get<solver::DropRig>(other.rig).mass = 1.3;
  Sums       sums;
  const auto explanation = sums.explain(heel(), other);
  REQUIRE(explanation.plan.changes.size() == 10);
  CHECK((explanation.n_sampled_orders == 0) == has_room);
  CHECK(explanation.impossible.empty() == has_room);
  const auto &split = explanation.splits.front();
  double      sum = 0;
  for (const Banded &share : split.shares)
    sum += share.value;
  CHECK(sum == Approx(split.total.value).epsilon(1e-9));
  // Without interaction every order says the same.
  CHECK(share_of(explanation, "core -> air unit") == Approx(0.15).epsilon(1e-9));
  if (!has_room)
    CHECK_THAT(comparison_view({explanation, "heel", "other"}, 0, 1).rule, Contains("orders are sampled"));
}

TEST_CASE("equal doubts of both drop out of a difference, doubts of one widen its share")
{
  // Rebound: 0.6 and 2 per metre of core; only the core's thickness is doubted, by 0.05 in its logarithm.
  const Solve solve = [](const solver::Case &setup, const SolveWish &, const RunProgress &) {
    double core = 0, skin = 0;
    for (const auto &layer : setup.layers)
      (layer.name == "core" ? core : skin) += layer.thickness;
    solver::Result result;
    result.readings.push_back({"rebound_by_height", 0.6 + 2 * core + skin, "1", "", -1});
    return result;
  };
  auto a = heel(), b = heel();
  b.layers.back().thickness = 4e-3;
  const solver::Doubt doubt{solver::DoubtedNumber::thickness, "core", 0.05, {}};
  const auto          split = [&] { return explained_by(solve, a, b); };
  const auto          sure = split();
  CHECK_FALSE(sure.has_doubts);
  a.doubts = b.doubts = {doubt};
  const auto shared = split();
  CHECK(shared.splits[0].total.band == Approx(sure.splits[0].total.band).margin(1e-12));
  // Half a band moves 16 mm of core by exp(0.0822) - 1.
  const double shift = 2 * 0.016 * std::expm1(0.05 * 1.6448536);
  CHECK(shared.a.find("rebound_by_height")->doubt() == Approx(shift));
  CHECK(solver::doubt_of_difference(shared.a.readings[0], shared.b.readings[0]) < 1e-12);

  // Different cores, one doubted: its share is as doubtful as the difference.
  b.layers[1].thickness = 18e-3;
  a.doubts.clear();
  b.doubts.clear();
  const auto known = split();
  a.doubts = {doubt};
  const auto one = split();
  CHECK(one.splits[0].total.band - known.splits[0].total.band == Approx(shift));
  double of_shares = 0;
  for (std::size_t i = 0; i < one.splits[0].shares.size(); ++i)
    of_shares += one.splits[0].shares[i].band - known.splits[0].shares[i].band;
  CHECK(of_shares == Approx(shift).epsilon(0.05));
}

TEST_CASE("a doubt that makes another change widens no share, and that is said")
{
  const Solve solve = [](const solver::Case &setup, const SolveWish &, const RunProgress &) {
    double sum = 0.6;
    for (const auto &layer : setup.layers)
      sum += (layer.name == "core" ? 2 : 1) * layer.thickness;
    solver::Result result;
    result.readings.push_back({"rebound_by_height", sum, "1", "", -1});
    return result;
  };
  auto a = heel(), b = heel();
  b.layers[1].thickness = 18e-3;
  const auto known = explained_by(solve, a, b);
  const auto rule = [](const Explanation &one) { return comparison_view({one, "heel", "other"}, 0, 1).rule; };
  const std::string said = "The bands of the shares leave out an uncertainty";
  // The cores differ anyhow; the skins only read the same.
  a.doubts = {{solver::DoubtedNumber::thickness, "core", 0.05, {}}};
  const auto of_core = explained_by(solve, a, b);
  CHECK_FALSE(of_core.shares_without_doubts);
  CHECK_THAT(rule(of_core), !Contains(said));
  a.doubts = {{solver::DoubtedNumber::thickness, "skin", 0.05, {}}};
  const auto of_skin = explained_by(solve, a, b);
  CHECK(of_skin.shares_without_doubts);
  CHECK_THAT(rule(of_skin), Contains(said));
  SummaryOptions one_line;
  one_line.width = 2000;
  CHECK_THAT(comparison_text({{of_skin, "heel", "other"}}, one_line), Contains(said));
  CHECK(of_skin.splits[0].total.band > known.splits[0].total.band);
  CHECK(of_skin.splits[0].shares[0].band == Approx(known.splits[0].shares[0].band));
}

namespace
{
/// A fall whose rebound goes with the guide loss and the plate, its force with the plate alone.
Solve on_rod(double plate_force)
{
  return [plate_force](const solver::Case &setup, const SolveWish &, const RunProgress &) {
    const auto     plates = std::count_if(setup.layers.begin(), setup.layers.end(),
                                          [](const auto &layer) { return layer.name == "plate"; });
    solver::Result result;
    result.readings.push_back({"rebound_by_height",
                               0.7 - 2 * std::get<solver::DropRig>(setup.rig).guide_loss + 0.002 * plates,
                               "1", "", -1});
    result.readings.push_back({"peak_force", 1000 + plate_force * plates, "N", "", -1});
    return result;
  };
}

solver::Case settled_on_rod(solver::Case setup, double guide_loss, double spread)
{
  std::get<solver::DropRig>(setup.rig).guide_loss = guide_loss;
  setup.doubts.push_back({solver::DoubtedNumber::guide_loss, "", spread, {}});
  return setup;
}
} // namespace

TEST_CASE("one rod with two settled guide losses is one rod")
{
  auto other = heel();
  other.layers[1].thickness += 2e-3;
  const auto explain = [&](double loss, double spread) {
    return explained_by(on_rod(0), settled_on_rod(heel(), 0.0410, spread),
                        settled_on_rod(other, loss, spread));
  };
  const auto one = explain(0.0417, 0.1);
  REQUIRE(one.plan.changes.size() == 1);
  CHECK(one.plan.changes[0].name == "thicker core");
  // Weighed alike: the geometric mean.
  CHECK(std::get<solver::DropRig>(one.plan.a.rig).guide_loss == Approx(std::sqrt(0.0410 * 0.0417)));
  CHECK(std::get<solver::DropRig>(one.plan.b.rig).guide_loss ==
        std::get<solver::DropRig>(one.plan.a.rig).guide_loss);
  CHECK_THAT(comparison_view({one, "heel", "other"}, 0, 1).rule,
             Contains("Both were read on the same rod: guide loss 4.135 % (settled 4.1 and 4.17)"));
  // Beyond both bands they are two: 1.645 times the root of two spreads of 1 % is 2.3 %.
  const auto two = explain(0.0500, 0.01);
  CHECK(two.plan.changes.size() == 2);
  CHECK(two.one_rod.empty());
  // A rod that nobody doubts is as it is.
  auto sure = settled_on_rod(other, 0.0417, 0.1);
  sure.doubts.clear();
  CHECK(explained_by(on_rod(0), settled_on_rod(heel(), 0.0410, 0.1), sure).plan.changes.size() == 2);
}

TEST_CASE("a plate is said to be hardly read only when no reading shows it")
{
  auto with_plate = heel();
  with_plate.layers.insert(with_plate.layers.begin() + 2,
                           tests::layer("plate", tests::material("glass", "plate", 8e9), 1.2));
  const auto remark = [&](double force) {
    return change_remark(explained_by(on_rod(force), heel(), with_plate), 0);
  };
  CHECK_THAT(remark(5), Contains("hardly shows it") && Contains("which a drop does not read"));
  CHECK(remark(76) == "not the whole effect of a plate: a drop does not read bending");
}

TEST_CASE("a share below what is read as real goes neither up nor down")
{
  Sums sums;
  sums.plate = -0.002;
  const auto explanation = sums.explain(heel(), forefoot());
  const auto view = comparison_view({explanation, "heel", "forefoot"}, 0, 1);
  for (const auto &row : view.shares.front().rows)
    if (row.change == "plate added")
      CHECK(row.verdict == "too small to be taken as real");
    else if (row.change == "core -> air unit")
      CHECK(row.verdict == "higher");
}
