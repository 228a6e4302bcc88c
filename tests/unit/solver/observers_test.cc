// SPDX-License-Identifier: Apache-2.0
// What looks at accepted steps: who objects, where a body is deepest, curves that are taken back.
#include "solver/bottoming.h"
#include "solver/contributions/support.h"
#include "solver/results/curves.h"
#include "solver/results/energy_rows.h"
#include "tests/unit/solver/slopes.h"

#include <algorithm>
#include <numbers>

using namespace solemech;
using namespace solemech::tests;

namespace
{
/// Counts what it sees, and objects from a step on.
class Counter : public solver::Observer
{
public:
  explicit Counter(int last = 1000) : last_(last) {}
  std::optional<solver::Objection> look(const solver::AcceptedStep &) override
  {
    return ++seen < last_ ? std::nullopt : std::optional(solver::Objection{"enough", "Try less"});
  }
  int seen = 0;

private:
  int last_;
};

/// Stores energy at the start and in every other step.
class NowAndThen : public solver::Contribution
{
public:
  static constexpr double energy = 3; ///< [J]

  bool add(const Vector &, Vector &, solver::Tangent *) const override { return true; }
  void accept(const Vector &, double) override { is_there_ = !is_there_; }
  void energies(std::vector<solver::EnergyEntry> &entries) const override
  {
    if (is_there_)
      entries.push_back({"spring", "now and then", solver::EnergyKind::stored, energy});
  }
  std::string name() const override { return "now and then"; }

private:
  bool is_there_ = false;
};

/// A mass on a spring beside a block that it never meets: an equation wants a mesh.
struct MassOnSpring : solver::ModelOf<solver::Discretisation>
{
  static constexpr double mass = 2, stiffness = 800;
  solver::RigidBody       body;

  MassOnSpring()
  {
    stand_on(std::make_unique<solver::Discretisation>(grid({0, size}, {0, size}), MeshSection::whole_plane,
                                                      HeldFaces{.base = {true, true}}));
    auto kernel = solver::make_kernel(materials::IsotropicPlate{{1e6, 2e6}, {}});
    auto group = mesh->group(0, kernel->n_branches(), mesh->nodes(), {});
    mesh->add_mass(group, 100, equation.mass.data());
    equation.contribute<solver::SolidBody>(std::move(group), std::move(kernel));
    body = equation.add(solver::lifted_body(mass));
    equation.contribute<solver::Support>(body.first, stiffness, 0.0);
  }

  /// Vertical unknown of the block's top, over the middle of its base.
  int top() const
  {
    const auto &nodes = mesh->nodes();
    const auto  found = std::ranges::find(nodes, Point{0, size});
    return mesh->dof(static_cast<unsigned>(found - nodes.begin()), 1);
  }
};

solver::LayerThickness whole(const solver::Discretisation &mesh)
{
  solver::Layer layer;
  layer.name = "block", layer.thickness = size;
  return {mesh, {layer}};
}
} // namespace

TEST_CASE("observers look in their order until one objects", "[observers]")
{
  MassOnSpring           model;
  solver::TimeIntegrator integrator(model.equation, 1.0);
  integrator.start();
  Counter first, second(2), third;
  model.observers = {&first, &second, &third};
  CHECK_FALSE(model.show({integrator, 0}));
  const auto objection = model.show({integrator, 1});
  REQUIRE(objection);
  CHECK(objection->reason == "enough");
  CHECK(first.seen == 2);
  CHECK(third.seen == 1); // it never saw the step that is refused
}

TEST_CASE("the crest of a blow lies within a step", "[observers]")
{
  // A mass on a spring: depth v sqrt(m/k) after a quarter of the period (handbook).
  constexpr double       speed = 1.5;
  const double           root = std::sqrt(MassOnSpring::mass / MassOnSpring::stiffness);
  MassOnSpring           model;
  solver::CrestWatch     crest(whole(*model.mesh), model.body.first);
  solver::TimeIntegrator integrator(model.equation, 1.0);
  integrator.v[model.body.first] = -speed;
  integrator.start();
  model.observers = {&crest};
  REQUIRE_FALSE(model.show({integrator, 0}));
  constexpr int n_steps = 101; // of half a period: none meets the crest
  for (int i = 1; i <= n_steps; ++i)
  {
    REQUIRE(integrator.step(std::numbers::pi * root / n_steps, {.force_scale = 100}).advanced);
    REQUIRE_FALSE(model.show({integrator, integrator.time}));
  }
  constexpr double second_order = 2e-4; // (pi/101)^2/12 of the period, and what iterations leave
  CHECK(crest.way() == Approx(speed * root).epsilon(second_order));
  CHECK(crest.time() == Approx(0.5 * std::numbers::pi * root).epsilon(second_order));
  CHECK(crest.thickness().front() == Approx(size).epsilon(rounding)); // it is not touched
}

TEST_CASE("without inertia the crest is the step that went farthest", "[observers]")
{
  MassOnSpring           model;
  solver::CrestWatch     crest(whole(*model.mesh), model.body.first);
  solver::TimeIntegrator integrator(model.equation, 1.0);
  model.equation.boundary.lead(model.body.first, [](double time) { return -time * (3 - time); });
  model.equation.boundary.lead(model.top(), [](double time) { return -1e-3 * size * time; });
  integrator.start();
  model.observers = {&crest};
  for (int i = 0; i < 3; ++i)
  {
    REQUIRE(integrator.step(1, {.force_scale = 100, .quasi_static = true}).advanced);
    REQUIRE_FALSE(model.show({integrator, 10 + integrator.time}));
  }
  CHECK(crest.way() == 2);
  CHECK(crest.time() == 11); // on the clock of the rig; the next one is not farther
  CHECK(crest.thickness().front() == Approx(size * (1 - 1e-3)).epsilon(rounding));
}

TEST_CASE("an energy that is not there in a step counts as nothing in it", "[observers]")
{
  MassOnSpring model;
  model.equation.contribute<NowAndThen>();
  solver::TimeIntegrator integrator(model.equation, 1.0);
  integrator.start();
  solver::EnergyRows rows({});
  rows.open(integrator);
  rows.record(integrator);
  for (int i = 0; i < 4; ++i)
  {
    REQUIRE(integrator.step(1e-3, {.force_scale = 100}).advanced);
    rows.record(integrator);
  }
  const auto ledger = rows.moved();
  const auto found = std::ranges::find(ledger, "now and then", &solver::LedgerRow::kind);
  REQUIRE(found != ledger.end());
  constexpr double energy = NowAndThen::energy; // it is there at the opening, from which energies count
  CHECK(found->values == std::vector<double>{0, -energy, 0, -energy, 0});
}

TEST_CASE("a state is taken back along the last step, what is felt is not", "[observers]")
{
  solver::Curves curves;
  for (const double value : {1.0, 5.0})
    curves.push("way", "m", "", value), curves.push_felt("force", "N", "", value);
  curves.take_back(0.25);
  CHECK(curves["way"] == std::vector{1.0, 2.0});
  CHECK(curves["force"] == std::vector{1.0, 5.0});
  CHECK_THROWS_AS(curves["speed"], std::logic_error);
}
