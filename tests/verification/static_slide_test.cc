// SPDX-License-Identifier: Apache-2.0
// A lug pressed and slid on a flat court: Coulomb's law and Archard's integral exactly, balance of forces,
// bounds of its shear stiffness, lift of the trailing edge, convergence in mesh and elastic slip, ends that
// are not steady.
#include "solver/slide_process.h"
#include "tests/external/check.h"
#include "tests/support/rubber.h"

#include <algorithm>
#include <cmath>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double mm = 1e-3;

solver::LugCell lug(double width, double height, double youngs_modulus = 3.6e6)
{
  return {.outline = {.width = width,
                      .height = height,
                      .spacing = 2 * width,
                      .skin = 2 * mm,
                      .draft = 0.05,
                      .edge_radius = 0.25 * mm,
                      .fillet = 0.5 * mm,
                      .worn_face = {}},
          .lug = rubber(youngs_modulus),
          .skin = rubber(youngs_modulus)};
}

struct Slid
{
  solver::SlideOutcome outcome;
  double               numerical = 0, residual = 0, put_in = 0; ///< [J/m]
  double               width = 0;
};

Slid run(const solver::LugCell &cell, double mu, const solver::SlideLoad &load, double mesh_level = 0.7,
         double slip_length = 1e-5)
{
  solver::LugModel model(cell, solver::Case(), mesh_level, slip_length);
  model.court->set_shear_law([mu](double p) { return solver::ShearLimit{mu * p, mu}; });
  auto integrator = solver::sliding_integrator(model);
  Slid slid{slide(model, integrator, load), 0, 0, 0, model.nominal_width()};
  slid.numerical = integrator.numerical_energy(), slid.residual = integrator.residual_energy();
  for (const auto &entry : model.equation.energies())
    if (entry.kind == "drive")
      slid.put_in = -entry.value;
  return slid;
}
} // namespace

TEST_CASE("a steady slide obeys Coulomb's law and Archard's integral", "[slide]")
{
  const double p = 0.2e6;
  const auto   slid = run(lug(4 * mm, 3 * mm), 0.5, {.pressure = p, .speed = 0.5, .distance = 12 * mm});
  REQUIRE(slid.outcome.end == solver::SlideEnd::steady);
  external_check(
    {.source = "law put in: the grip of a steady slide is the coefficient given (no outside number)",
     .what = "grip of a sliding lug",
     .expected = 0.5,
     .obtained = slid.outcome.grip,
     .relative_tolerance = 1e-3,
     .unit = "-"});
  // In a steady slide every point of the face goes the way of the court, so the surface integral of p |v| dt
  // is the normal force times the way, whatever the pressure looks like.
  double sum = 0, work = 0;
  for (const auto &point : slid.outcome.surface)
    sum += point.pressure_slid * point.length, work += point.work * point.length;
  external_check(
    {.source =
       "identity of a steady slide: pressure times slip over the face is force times way (no outside number)",
     .what = "integral of pressure over slid way",
     .expected = p * slid.width * slid.outcome.steady_way,
     .obtained = sum,
     .relative_tolerance = 0.01,
     .unit = "N"});
  CHECK(work == Approx(0.5 * sum).epsilon(1e-6));
  CHECK(std::abs(slid.numerical) + std::abs(slid.residual) < 0.005 * slid.put_in);
}

TEST_CASE("without sliding there is no wear and no work of friction", "[slide]")
{
  const auto slid = run(lug(4 * mm, 3 * mm), 5.0, {.pressure = 0.05e6, .speed = 0.5, .distance = 0.02 * mm});
  for (const auto &point : slid.outcome.surface)
    CHECK(point.slid < 1e-7);
  CHECK(slid.outcome.grip > 0);
}

