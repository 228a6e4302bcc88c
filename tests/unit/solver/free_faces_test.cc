// SPDX-License-Identifier: Apache-2.0
// Runs in which free faces meet stop and say where; deep but unfolded ones do not. The prepared cases are
// held to run through by their own tests.
#include "solver/free_faces.h"
#include "solver/rigs/drop.h"
#include "solver/run.h"
#include "tests/support/catch.h"
#include "tests/support/foam_cases.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
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
} // namespace

TEST_CASE("sides that bulge until they meet stop the run, which says where and keeps what it has",
          "[free_faces]")
{
  const auto input = sandwich();
  CHECK_NOTHROW(solver::run_drop(input, weight(2, 0), coarse, plain));
  try
  {
    solver::run_drop(input, weight(40, 0), coarse, plain);
    FAIL("the run went on");
  }
  catch (const solver::RunFailed &failure)
  {
    const std::string message = failure.what();
    INFO(message);
    CHECK(message.find("ms after first touch") != std::string::npos);
    CHECK(message.find("meets the side of lower") != std::string::npos);
    CHECK(message.find("mm from the axis") != std::string::npos);
    CHECK(message.find("Faces that touch each other are not in the model") != std::string::npos);
    CHECK_FALSE(failure.partial.complete);
    CHECK(failure.partial.stop_reason == message);
    CHECK(failure.partial.time.size() > 10);
    REQUIRE(failure.partial.picture.snapshots.size() > 2);
    // By then the sides stand out; while they did not yet meet nothing lay outside the plug's bulge.
    const auto &last = failure.partial.picture.snapshots.back();
    double      widest = 0;
    for (const auto &place : last.position)
      widest = std::max(widest, place[0]);
    CHECK(widest > 1.1 * input.plug.radius);
  }
}

TEST_CASE("a side that rolls onto the striker stops the run", "[free_faces]")
{
  // The rough weight holds the rim of the top while the side bulges.
  try
  {
    solver::run_drop(sandwich(), weight(10, 2), coarse, plain);
    FAIL("the run went on");
  }
  catch (const solver::RunFailed &failure)
  {
    INFO(failure.what());
    CHECK(std::string(failure.what()).find("the side of upper meets the striker") != std::string::npos);
  }
}

TEST_CASE("a small edge driven deep into soft foam slides round it and is no fold", "[free_faces]")
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
  const auto result = solver::run_drop(input, rig, coarse, plain);
  CHECK(result.find("compression_share")->value > 0.6);
}

TEST_CASE("a column at rest has no meeting faces, one whose top is turned in has", "[free_faces]")
{
  const auto               input = b1_stack(false);
  const solver::StackModel model(input, b1_tup(), 1.0, coarse);
  const solver::FreeFaces  faces(*model.mesh, *model.tup_contact);
  solver::Vector           x = solver::Vector::Zero(model.equation.size());
  x[model.tup_unknown()] = 1.0; // the weight is far away
  CHECK_FALSE(faces.meeting(x));
  // Turn the outer fifth of the top over: radii beyond 0.8 R are mirrored there and pass below the rest.
  const double pivot = 0.8 * input.plug.radius;
  for (unsigned node = 0; node < model.mesh->n_nodes(); ++node)
  {
    const auto [r, z] = model.mesh->nodes()[node];
    if (z < input.layers[0].thickness * (1 - 1e-9) || r <= pivot)
      continue;
    x[model.mesh->dof(node, 0)] = 2 * (pivot - r);
    x[model.mesh->dof(node, 1)] = r - pivot; // up and inwards, then down through the top
    if (r > 0.95 * input.plug.radius)
      x[model.mesh->dof(node, 1)] = -2e-3;
  }
  const auto met = faces.meeting(x);
  REQUIRE(met);
  CHECK(met->where.find("the top of foam") != std::string::npos);
  CHECK(met->place[0] < pivot);
}
