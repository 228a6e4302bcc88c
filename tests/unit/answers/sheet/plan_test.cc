// SPDX-License-Identifier: Apache-2.0
// The plan of a bench sheet on a made-up bench. The band after a further reading against the closed form for
// one unknown: precisions add, 1/s^2 = 1/s0^2 + sum (gradient/doubt)^2 (C.F. Gauss, 1823; any handbook of
// least squares). The order of teardown against what a cut ends: common practice, no source.
#include "tests/support/catch.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/answers/sheet/doubted.h"
#include "tools/answers/sheet/reading_plan.h"
#include "tools/answers/sheet/teardown.h"
#include "tools/language/library.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>

using namespace solemech;
using namespace solemech::tools;

namespace
{
const std::filesystem::path source = SOLEMECH_SOURCE;

Sheet sheet_of(const std::string &name, const std::string &text)
{
  static const auto            library = materials::Library::load(source / "materials/library");
  const tests::TemporaryFolder folder;
  std::ofstream(folder.path / name) << text;
  return read_sheet(folder.path / name, {{}, {source / "cases"}, library.source()});
}

const std::string head = R"(format = 1
rig = "guided-rod-1200"
[[layer]]
name = "core"
material = "unknown foam"
thickness = "18.0 mm"
[[layer]]
name = "outsole"
material = "rubber-60a"
thickness = "2.0 mm"
)";

double loss_of(const solver::Case &setup)
{
  double loss = 0;
  for (const auto &term : std::get<materials::FoamData>(setup.layers.front().material.data).slipping)
    loss += term.share;
  return loss;
}

/// Rebound as a formula of loss and, when wanted, of density; a press is not known to it.
solver::Result bench(const solver::Case &setup, double by_density)
{
  solver::Result result;
  const auto    *drop = std::get_if<solver::DropRig>(&setup.rig);
  if (!drop)
  {
    result.complete = false;
    return result;
  }
  const double share =
    std::pow(setup.layers.front().material.density / 170, -by_density) / (1 + 0.25 * loss_of(setup));
  result.readings = {{"rebound_height", share * drop->height, "m", ""},
                     {"rebound_by_height", share, "", ""},
                     {"greatest_compression", 7e-3, "m", ""},
                     {"peak_force", 1000, "N", ""},
                     {"contact_time", 9e-3, "s", ""}};
  return result;
}

/// With a rebound that is exactly what the bench says at the middle, so that nothing is wild.
ReadingPlan plan_on(const Sheet &sheet, double by_density)
{
  const std::atomic<bool> go_on{false};
  Job job([=](const auto &setup, const auto &, const auto &) { return bench(setup, by_density); }, {}, {},
          go_on);
  return plan_readings({sheet}, plan_questions[0], job).front();
}

const PlannedReading &named(const ReadingPlan &plan, const std::string &name)
{
  const auto found = std::find_if(plan.ranked.begin(), plan.ranked.end(),
                                  [&](const PlannedReading &one) { return one.name == name; });
  REQUIRE(found != plan.ranked.end());
  return *found;
}

bool tells(const std::vector<std::string> &sentences, const std::string &part)
{
  return std::any_of(sentences.begin(), sentences.end(),
                     [&](const std::string &one) { return one.find(part) != std::string::npos; });
}

Sheet sheet_with_rebound(const std::string &name)
{
  auto sheet = sheet_of(name, head + "[[reading]]\nkind = \"rebound\"\nvalue = \"200 mm +- 12\"\n");
  sheet.readings.front().observation.value = bench(sheet.setup, 0).find("rebound_height")->value;
  return sheet;
}
} // namespace

TEST_CASE("A further reading narrows the band as the sum of precisions says", "[plan]")
{
  const auto sheet = sheet_with_rebound("plan-sum.toml");
  const auto plan = plan_on(sheet, 0);

  const auto loss = std::find_if(sheet.unknowns.begin(), sheet.unknowns.end(),
                                 [](const Unknown &one) { return one.kind == DoubtedNumber::loss; });
  REQUIRE(loss != sheet.unknowns.end());
  const auto share_at = [&](double factor) {
    auto setup = sheet.setup;
    set_unknown(setup, *loss, factor * loss->parameter.median);
    return bench(setup, 0).find("rebound_by_height")->value;
  };
  const double gradient = (share_at(1.001) - share_at(1 / 1.001)) / (2 * std::log(1.001)); // of the share
  const double before =
    1 / std::pow(loss->parameter.spread, 2) + std::pow(0.4 * gradient / (0.012 / doubts_in_half_band), 2);
  const double after = before + std::pow(0.2 * gradient / (0.006 / doubts_in_half_band), 2);
  const double half = 0.5 * (plan.now.high - plan.now.low);
  CHECK(half == Approx(doubts_in_half_band * std::abs(gradient) / std::sqrt(before)).epsilon(2e-3));
  CHECK(named(plan, "rebound from 200 mm").half_band ==
        Approx(half * std::sqrt(before / after)).epsilon(2e-3));
  CHECK(named(plan, "rebound from 200 mm").worth);
  CHECK(plan.ranked.front().name == "rebound from 200 mm");

  // On this bench density and force tell nothing about the rebound, and a press cannot be computed. A gauge
  // feels a little of the lossy branches, which hold for a while.
  for (const char *name : {"core density", "peak force", "hardness of core"})
  {
    INFO(name);
    const double by_branches = name == std::string("hardness of core") ? 5e-3 : 1e-9;
    CHECK(named(plan, name).half_band == Approx(half).epsilon(by_branches));
    CHECK_FALSE(named(plan, name).worth);
  }
  CHECK(tells(plan.left_out, "press loop"));
  CHECK(tells(plan.left_out, "rebound of this rig: already on the sheet"));
}

