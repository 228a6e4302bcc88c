// SPDX-License-Identifier: Apache-2.0
// Toe flexion of a long section: layered blocks clamped between pads against values of other codes, a thin
// strip against the elastica under a roller on an arm, and what a flexion tells when it cannot go on.
#include "geometry/sole/monotone_curve.h"
#include "solver/rigs/flexion.h"
#include "solver/rigs/slow_bench.h"
#include "tests/external/check.h"
#include "tests/support/section_block.h"

#include <fmt/format.h>

#include <cmath>

using namespace solemech;
using namespace solemech::tests;
using solver::degree;

namespace
{
constexpr double  mm = 1e-3, MPa = 1e6;
constexpr double  width = 80 * mm;
const std::string other_codes = "layered block clamped between pads, lifted by a roller on an arm of 80 mm: "
                                "independent finite-element values computed with two separate codes";

const EvenLayer rubber{"rubber", elastic_rubber(1.2 * MPa, 600 * MPa), 3 * mm, 2},
  plate{"plate", elastic_plate(30e3 * MPa, 0.3), 1.2 * mm, 1};

EvenLayer foam(std::string name, double thickness, unsigned n_cells)
{
  return {std::move(name), elastic_foam(0.5 * MPa, 4, 0.1), thickness, n_cells};
}

const std::vector<EvenLayer> low_plate{rubber, foam("lower", 3 * mm, 2), plate, foam("upper", 11 * mm, 4)},
  high_plate{rubber, foam("lower", 9 * mm, 4), plate, foam("upper", 5 * mm, 3)},
  no_plate{rubber, foam("foam", 15.2 * mm, 5)};

/// Heel to the left, fine at the ends of the pads and under the roller.
solver::LongSection block(const std::vector<EvenLayer> &layers, double level, double setback = 12 * mm)
{
  std::vector<SizeAt> sizes{{-130 * mm, 6 * mm}, {-85 * mm, 2 * mm}, {-75 * mm, 2 * mm},
                            {-60 * mm, 4 * mm},  {-20 * mm, 3 * mm}, {0, 1 * mm}};
  if (setback > 0)
    sizes.insert(sizes.end(), {{0.5 * setback, 1.5 * mm}, {setback, 1 * mm}});
  sizes.emplace_back(40 * mm, 6 * mm);
  return section_block(lines_through(sizes, level), layers, width, level);
}

solver::FlexionRig bench(std::string with_plate, double greatest = 40 * degree, double setback = 12 * mm)
{
  solver::FlexionRig rig;
  rig.setback = setback, rig.arm = 80 * mm, rig.greatest_angle = greatest;
  rig.plate = std::move(with_plate);
  return rig;
}

/// Curves of a record by the angle of the arm.
struct ByAngle
{
  const solver::Result &record;
  std::vector<double>   angle{};

  explicit ByAngle(const solver::Result &of) : record(of), angle(curve("angle")) {}
  const std::vector<double> &curve(const std::string &name) const
  {
    for (const auto &one : record.curves)
      if (one.name == name)
        return one.values;
    throw std::logic_error("no curve " + name);
  }
  double at(const std::vector<double> &values, double degrees) const
  {
    std::vector<double> rising, there;
    for (std::size_t i = 0; i < angle.size(); ++i)
      if (rising.empty() || angle[i] > rising.back())
        rising.push_back(angle[i]), there.push_back(values[i]);
    return geometry::MonotoneCurve(rising, there)(degrees * degree);
  }
  /// Per mm of width, N mm.
  double moment(double degrees) const { return at(curve("moment"), degrees) / width; }
  double energy(const std::string &part, double degrees) const
  {
    for (const auto &row : record.ledger)
      if (row.part == part && row.kind == "network")
        return at(row.values, degrees) / width;
    throw std::logic_error("no energy of " + part);
  }
};

void check_moments(const std::string &which, const ByAngle &run,
                   const std::vector<std::pair<double, double>> &expected, double tolerance)
{
  for (const auto &[degrees, moment] : expected)
    external_check({other_codes, fmt::format("moment at {:.0f} degrees, {}", degrees, which), moment,
                    run.moment(degrees), tolerance, "N"});
}
} // namespace