TEST_CASE("the shear stiffness of a lug lies between the bounds of the energy principles", "[slide]")
{
  // Ends bonded to rigid plates. Above: the field of simple shear (least potential energy), G A/h. Below: the
  // stresses of a beam with parabolic shear (least complementary energy), h^3/(12 E' I) + h/(5/6 G A) with E'
  // = E/(1 - nu^2).
  const double w = 6 * mm, h = 4 * mm, E = 4e6, G = E / 3, plane = E / 0.75;
  auto         cell = lug(w, h, E);
  cell.outline.draft = 0, cell.outline.edge_radius = cell.outline.fillet = 0.06 * mm,
  cell.outline.skin = 1 * mm;
  cell.skin = rubber(1000 * E, 1e12);
  double last = 0;
  for (const double level : {0.5, 1.0})
  {
    const auto slid =
      run(cell, 20, {.pressure = 0.05e6, .speed = 1, .distance = 0.02 * mm, .to_the_end = true}, level, 1e-7);
    const auto  &moment = slid.outcome.moments.back();
    const double stiffness = moment.shear * w / moment.deflection;
    CHECK(stiffness < G * w / h);
    CHECK(stiffness > 1 / (h * h * h / (plane * w * w * w) + h / (5.0 / 6 * G * w)));
    if (last > 0)
      CHECK(stiffness == Approx(last).epsilon(0.003));
    last = stiffness;
  }
}

TEST_CASE("the trailing edge lifts once friction times height outgrows a third of the length", "[slide]")
{
  // Block statics with a pressure that is linear along the face and a face kept parallel; elastic blocks
  // differ by 10 to 30 %, so half and one and a half of the limit are taken.
  const double h = 3 * mm, mu = 0.5, p = 0.02e6;
  const auto   lifted = [&](double width) {
    const auto slid = run(lug(width, h), mu, {.pressure = p, .speed = 0.5, .distance = 4 * h});
    REQUIRE(slid.outcome.end == solver::SlideEnd::steady);
    // The court moves to the right, so the right end of the face trails.
    double last = -1;
    for (const auto &point : slid.outcome.surface)
      if (point.pressure > 0)
        last = std::max(last, point.at_rest[0] / (0.5 * width - 0.25 * mm)); // of the flat part
    return 1 - last;
  };
  CHECK(lifted(9 * mm) < 0.06); // mu h/L = 1/6: contact up to the edge's arc
  CHECK(lifted(3 * mm) > 0.2);  // 1/2: the block lifts over half of its trailing side
}

TEST_CASE("pressure at the edge, contact and offset converge with the mesh", "[slide]")
{
  std::vector<double> peak, share, offset;
  for (const double level : {0.5, 1.0, 2.0})
  {
    const auto slid =
      run(lug(4 * mm, 3 * mm), 0.5, {.pressure = 0.2e6, .speed = 0.5, .distance = 9 * mm}, level);
    REQUIRE(slid.outcome.end == solver::SlideEnd::steady);
    peak.push_back(solver::windowed_peak(slid.outcome.surface, 0.25 * mm));
    share.push_back(slid.outcome.moments.back().contact_share);
    offset.push_back(slid.outcome.moments.back().offset);
  }
  CHECK(peak[1] == Approx(peak[2]).epsilon(0.02));
  CHECK(share[1] == Approx(share[2]).epsilon(0.03));
  CHECK(offset[1] == Approx(offset[2]).epsilon(0.005));
  CHECK(std::abs(peak[1] - peak[2]) < std::abs(peak[0] - peak[2]));
}

TEST_CASE("what is not a steady slide says so", "[slide]")
{
  const auto short_way =
    run(lug(4 * mm, 3 * mm), 0.5, {.pressure = 0.2e6, .speed = 0.5, .distance = 0.1 * mm});
  CHECK(short_way.outcome.end == solver::SlideEnd::way_is_over);
  CHECK_THAT(short_way.outcome.reason, Catch::Contains("still changes after 0.10 mm"));
  auto thin = lug(1 * mm, 4 * mm);
  thin.outline.spacing = 6 * mm;
  const auto slender = run(thin, 1.0, {.pressure = 0.3e6, .speed = 0.5, .distance = 12 * mm}, 0.5);
  CHECK(slender.outcome.end != solver::SlideEnd::steady);
  CHECK(!slender.outcome.reason.empty());
}
