// SPDX-License-Identifier: Apache-2.0
// Three-point bend of a long section: a layered block against values of other codes and against the beam of
// layers that shear, a thin strip against the elastica between rollers.
#include "solver/rigs/bend.h"
#include "tests/external/check.h"
#include "tests/support/section_block.h"

#include "numerics/rising_root.h"
#include <fmt/format.h>

#include <cmath>
#include <map>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double  mm = 1e-3, MPa = 1e6;
const std::string other_codes = "layered block bent on rollers of 10 mm, 120 mm apart, per mm of width: "
                                "independent finite-element values computed with two separate codes";

std::vector<EvenLayer> layers(bool with_plate)
{
  const EvenLayer rubber{"rubber", elastic_rubber(1.2 * MPa, 600 * MPa), 3 * mm, 2},
    lower{"lower", elastic_foam(0.6 * MPa, 8, 0.125), 8 * mm, 3},
    thicker{"lower", elastic_foam(0.6 * MPa, 8, 0.125), 9.2 * mm, 3},
    plate{"plate", elastic_plate(30e3 * MPa, 0.3), 1.2 * mm, 1},
    upper{"upper", elastic_foam(0.4 * MPa, 6, 0.1), 10 * mm, 4};
  return with_plate ? std::vector{rubber, lower, plate, upper} : std::vector{rubber, thicker, upper};
}

/// Fine under the rollers.
solver::LongSection block(const std::vector<EvenLayer> &all, double level)
{
  const auto lines = lines_through({{-90 * mm, 5 * mm},
                                    {-60 * mm, 0.7 * mm},
                                    {-35 * mm, 4 * mm},
                                    {0, 0.7 * mm},
                                    {35 * mm, 4 * mm},
                                    {60 * mm, 0.7 * mm},
                                    {90 * mm, 5 * mm}},
                                   level);
  return section_block(lines, all, 1 * mm, level);
}

solver::BendRig bench(std::vector<double> travels, std::string plate)
{
  solver::BendRig rig;
  rig.span = 120 * mm, rig.support_radius = rig.nose_radius = 10 * mm, rig.preload = 0;
  rig.force_at = std::move(travels);
  rig.plate = std::move(plate);
  return rig;
}

solver::Resolution sinking(double penetration)
{
  solver::Resolution resolution;
  resolution.penetration = penetration;
  return resolution;
}

/// Value of a curve or of the network energy of a part where the nose has come to a travel.
struct Row
{
  const solver::Result &record;
  std::size_t           at = 0;

  Row(const solver::Result &of, double travel) : record(of)
  {
    const auto &way = curve("travel");
    while (at + 1 < way.size() && way[at] < travel - 1e-9)
      ++at;
    REQUIRE(way[at] == Approx(travel).epsilon(1e-9));
  }
  const std::vector<double> &curve(const std::string &name) const
  {
    for (const auto &one : record.curves)
      if (one.name == name)
        return one.values;
    throw std::logic_error("no curve " + name);
  }
  double operator()(const std::string &name) const { return curve(name)[at]; }
  double energy(const std::string &part) const
  {
    for (const auto &row : record.ledger)
      if (row.part == part && row.kind == "network")
        return row.values[at];
    throw std::logic_error("no energy of " + part);
  }
};
} // namespace