TEST_CASE("a layered block with a low plate flexes at the toes", "[external]")
{
  const auto outcome = run_flexion(block(low_plate, 1), {}, bench("plate"), {});
  INFO(outcome.record.stop_reason);
  REQUIRE(outcome.record.complete);
  const ByAngle run(outcome.record);
  // Of the values 0.1 to 0.2 %.
  check_moments("low plate", run, {{5, 12.53}, {10, 25.54}, {20, 52.93}, {30, 82.1}, {40, 112.7}}, 5e-3);
  for (const auto &[degrees, most, least] :
       {std::tuple{10, .00240, -.00242}, {20, .00491, -.00495}, {30, .00751, -.00758}, {40, .01018, -.01028}})
  {
    const std::string where = fmt::format(" strain of the plate at {} degrees", degrees);
    external_check({other_codes, "greatest" + where, 100 * most,
                    100 * run.at(run.curve("strain_most"), degrees), 0.01, "%"});
    external_check({other_codes, "least" + where, 100 * least,
                    100 * run.at(run.curve("strain_least"), degrees), 0.01, "%"});
  }
  for (const auto &[part, energy] :
       {std::pair{"rubber", 2.127}, {"lower", 1.828}, {"plate", 14.75}, {"upper", 2.094}})
    external_check({other_codes, fmt::format("energy of {} at 30 degrees", part), energy,
                    run.energy(part, 30), 0.01, "N"});
  // Readings are those of the curve.
  CHECK(run.moment(outcome.zero / degree) * width == Approx(0.1).epsilon(0.02));
  CHECK(*outcome.stiffness ==
        Approx((run.moment(20.5 + 5) - run.moment(20.5 - 5)) * width / (10 * degree)).epsilon(0.02));
  CHECK(*outcome.secant ==
        Approx((run.moment(30 + outcome.zero / degree) * width - 0.1) / (30 * degree)).epsilon(2e-3));
  CHECK(*outcome.loop_loss == 0); // elastic
  CHECK(outcome.flex_line < 5 * mm);
  CHECK(outcome.flex_line > -20 * mm);
  // What turns the arm is the change of energy: M = dE/d angle.
  double open = 0, stored = 0;
  for (const auto &row : outcome.record.ledger)
    if (row.type == solver::EnergyKind::numerical)
      open += std::abs(row.values.back());
    else if (row.type == solver::EnergyKind::stored)
      stored += row.values.back();
  CHECK(open < 5e-3 * stored);
}

TEST_CASE("a high plate and none", "[external]")
{
  // 1 %: the source states 0.1 to 0.6 % and one mesh.
  const auto high = run_flexion(block(high_plate, 1), {}, bench("plate"), {});
  INFO(high.record.stop_reason);
  REQUIRE(high.record.complete);
  check_moments("high plate", ByAngle(high.record), {{10, 30.4}, {20, 64.5}, {30, 102.2}, {40, 143.9}}, 0.01);
  const auto none = run_flexion(block(no_plate, 1), {}, bench(""), {});
  REQUIRE(none.record.complete);
  check_moments("no plate", ByAngle(none.record), {{10, 4.81}, {20, 9.74}, {30, 14.67}, {40, 19.45}}, 0.01);
}

TEST_CASE("both pads to the axis, at small angles", "[external]")
{
  const auto low = run_flexion(block(low_plate, 1, 0), {}, bench("plate", 20 * degree, 0), {});
  REQUIRE(low.record.complete);
  check_moments("low plate, both pads to the axis", ByAngle(low.record),
                {{5, 13.51}, {10, 27.48}, {20, 56.65}}, 0.01);
  const auto none = run_flexion(block(no_plate, 1, 0), {}, bench("", 20 * degree, 0), {});
  REQUIRE(none.record.complete);
  check_moments("no plate, both pads to the axis", ByAngle(none.record),
                {{5, 2.767}, {10, 5.58}, {20, 11.21}}, 0.01);
}

