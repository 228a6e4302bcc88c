// SPDX-License-Identifier: Apache-2.0
// Rigid bodies that slide and tilt: derivatives of the motion, contact with them, their weight.
#include "solver/contributions/contact.h"
#include "solver/contributions/rigid_weight.h"
#include "solver/time/generalised_alpha.h"
#include "tests/unit/solver/slopes.h"

using namespace solemech;
using namespace solemech::tests;
using solver::Freedom;

namespace
{
constexpr double h = 1e-5, second_order = 1e-8; ///< step of differences [m, rad], and what they leave

template <std::size_t dim>
double apart(const std::array<double, dim> &a, const std::array<double, dim> &b)
{
  double sum = 0;
  for (std::size_t c = 0; c < dim; ++c)
    sum += (a[c] - b[c]) * (a[c] - b[c]);
  return std::sqrt(sum);
}

/// Rates and second derivatives of a point of the body against differences of its position.
template <int dim>
void check_motion(const std::vector<Freedom> &freedoms, const std::vector<double> &values,
                  const std::array<double, dim> &home)
{
  using Motion = solver::RigidMotion;
  const std::array<double, dim> reference = Motion(freedoms, values.data(), {}).position(home);
  const auto                    at = [&](std::size_t k, double way) {
    auto moved = values;
    moved[k] += way;
    return Motion(freedoms, moved.data(), reference);
  };
  const Motion here(freedoms, values.data(), reference);
  const auto   place = here.position(home);
  CHECK(apart(here.home(place), home) < 1e-14);
  for (std::size_t k = 0; k < freedoms.size(); ++k)
  {
    const auto up = at(k, h), down = at(k, -h);
    auto       slope = up.position(home);
    for (std::size_t c = 0; c < slope.size(); ++c)
      slope[c] = (slope[c] - down.position(home)[c]) / (2 * h);
    CHECK(apart(here.rate(k, place), slope) < second_order);
    for (std::size_t l = k; l < freedoms.size(); ++l)
    {
      auto bend = up.rate(l, up.position(home));
      for (std::size_t c = 0; c < bend.size(); ++c)
        bend[c] = (bend[c] - down.rate(l, down.position(home))[c]) / (2 * h);
      CHECK(apart(here.spin(k, here.rate(l, place)), bend) < second_order);
    }
  }
}

/// A body with all freedoms of a section that turns about a point beside and above the test body.
solver::RigidBody free_body(int first)
{
  return {{Freedom::along_x, Freedom::along_z, Freedom::about_y}, {1, 1, 1}, {0.3 * size, 1.5 * size}, first};
}

/// Nothing changes when body and mesh are turned and moved together: what all forces sum up to.
void check_balance(const solver::Discretisation &mesh, const solver::RigidBody &body, const Vector &x,
                   const Vector &force)
{
  double across = 0, upwards = 0, moment = 0, most = 0;
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
  {
    Point place = mesh.nodes()[node], push{};
    for (unsigned c = 0; c < 2; ++c)
      if (const int dof = mesh.dof(node, c); dof >= 0)
        place[c] += x[dof], push[c] = force[dof];
    across += push[0], upwards += push[1];
    const double dx = place[0] - body.reference.x - x[body.unknown(0)],
                 dz = place[1] - body.reference.z - x[body.unknown(1)];
    moment += dz * push[0] - dx * push[1];
    most = std::max({most, std::abs(push[0]), std::abs(push[1])});
  }
  CHECK(std::abs(across + force[body.unknown(0)]) < rounding * most);
  CHECK(std::abs(upwards + force[body.unknown(1)]) < rounding * most);
  CHECK(std::abs(moment + force[body.unknown(2)]) < rounding * most);
  CHECK(std::abs(force[body.unknown(2)]) > 1e-3 * size * most); // there is a moment to speak of
}
} // namespace

TEST_CASE("a rigid motion has the rates and second derivatives of its points", "[rigid]")
{
  check_motion<2>({Freedom::along_x, Freedom::along_z, Freedom::about_y}, {0.02, -0.03, 0.7}, {0.1, 0.05});
  check_motion<2>({Freedom::about_y}, {-2.1}, {0.1, 0.05});
  check_motion<3>({Freedom::along_x, Freedom::along_y, Freedom::along_z, Freedom::about_z, Freedom::about_y,
                   Freedom::about_x},
                  {0.02, -0.03, 0.01, 0.7, -0.4, 1.1}, {0.1, 0.05, -0.2});
  // A tilt brings what was on top forward: z to x.
  const double quarter = 0.5 * 3.14159265358979323846;
  CHECK(apart(solver::RigidMotion({Freedom::about_y}, &quarter, {}).turned(Point{0, 1}), Point{1, 0}) <
        1e-15);
}

TEST_CASE("a rigid body is refused that its inertia does not describe", "[rigid]")
{
  solver::RigidBody body{{Freedom::about_y, Freedom::along_x}, {1, 1}, {}, 0};
  CHECK_THROWS_AS(body.check(), std::invalid_argument); // ways come first
  body.freedoms = {Freedom::about_x, Freedom::about_y};
  CHECK_THROWS_AS(body.check(), std::invalid_argument); // its moments change with its attitude
  body.inertia = {0, 0};
  CHECK_NOTHROW(body.check()); // led, not free
  body.inertia = {0};
  CHECK_THROWS_AS(body.check(), std::invalid_argument);
}