TEST_CASE("a layered block with a plate bends on three rollers", "[external]")
{
  const std::vector<double> travels{2 * mm, 5 * mm, 7.5 * mm, 10 * mm, 15 * mm};
  const auto outcome = run_bend(block(layers(true), 1), {}, bench(travels, "plate"), sinking(1.5e-4));
  INFO(outcome.record.stop_reason);
  REQUIRE(outcome.record.complete);
  struct Expected
  {
    double force, sink, most, least, rubber, lower, plate, upper;
  };
  const Expected expected[] = {{.2651, 1.481, .000694, -.000698, .0362, .0193, .1332, .0679},
                               {.7104, 3.834, .001835, -.001847, .2401, .1383, .9237, .4064},
                               {1.1060, 5.833, .002831, -.002850, .5522, .3363, 2.184, .9015},
                               {1.5154, 7.857, .003857, -.003883, .9933, .6382, 4.031, 1.583},
                               {2.3470, 11.970, .005967, -.006016, 2.254, 1.600, 9.590, 3.452}};
  // Of the values: force 0.08 %, sink 0.02 %, strain and energy 0.1 %, the last digit of those at 2 mm 0.5 %.
  constexpr double of_force = 3e-3, of_strain = 5e-3, of_energy = 5e-3, of_digits = 1e-2;
  for (std::size_t i = 0; i < travels.size(); ++i)
  {
    const Row         row(outcome.record, travels[i]);
    const auto       &e = expected[i];
    const std::string where = fmt::format(" at {:.1f} mm", travels[i] / mm);
    const double      energy = i == 0 ? of_digits : of_energy;
    external_check({other_codes, "force" + where, e.force, outcome.forces[i], of_force, "N"});
    external_check({other_codes, "sink of the lower face" + where, e.sink, row("sink") / mm, of_force, "mm"});
    external_check({other_codes, "greatest strain of the plate" + where, 100 * e.most,
                    100 * row("strain_most"), of_strain, "%"});
    external_check({other_codes, "least strain of the plate" + where, 100 * e.least,
                    100 * row("strain_least"), of_strain, "%"});
    for (const auto &[part, value] :
         {std::pair{"rubber", e.rubber}, {"lower", e.lower}, {"plate", e.plate}, {"upper", e.upper}})
      external_check({other_codes, fmt::format("energy of {}{}", part, where), value, row.energy(part) / 1e-3,
                      energy, "mJ"});
    CHECK(row("force_behind") + row("force_ahead") == Approx(row("force")).epsilon(1e-3));
    CHECK(std::abs(row("grip")) < 1e-4 * row("force")); // it is symmetric
  }
  // What the nose does is what the section stores.
  double open = 0, given = 0;
  for (const auto &row : outcome.record.ledger)
    (row.type == solver::EnergyKind::numerical ? open : given) += std::abs(row.values.back());
  CHECK(open < 5e-3 * 0.5 * given);
}

TEST_CASE("the same block without a plate", "[external]")
{
  const std::vector<double> travels{2 * mm, 5 * mm, 7.5 * mm, 10 * mm, 15 * mm};
  const auto outcome = run_bend(block(layers(false), 1), {}, bench(travels, ""), sinking(1.5e-4));
  INFO(outcome.record.stop_reason);
  REQUIRE(outcome.record.complete);
  constexpr double tolerance = 5e-3; // of the values 0.4 %
  const double force[] = {.0701, .1779, .2680, .3556, .5168}, sink[] = {1.818, 4.590, 6.906, 9.240, 13.942};
  for (std::size_t i = 0; i < travels.size(); ++i)
  {
    const std::string where = fmt::format(" at {:.1f} mm, foam in place of the plate", travels[i] / mm);
    external_check({other_codes, "force" + where, force[i], outcome.forces[i], tolerance, "N"});
    external_check({other_codes, "sink of the lower face" + where, sink[i],
                    Row(outcome.record, travels[i])("sink") / mm, tolerance, "mm"});
  }
}