TEST_CASE("a strip under a roller on an arm is the elastica", "[external]")
{
  const double t = 0.5 * mm, radius = 8 * mm, arm = 80 * mm;
  const auto   lines = lines_through(
      {{-110 * mm, 4 * mm}, {-88 * mm, 0.5 * mm}, {-78 * mm, 0.5 * mm}, {-60 * mm, 3 * mm}, {0, 2 * mm}}, 1);
  const auto section = section_block(lines, {{"strip", elastic_plate(30e3 * MPa, 0.3), t, 1}}, 1 * mm, 1);
  // Built in at its end, free to become thinner there as a beam is.
  solver::SectionModel model(section, {}, [](const geometry::BoundaryFace &face) {
    const bool end = face.id == static_cast<int>(geometry::BoundaryId::side);
    return std::array{end, false};
  });
  for (unsigned node = 0; node < model.mesh->n_nodes(); ++node)
    if (std::hypot(model.mesh->nodes()[node][0], model.mesh->nodes()[node][1] - 0.5 * t) < 1e-9)
      model.equation.boundary.hold(model.mesh->dof(node, 1), 0);
  const auto contact = roller_contact(section, {}, {.penetration = 0.05});
  const auto roller = add_roller_on_arm(model, {"roller", solver::Meets::lower_face, radius, {-arm, -radius}},
                                        {0, 0}, contact.penalty);
  solver::SlowBench slow(model, roller.led(), 1e-4, {});
  roller.stand(slow.integrator.x);
  slow.integrator.start();
  const auto moment = [&] { return roller.reaction(slow.integrator.x, 1); };
  slow.on_step = [&] { return solver::SlowBench::Seen{moment() / arm}; };
  for (const double first : {0.002, 0.02, 0.2, 2.0})
    REQUIRE(slow.lead_to(first * degree, 1, 1).empty());
  for (const auto &[degrees, expected] :
       {std::pair{10, 2.25014}, {20, 4.43968}, {30, 6.46987}, {40, 8.24300}})
  {
    REQUIRE(slow.lead_to(degrees * degree, 1, 2).empty());
    // 0.5 %: contact steps from one point of the faces to the next.
    external_check({"elastica under a roller of 8 mm on an arm of 80 mm about its built-in end, closed form",
                    fmt::format("moment on a strip of 0.5 mm, per mm of width, at {} degrees", degrees),
                    expected, 1e3 * moment(), 5e-3, "N"});
  }
}

TEST_CASE("a flexion of foam that creeps loses what it turns into heat", "[section]")
{
  auto layers = no_plate;
  for (auto &layer : layers)
    if (auto *data = std::get_if<materials::FoamData>(&layer.material.data))
      data->relaxing = {{0.4, 0.3}};
  auto rig = bench("", 30 * degree);
  rig.window_from = 10 * degree, rig.window_to = 20 * degree, rig.secant = 25 * degree;
  const auto outcome = run_flexion(block(layers, 0.6), {}, rig, {.step_tolerance = 0.5});
  INFO(outcome.record.stop_reason);
  REQUIRE(outcome.record.complete);
  double heat = 0, left = 0, given = 0, most = 0;
  for (const auto &row : outcome.record.ledger)
    if (row.type == solver::EnergyKind::dissipated)
      heat += row.values.back();
    else if (row.type == solver::EnergyKind::stored)
      left += row.values.back();
    else if (row.type == solver::EnergyKind::exchanged)
      for (const double value : row.values)
        most = std::max(most, -value), given = -value;
  // What the arm gave and did not get back is heat, or still in the foam.
  CHECK(*outcome.loop_loss * most == Approx(heat + left).epsilon(0.03));
  CHECK(given == Approx(heat + left).epsilon(0.03));
  CHECK(*outcome.loop_loss > 0.05);
  CHECK(*outcome.loop_loss < 0.6);
}

TEST_CASE("a flexion stops where the plate has reached its limit and says so", "[section]")
{
  auto rig = bench("plate");
  rig.strain_limit = 0.004;
  const auto outcome = run_flexion(block(low_plate, 0.5), {}, rig, {});
  CHECK_FALSE(outcome.record.complete);
  CHECK(outcome.record.stop_reason.find("beyond its limit of 0.40 %") != std::string::npos);
  CHECK_FALSE(outcome.stiffness); // the window was not reached
  CHECK_FALSE(outcome.secant);
  CHECK(outcome.most_strain > 0.004);

  rig.setback = 11 * mm; // where no cells end
  CHECK_THROWS_AS(run_flexion(block(low_plate, 0.5), {}, rig, {}), std::invalid_argument);
}