TEST_CASE("contact with a body that slides and tilts: slopes, and forces and moments in balance", "[rigid]")
{
  Random                       random;
  const solver::Discretisation mesh{grid(even_lines(0, size, 3), even_lines(0, size, 2)),
                                    MeshSection::whole_plane, HeldFaces{.axis = {false, false}}};
  const auto                   body = free_body(mesh.n_unknowns());
  const auto                   top = faces(mesh, geometry::BoundaryId::top);
  const auto                   moved = [&](double sunk) {
    return random_state(mesh, random, {0.03 * size, -sunk * size, -0.12});
  };
  const auto check = [&](const solver::Contact &part, const Vector &x) {
    check_force(part, x);
    check_tangent(part, mesh, x, 3);
    check_balance(mesh, body, x, force_at(part, x));
    CHECK(part.state(x).force == Approx(-force_at(part, x)[body.unknown(1)]).epsilon(rounding));
  };
  SECTION("flat face and rounded edge")
  check({"body", mesh, top, geometry::FlatPuck(0.8 * size, 0.2 * size), {.penalty = 1e12}, body, size, false},
        moved(0.1));
  SECTION("ball")
  check({"body", mesh, top, geometry::Sphere(2 * size), {.penalty = 1e12}, body, size, false}, moved(0.1));
  SECTION("friction")
  {
    solver::Contact part("body", mesh, top, geometry::Sphere(2 * size),
                         {.penalty = 1e12, .friction = 0.5, .slip_length = 0.05 * size}, body, size, false);
    part.settle(moved(0.05));
    check(part, moved(0.06));
  }
  SECTION("what touched sticks")
  {
    solver::Contact part("body", mesh, top, geometry::Sphere(2 * size), {.penalty = 1e12, .stick = 1e9}, body,
                         size, false);
    part.accept(moved(0.05), 1);
    check(part, moved(0.06));
  }
  SECTION("on a support that moves")
  {
    solver::Contact part("body", mesh, top, geometry::Sphere(2 * size), {.penalty = 1e12}, body, size, false);
    part.stand_on({{Freedom::along_x, Freedom::along_z}, {1, 1}, {}, mesh.n_unknowns() + 3});
    Vector x(mesh.n_unknowns() + 5);
    x << moved(0.1), 0.01 * size, 0.02 * size;
    check_force(part, x);
    check_tangent(part, mesh, x, 5);
  }
}

TEST_CASE("a half section takes no body that slides or tilts", "[rigid]")
{
  const auto mesh = cube();
  CHECK_THROWS_AS(
    solver::Contact("body", mesh, {}, geometry::Plane(), {}, free_body(mesh.n_unknowns()), size, false),
    std::invalid_argument);
}

TEST_CASE("weight of a body that swings about a point: slopes", "[rigid]")
{
  const auto                mesh = cube();
  const auto                body = free_body(mesh.n_unknowns());
  const solver::RigidWeight weight("body", body, 20, {0.9 * size, -size});
  Vector                    x = Vector::Zero(mesh.n_unknowns() + 3);
  x.tail(3) << 0.1 * size, 0.2 * size, 0.8;
  check_tangent(weight, mesh, x, 3);
  solver::RigidWeight accepted = weight;
  accepted.accept(x, 1);
  std::vector<solver::EnergyEntry> entries;
  accepted.energies(entries);
  const double rise = body.motion(x).position(Point{0.9 * size, -size})[1] + size;
  CHECK(entries.front().value == Approx(20 * rise).epsilon(rounding));
}

TEST_CASE("what friction has settled in a step that failed does not stay", "[settle]")
{
  Random          random;
  const auto      mesh = cube();
  solver::Contact part("tup", mesh, faces(mesh, geometry::BoundaryId::top), geometry::Sphere(2 * size),
                       {.penalty = 1e12, .friction = 0.5, .slip_length = 0.05 * size},
                       solver::lifted_body(0, mesh.n_unknowns()), size, false);
  const auto      first = random_state(mesh, random, {-0.05 * size}),
             tried = random_state(mesh, random, {-0.06 * size});
  part.begin_step(first, 1);
  part.settle(first);
  part.accept(first, 1);
  const Vector before = force_at(part, tried);
  part.begin_step(first, 1);
  part.settle(tried);
  CHECK((force_at(part, tried) - before).norm() > 1e-3 * before.norm());
  part.begin_step(first, 0.5); // the next try
  CHECK(force_at(part, tried) == before);
}

namespace
{
/// Changes by as much in each pass, or settles after so many.
class Restless : public solver::Contribution
{
public:
  explicit Restless(int n_passes) : n_passes_(n_passes) {}
  void        begin_step(const Vector &, double) override { left_ = n_passes_; }
  bool        add(const Vector &, Vector &, solver::Tangent *) const override { return true; }
  double      settle(const Vector &) override { return left_-- > 0 ? 0.5 : 0.0; }
  void        accept(const Vector &, double) override { ++accepted; }
  std::string name() const override { return "restless"; }

  int accepted = 0;

private:
  int n_passes_, left_ = 0;
};
} // namespace

TEST_CASE("friction that does not settle fails the step", "[settle]")
{
  const int     n_passes = GENERATE(0, 3, 1000);
  StaticProblem problem{grid(even_lines(0, size, 1), even_lines(0, size, 1)), MeshSection::axisymmetric,
                        HeldFaces{.base = {true, true}}};
  problem.fill(solver::make_kernel(materials::IsotropicPlate{{1e6, 2e6}, {}}));
  auto  owned = std::make_unique<Restless>(n_passes);
  auto &restless = *owned;
  problem.equation.contributions.push_back(std::move(owned));
  solver::TimeIntegrator integrator(problem.equation, 1.0);
  integrator.start();
  const auto outcome = integrator.step(1, {.quasi_static = true});
  CHECK(outcome.advanced == (n_passes < 10));
  CHECK(restless.accepted == (n_passes < 10 ? 2 : 1)); // the start is one
  if (!outcome.advanced)
    CHECK(outcome.reason == "friction does not settle");
  CHECK(integrator.time == (outcome.advanced ? 1 : 0));
}
