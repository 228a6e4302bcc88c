// SPDX-License-Identifier: Apache-2.0
#include "tests/support/twin_drop.h"

#include "solver/in_parallel.h"
#include "solver/run.h"
#include "tools/language/library.h"

namespace solemech::tests
{
namespace
{
solver::Case pad_case(const materials::Material &foam, const std::vector<double> &p, double accuracy)
{
  auto  material = foam;
  auto &data = std::get<materials::FoamData>(material.data);
  for (auto &term : data.network)
    term.shear_modulus *= p[0];
  for (auto &branch : data.relaxing)
    branch.share *= p[1];
  for (auto &branch : data.slipping)
    branch.share *= p[1];
  data.relative_density *= p[2];
  material.density *= p[2];

  solver::Case  setup;
  solver::Layer layer;
  layer.name = "pad";
  layer.material = material;
  layer.thickness = 22e-3;
  setup.label = "twin";
  setup.layers = {layer};
  setup.plug.radius = 30e-3;
  setup.accuracy = accuracy;
  solver::DropRig rig;
  rig.mass = 1.2;
  rig.height = 0.4;
  rig.tup.diameter = 40e-3;
  rig.tup.edge_radius = 3e-3;
  setup.rig = rig;
  return setup;
}

/// Empty when the run stopped early.
std::vector<double> readings_of(const solver::Case &setup)
{
  solver::RunOptions options;
  options.pictures = false;
  options.estimate_error = false;
  try
  {
    const auto          result = solver::run(setup, options);
    std::vector<double> readings;
    for (const char *name : {"rebound_height", "peak_force", "greatest_compression", "contact_time"})
      readings.push_back(result.find(name)->value);
    return readings;
  }
  catch (const solver::RunFailed &)
  {
    return {};
  }
}
} // namespace

TwinBench drop_twin_bench(double accuracy)
{
  const auto          library = materials::Library::load(SOLEMECH_SOURCE "/materials/library");
  materials::Material foam;
  for (const auto &material : library.materials())
    if (material.name == "eva-soft")
      foam = material;
  TwinBench bench;
  bench.parameters = {
    {"stiffness", 1, 0.3, 0.3, 3}, {"loss", 1, 0.35, 0.25, 3}, {"density", 1, 0.1, 0.6, 1.6}};
  bench.doubts = {5e-3, 50, 0.35e-3, 0.35e-3}; // 4 % of about 1.2 kN, 8.5 mm and 9 ms
  bench.predict = [foam, accuracy](const std::vector<std::vector<double>> &sets) {
    std::vector<std::vector<double>> rows(sets.size());
    solver::in_parallel(sets.size(),
                        [&](std::size_t i) { rows[i] = readings_of(pad_case(foam, sets[i], accuracy)); });
    return rows;
  };
  return bench;
}
} // namespace solemech::tests