namespace
{
/// Force over deflection of a beam of layers that shear, in plane strain, per width: L^3/(48 EI) + L/(4 S), S
/// from the flow of shear stress through the section.
double layered_beam(const std::vector<EvenLayer>                       &all,
                    const std::map<std::string, std::array<double, 2>> &moduli, double span)
{
  double tension = 0, first = 0, z = 0;
  for (const auto &layer : all)
  {
    const double stiff = moduli.at(layer.name)[0] * layer.thickness;
    tension += stiff, first += stiff * (z + 0.5 * layer.thickness);
    z += layer.thickness;
  }
  const double neutral = first / tension;
  double       bending = 0, flow = 0, shear = 0;
  z = 0;
  for (const auto &layer : all)
  {
    const auto [plane, G] = moduli.at(layer.name);
    constexpr int n = 2000; // midpoints
    const double  dz = layer.thickness / n;
    for (int i = 0; i < n; ++i, z += dz)
    {
      const double arm = z + 0.5 * dz - neutral;
      bending += plane * dz * arm * arm;
      shear += std::pow(flow + 0.5 * plane * arm * dz, 2) / G * dz;
      flow += plane * arm * dz;
    }
  }
  const double S = bending * bending / shear;
  return 1 / (std::pow(span, 3) / (48 * bending) + span / (4 * S));
}
} // namespace

TEST_CASE("a layered block under a small load is a beam of layers that shear", "[external]")
{
  // Foam of shear modulus mu and exponent beta: nu = beta/(1 + 2 beta); plane-strain modulus E/(1 - nu^2).
  const auto foam = [](double mu, double beta) {
    const double nu = beta / (1 + 2 * beta);
    return std::array{2 * mu * (1 + nu) / (1 - nu * nu), mu};
  };
  const std::map<std::string, std::array<double, 2>> moduli{{"rubber", {4 * 1.2 * MPa, 1.2 * MPa}},
                                                            {"lower", foam(0.6 * MPa, 0.125)},
                                                            {"plate", {30e3 * MPa / 0.91, 30e3 * MPa / 2.6}},
                                                            {"upper", foam(0.4 * MPa, 0.1)}};
  const auto outcome = run_bend(block(layers(true), 1), {}, bench({2 * mm}, "plate"), sinking(1.5e-4));
  REQUIRE(outcome.record.complete);
  // 1 %: what the rollers press in locally is no part of the beam.
  external_check({"beam of layers that shear, L^3/(48 EI) + L/(4 S), S from the shear flow (handbook)",
                  "force over sink of the lower face at 2 mm, per mm of width",
                  layered_beam(layers(true), moduli, 120 * mm) * 1 * mm / 1e3,
                  outcome.forces[0] / Row(outcome.record, 2 * mm)("sink") / 1e3, 0.01, "N/mm"});
}

namespace
{
/// A thin strip that bends and does not stretch, between two frictionless rollers. Backwards from a roller
/// the curvature k follows k^2 = 2 n sin(turn) with n = N/EI of the force N normal to the strip there.
class StripOnRollers
{
public:
  /// @param reach  from the centre of a roller to the middle of the strip [m]
  StripOnRollers(double span, double reach) : span_(span), reach_(reach) {}

  /// Force times span^2 over EI at a travel.
  double force(double travel) const
  {
    const double end =
      numerics::rising_root([&](double slope) { return at(slope).travel - travel; }, 1e-6, 1.2);
    return at(end).force * span_ * span_;
  }

private:
  double span_, reach_;

  struct State
  {
    double travel, force; ///< force over EI
  };
  State at(double slope) const
  {
    // Integral of sqrt(sin) from 0 to the slope; with t = s^2 the root is smooth.
    constexpr int n = 200;
    double        lifted = 0;
    for (int i = 0; i < n; ++i)
    {
      const double s = (i + 0.5) / n, t = slope * s * s;
      lifted += std::sqrt(std::sin(t)) * 2 * slope * s / n;
    }
    const double along = std::sqrt(2 * std::sin(slope)), across = lifted / std::sqrt(2.0);
    const double half = along * std::cos(slope) + across * std::sin(slope),
                 sag = along * std::sin(slope) - across * std::cos(slope),
                 length = (0.5 * span_ - reach_ * std::sin(slope)) / half; // 1/sqrt(n)
    return {sag * length + reach_ * (1 - std::cos(slope)), 2 * std::cos(slope) / (length * length)};
  }
};
} // namespace

