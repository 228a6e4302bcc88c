// SPDX-License-Identifier: Apache-2.0
#include "solver/results/snapshots.h"

#include <algorithm>

namespace solemech::solver
{
Snapshots::Snapshots(const Discretisation &mesh, std::vector<SolidBody *> bodies, ShownStriker striker,
                     double interval)
  : mesh_(mesh), bodies_(std::move(bodies)), striker_(std::move(striker)), interval_(interval)
{
  picture_.part_names = mesh.mesh().part_names;
  for (const auto &cell : mesh.cells())
  {
    auto &numbers = picture_.cells.emplace_back();
    std::copy(cell.begin(), cell.end(), numbers.begin());
  }
  for (const auto &cell : mesh.mesh().cells)
    picture_.cell_part.push_back(cell.part);
  picture_.tup_outline = striker_.outline;
}

void Snapshots::look(const TimeIntegrator &state, double time, bool is_asked_for)
{
  if (interval_ > 0 && (is_asked_for || time - last_ >= interval_))
    take(state, time);
}

void Snapshots::take(const TimeIntegrator &state, double time)
{
  last_ = time;
  Snapshot shot;
  shot.time = time;
  shot.tup_position = striker_.level + state.x[striker_.height];
  add_shape(state.x, shot);
  add_fields(state.x, shot);
  picture_.snapshots.push_back(std::move(shot));
}

void Snapshots::add_shape(const Vector &x, Snapshot &shot) const
{
  for (unsigned node = 0; node < mesh_.n_nodes(); ++node)
  {
    Point u{};
    for (unsigned c = 0; c < 2; ++c)
      if (const int dof = mesh_.dof(node, c); dof >= 0)
        u[c] = x[dof];
    shot.displacement.push_back(u);
    shot.position.push_back({mesh_.nodes()[node][0] + u[0], mesh_.nodes()[node][1] + u[1]});
  }
}

void Snapshots::add_fields(const Vector &x, Snapshot &shot) const
{
  const std::size_t n = 4 * mesh_.cells().size();
  for (auto *field : {&shot.vertical_stress, &shot.mean_stress, &shot.shear_stress, &shot.vertical_stretch,
                      &shot.energy_density, &shot.dissipated_density})
    field->resize(n);
  // The integration point nearest to a corner speaks for it.
  static constexpr std::array<unsigned, 4> corner_point{0, 2, 6, 8};
  for (const auto *body : bodies_)
  {
    const auto  fields = body->fields(x);
    std::size_t number = 0;
    for (const auto &batch : body->group().batches)
      for (unsigned lane = 0; lane < batch.n_elements; ++lane, ++number)
        for (unsigned corner = 0; corner < 4; ++corner)
        {
          const auto &point = fields[number][corner_point[corner]];
          const auto  place = 4 * batch.cell[lane] + corner;
          shot.vertical_stress[place] = point.vertical_stress;
          shot.mean_stress[place] = (point.vertical_stress + point.radial_stress + point.hoop_stress) / 3;
          shot.shear_stress[place] = point.shear_stress;
          shot.vertical_stretch[place] = point.vertical_stretch;
          shot.energy_density[place] = point.energy_density;
          shot.dissipated_density[place] = point.dissipated_density;
        }
  }
}
} // namespace solemech::solver
