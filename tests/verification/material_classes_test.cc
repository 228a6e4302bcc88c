// SPDX-License-Identifier: Apache-2.0
// The library beside what its classes of foam and rubber read on benches, as far as that is known: ball
// rebound and hardness, by the gauge and the ball of the solver. A few materials each time, [few]; all of
// them nightly, [all]. Prints the table.
#include "tests/support/catch.h"
#include "tools/calibrate/virtual_bench.h"
#include "tools/language/library.h"

#include <fmt/format.h>

#include <string>
#include <vector>

using namespace solemech;
using namespace solemech::tools;

namespace
{
constexpr double accuracy = 0.02; // of the readings; ranges are wider than that
constexpr double ball_good_for = 0.01, gauge_good_for = 1;

struct Range
{
  double lowest, highest;
  bool holds(double value, double slack) const { return value >= lowest - slack && value <= highest + slack; }
};

/// What a class reads. Hardness: as the class is sold (common practice, no source), Asker C or Shore A.
struct MaterialClass
{
  const char               *source; ///< of the ball
  Range                     ball;   ///< [-]
  Range                     hardness;
  std::vector<const char *> materials;
};

const std::vector<MaterialClass> classes{
  {"sheet EVA, from memory", {0.40, 0.55}, {25, 60}, {"eva-sheet-soft", "eva-sheet-firm"}},
  {"moulded EVA, from memory",
   {0.40, 0.55},
   {45, 70},
   {"eva-moulded-medium", "eva-moulded-firm", "eva-moulded-hard"}},
  {"EVA by supercritical gas, common practice, no source", {0.55, 0.68}, {30, 50}, {"eva-supercritical"}},
  {"TPU by supercritical gas, common practice, no source", {0.58, 0.72}, {30, 50}, {"tpu-supercritical"}},
  {"bead TPU, from memory", {0.52, 0.62}, {38, 55}, {"tpu-bead-firm"}},
  {"PEBA by supercritical gas, from memory", {0.62, 0.75}, {35, 55}, {"peba-supercritical-firm"}},
  {"polyurethane in soles, from memory", {0.35, 0.48}, {30, 65}, {"pu-cushion", "pu-sole"}},
  {"slow polyurethane foam, below 20 %, from memory", {0, 0.20}, {5, 30}, {"slow-foam-sock"}},
  {"latex foam, from memory", {0.60, 0.75}, {5, 30}, {"latex-sock"}},
  {"flexible polyurethane foam, from memory", {0.35, 0.55}, {5, 30}, {"pu-open-sock"}},
  // exp(-pi eta) after half a swing, loss coefficient 0.1 to 0.3: Gibson, Easterling & Ashby 1981, from
  // memory.
  {"cork, by its loss coefficient", {0.39, 0.73}, {50, 75}, {"cork-sock"}},
  {"lossy compounds, ISO 4662 pendulum, from memory", {0.15, 0.30}, {55, 65}, {"rubber-grip"}},
  {"butadiene-rich compounds, ISO 4662 pendulum, from memory",
   {0.50, 0.65},
   {60, 70},
   {"rubber-hard-wearing"}}};

void check_class(const MaterialClass &one, const std::string &only)
{
  static const auto library = materials::Library::load(SOLEMECH_SOURCE "/materials/library");
  for (const std::string name : one.materials)
    if (only.empty() || name == only)
    {
      REQUIRE(library.find(name) != nullptr);
      const auto  &material = *library.find(name);
      const double ball = ball_rebound(material, accuracy).value;
      const double points = gauge_reading(material, gauge_for(material), accuracy).value;
      fmt::print("{:24} ball {:4.1f} % of {:2.0f}..{:2.0f}, hardness {:4.1f} of {:2.0f}..{:2.0f}  ({})\n",
                 name, 100 * ball, 100 * one.ball.lowest, 100 * one.ball.highest, points, one.hardness.lowest,
                 one.hardness.highest, one.source);
      INFO(name);
      CHECK(one.ball.holds(ball, ball_good_for));
      CHECK(one.hardness.holds(points, gauge_good_for));
    }
}
} // namespace

TEST_CASE("a moulded EVA, a lossy polyurethane and a slow foam read as their classes do", "[few]")
{
  for (const char *name : {"eva-moulded-firm", "pu-cushion", "slow-foam-sock"})
    for (const auto &one : classes)
      check_class(one, name);
}

TEST_CASE("every ordinary foam and rubber reads as its class does", "[all]")
{
  for (const auto &one : classes)
    check_class(one, "");
}