TEST_CASE("a thin strip between rollers is the elastica", "[external]")
{
  // The formula by itself, for point supports.
  const StripOnRollers points(1, 0);
  for (const auto &[travel, force] :
       {std::pair{0.01, .479507}, {0.05, 2.339308}, {0.10, 4.337667}, {0.15, 5.756741}, {0.20, 6.511909}})
    external_check({"elastica on two frictionless points, closed form by elliptic integrals",
                    fmt::format("F L^2/(EI) at a sag of {:.2f} spans, the formula of this test", travel),
                    force, points.force(travel), 1e-4});

  const double t = 0.5 * mm, span = 120 * mm, radius = 5 * mm, E = 30e3 * MPa / 0.91;
  const auto   lines = lines_through({{-80 * mm, 4 * mm},
                                      {-61 * mm, 0.5 * mm},
                                      {-55 * mm, 0.5 * mm},
                                      {-30 * mm, 4 * mm},
                                      {-2 * mm, 0.5 * mm},
                                      {0, 0.5 * mm},
                                      {2 * mm, 0.5 * mm},
                                      {30 * mm, 4 * mm},
                                      {55 * mm, 0.5 * mm},
                                      {61 * mm, 0.5 * mm},
                                      {80 * mm, 4 * mm}},
                                     1);
  const auto   section = section_block(lines, {{"strip", elastic_plate(30e3 * MPa, 0.3), t, 1}}, 1 * mm, 1);
  auto         rig = bench({0.02 * span, 0.05 * span, 0.1 * span}, "strip");
  rig.support_radius = rig.nose_radius = radius;
  const auto outcome = run_bend(section, {}, rig, sinking(0.05));
  INFO(outcome.record.stop_reason);
  REQUIRE(outcome.record.complete);
  const StripOnRollers rollers(span, radius + 0.5 * t);
  for (std::size_t i = 0; i < rig.force_at.size(); ++i)
    // 0.5 %: contact steps from one point of the faces to the next.
    external_check({"elastica between frictionless rollers, closed form (formula of this test)",
                    fmt::format("force on a strip of 0.5 mm, span 120 mm, rollers of 5 mm, at {:.1f} mm",
                                rig.force_at[i] / mm),
                    rollers.force(rig.force_at[i]) / (span * span) * E * std::pow(t, 3) / 12 * 1 * mm,
                    outcome.forces[i], 5e-3, "N"});
}

TEST_CASE("parts that share the width of a section add up", "[section]")
{
  // Half the width of each of two equal parts in the same cells is one part; so is a preload read back.
  auto whole = block(layers(true), 0.5);
  auto rig = bench({3 * mm, 6 * mm}, "plate");
  rig.preload = 0.05, rig.secant_from = 3 * mm, rig.secant_to = 6 * mm;
  const auto one = run_bend(whole, {}, rig, sinking(4e-4));
  auto       shared = whole;
  for (auto &width : shared.parts[1].widths)
    width *= 0.5;
  shared.parts.push_back(shared.parts[1]);
  shared.parts.back().name = "beside";
  const auto two = run_bend(shared, {}, rig, sinking(4e-4));
  REQUIRE(one.record.complete);
  REQUIRE(two.record.complete);
  constexpr double balance = 2e-3; // of each step
  for (std::size_t i = 0; i < rig.force_at.size(); ++i)
    CHECK(two.forces[i] == Approx(one.forces[i]).epsilon(balance));
  CHECK(one.zero > 0);
  CHECK(*one.stiffness == Approx((one.forces[1] - one.forces[0]) / (3 * mm)));
  CHECK(*one.indentation == Approx(0.23).margin(0.04)); // a fifth to a quarter of the travel, other codes
  rig.plate = "shank";
  CHECK_THROWS_AS(run_bend(whole, {}, rig, sinking(4e-4)), std::invalid_argument);
}