TEST_CASE("A weighed cube takes its part of the doubt away, and no more", "[plan]")
{
  // The compression of this bench is the same for all foams: it narrows nothing.
  const auto sheet =
    sheet_of("plan-cube.toml", head + "[[reading]]\nkind = \"compression\"\nvalue = \"7.0 mm +- 0.5\"\n");
  const auto plan = plan_on(sheet, 0.5);

  double of_density = 0, of_loss = 0, spread = 0; // parts of the doubt of ln(rebound)
  for (const auto &unknown : sheet.unknowns)
  {
    if (unknown.kind == DoubtedNumber::density)
      spread = unknown.parameter.spread, of_density = 0.5 * spread;
    if (unknown.kind == DoubtedNumber::loss)
    {
      auto more = sheet.setup, less = sheet.setup;
      set_unknown(more, unknown, 1.001 * unknown.parameter.median);
      set_unknown(less, unknown, unknown.parameter.median / 1.001);
      const auto share = [](const solver::Case &setup) {
        return std::log(bench(setup, 0.5).find("rebound_by_height")->value);
      };
      of_loss = (share(more) - share(less)) / (2 * std::log(1.001)) * unknown.parameter.spread;
    }
  }
  const double weighed = 0.05 / doubts_in_half_band;
  const double left = 0.5 / std::sqrt(1 / (spread * spread) + 1 / (weighed * weighed));
  const double half = 0.5 * (plan.now.high - plan.now.low);
  CHECK(named(plan, "core density").half_band / half ==
        Approx(std::hypot(left, of_loss) / std::hypot(of_density, of_loss)).epsilon(5e-3));
  CHECK(named(plan, "core density").needs == "layers separated");
  CHECK(plan.ranked.front().name == "rebound");
  const auto text = plan_text(sheet, plan);
  INFO(text);
  CHECK(text.find("core density") < text.find("not worth doing"));
  CHECK(text.find("band from ±") != std::string::npos);
}

TEST_CASE("A plan begins where the sheet has come to, and with the tools it names", "[plan]")
{
  auto sheet = sheet_with_rebound("plan-tools.toml");
  CHECK(dismantled("") == Dismantled::nothing);
  CHECK(dismantled("not cut yet") == Dismantled::nothing);
  CHECK(dismantled("Upper off") == Dismantled::upper);
  CHECK(dismantled("upper off, plug cut free") == Dismantled::plug);
  CHECK(dismantled("layers parted") == Dismantled::layers);
  sheet.cut = "upper off, plug cut free";
  sheet.tools = {"rule", "callipers"};
  const auto names = [&](const std::string &part) {
    const auto steps = teardown_order(sheet);
    return std::any_of(steps.begin(), steps.end(),
                       [&](const TeardownStep &step) { return step.what.find(part) != std::string::npos; });
  };
  for (const char *over : {"Weigh both", "intact sole", "Bend", "Take the upper off", "Cut a plug"})
  {
    INFO(over);
    CHECK_FALSE(names(over));
  }
  CHECK(names("drops and press loops of this sheet"));
  CHECK(names("Separate the layers"));
  const auto plan = plan_on(sheet, 0);
  for (const char *name : {"peak force", "core density", "hardness of core"})
  {
    INFO(name);
    CHECK(std::none_of(plan.ranked.begin(), plan.ranked.end(),
                       [&](const auto &one) { return one.name == name; }));
    CHECK(tells(plan.left_out, std::string(name) + ": needs "));
  }
  CHECK(named(plan, "rebound from 200 mm").worth);
}

TEST_CASE("Nothing is cut before what it ends has been read", "[plan]")
{
  const auto sheet = sheet_with_rebound("plan-order.toml");
  const auto steps = teardown_order(sheet);
  const auto place = [&](const std::string &part) {
    const auto found = std::find_if(steps.begin(), steps.end(), [&](const TeardownStep &step) {
      return step.what.find(part) != std::string::npos;
    });
    REQUIRE(found != steps.end());
    return found - steps.begin();
  };
  CHECK(std::is_partitioned(steps.begin(), steps.end(), [](const TeardownStep &step) { return !step.cuts; }));
  for (const auto &step : steps)
    CHECK(step.ends.empty() == !step.cuts);
  CHECK(place("Drop on the intact sole") < place("Take the upper off"));
  CHECK(place("Cut a plug") < place("Separate the layers"));
  CHECK(place("Separate the layers") < place("Cut a cube"));
  CHECK(teardown_cautions(sheet).front().find("Local safety rules") == 0);
  CHECK(tells(teardown_cautions(sheet), "never cut into"));

  // With a unit in the stack the warning names it, right after the local rules.
  auto with_unit = sheet;
  with_unit.setup.layers.front().unit.emplace();
  CHECK(teardown_cautions(with_unit)[1].find("under pressure") != std::string::npos);

  // A unit that is larger than the plug is not sawn through.
  const auto names_a_plug = [](const Sheet &one) {
    const auto all = teardown_order(one);
    return std::any_of(all.begin(), all.end(),
                       [](const TeardownStep &step) { return step.what.find("Cut a plug of") == 0; });
  };
  auto &unit = *with_unit.setup.layers.front().unit;
  unit.diameter = 0.06;
  CHECK(names_a_plug(with_unit));
  unit.diameter = 0.09;
  CHECK_FALSE(names_a_plug(with_unit));
  unit.diameter = 0.06;
  unit.outside_volume = 5e-6;
  CHECK_FALSE(names_a_plug(with_unit));
}
