// SPDX-License-Identifier: Apache-2.0
// Free faces that meet carry each other: force against energy, and stacks whose sides roll onto each other or
// onto the striker, which run through with a closed account.
#include "solver/contributions/self_contact.h"
#include "solver/resolution.h"
#include "solver/rigs/drop.h"
#include "solver/run.h"
#include "tests/support/catch.h"
#include "tests/support/foam_cases.h"
#include "tests/unit/solver/slopes.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double closed = 0.005; // of the drop energy: what the account may leave open

const solver::Resolution coarse{1.5, 1.0};
const solver::RunOptions plain{.progress = {}, .pictures = true};

solver::Layer layer(const std::string &name, double modulus, double exponent, double beta, double thickness)
{
  ColumnFoam foam;
  foam.network = {{modulus, exponent, beta}};
  solver::Layer layer;
  layer.name = name;
  layer.material = foam_material(foam, 100, name);
  layer.thickness = thickness;
  return layer;
}

/// Two soft layers with a thin stiff one between them, all of one radius, under a wide weight: squeezed
/// far enough, their sides bulge round the edge of the stiff one.
solver::Case sandwich()
{
  solver::Case input;
  input.label = "sandwich";
  input.layers = {layer("upper", 0.2e6, 2, 1, 12e-3), layer("sheet", 20e6, 2, 1, 1e-3),
                  layer("lower", 0.2e6, 2, 1, 12e-3)};
  input.plug.radius = 25e-3;
  return input;
}

solver::DropRig weight(double energy, double friction)
{
  solver::DropRig rig;
  rig.tup.diameter = 80e-3;
  rig.tup.edge_radius = 6e-3;
  rig.tup.friction = friction;
  rig.mass = 2;
  rig.height = energy / (rig.mass * 9.80665);
  return rig;
}

void check_closed(const solver::Result &result)
{
  CHECK(result.complete);
  CHECK(result.facts.ledger_numerical + result.facts.ledger_residual < closed);
}

bool holds_folds(const solver::Result &result)
{
  for (const auto &row : result.ledger)
    if (row.part == "stack" && row.kind == "contact")
      return *std::max_element(row.values.begin(), row.values.end()) > 0;
  return false;
}

/// The outer third of a cube's top turned over onto the inner third, and a little into it.
Vector turned_in(const solver::Discretisation &mesh)
{
  Vector x = Vector::Zero(mesh.n_unknowns());
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
  {
    const auto [r, z] = mesh.nodes()[node];
    if (z < size * (1 - 1e-9) || r < 0.6 * size)
      continue;
    x[mesh.dof(node, 0)] = size - 2 * r + 0.02 * r;
    x[mesh.dof(node, 1)] = -0.02 * size - 0.03 * (r - 0.6 * size);
  }
  return x;
}
} // namespace

TEST_CASE("faces folded onto each other push apart with the slope of their energy", "[self_contact]")
{
  for (const auto section : {MeshSection::axisymmetric, MeshSection::plane_strain})
  {
    const auto          mesh = cube(section);
    solver::SelfContact folds(mesh, 1e12);
    const Vector        x = turned_in(mesh);
    folds.begin_step(x, 1);
    check_force(folds, x);
    // What one face feels the other one gives: nothing is left over.
    const Vector force = force_at(folds, x);
    CHECK(std::abs(vertical_sum(mesh, force)) < rounding * force.cwiseAbs().sum());
    CHECK(force.cwiseAbs().sum() > 0);
  }
}

TEST_CASE("a body at rest has no folds, and faces deep inside each other are told", "[self_contact]")
{
  const auto          mesh = cube();
  solver::SelfContact folds(mesh, 1e12);
  const Vector        rest = Vector::Zero(mesh.n_unknowns());
  folds.begin_step(rest, 1);
  folds.accept(rest, 1);
  CHECK(force_at(folds, rest).isZero(0));
  CHECK(folds.lost().empty());

  Vector deep = turned_in(mesh);
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    if (const auto [r, z] = mesh.nodes()[node]; z > size * (1 - 1e-9) && r > 0.6 * size)
      deep[mesh.dof(node, 1)] -= 0.1 * size;
  folds.begin_step(deep, 1);
  folds.accept(deep, 1);
  INFO(folds.lost());
  CHECK(folds.lost().find("mm from the axis") != std::string::npos);
}

TEST_CASE("sides that bulge until they meet carry each other", "[self_contact]")
{
  const auto result = solver::run_rig(sandwich(), weight(15, 0), coarse, plain);
  check_closed(result);
  CHECK(result.find("compression_share")->value > 0.6);
  CHECK(holds_folds(result));
  double widest = 0;
  for (const auto &shot : result.picture.snapshots)
    for (const auto &place : shot.position)
      widest = std::max(widest, place[0]);
  CHECK(widest > 1.1 * sandwich().plug.radius);
}

TEST_CASE("a blow that squeezes folds flat ends in an answer or keeps what it has", "[self_contact]")
{
  try
  {
    check_closed(solver::run_rig(sandwich(), weight(40, 0), coarse, plain));
  }
  catch (const solver::RunFailed &failure)
  {
    INFO(failure.what());
    CHECK(std::string(failure.what()).find("ms after first touch") != std::string::npos);
    CHECK_FALSE(failure.partial.complete);
    CHECK(failure.partial.time.size() > 10);
    CHECK(failure.partial.picture.snapshots.size() > 2);
  }
}

TEST_CASE("a side that rolls onto the striker is carried by it", "[self_contact]")
{
  // The rough weight holds the rim of the top while the side bulges.
  check_closed(solver::run_rig(sandwich(), weight(10, 2), coarse, plain));
}

TEST_CASE("a small edge driven deep into soft foam slides round it and is no fold", "[self_contact]")
{
  solver::Case input;
  input.label = "deep";
  input.layers = {layer("foam", 0.2e6, 8, 0.8, 30e-3)};
  input.plug.radius = 25e-3;
  solver::DropRig rig;
  rig.tup.diameter = 20e-3;
  rig.tup.edge_radius = 6e-3;
  rig.mass = 1;
  rig.height = 10 / (rig.mass * 9.80665);
  const auto result = solver::run_rig(input, rig, coarse, plain);
  CHECK(result.find("compression_share")->value > 0.6);
  CHECK_FALSE(holds_folds(result));
}
