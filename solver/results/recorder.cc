// SPDX-License-Identifier: Apache-2.0
#include "solver/results/recorder.h"

#include "solver/results/catalogue.h"
#include "solver/rig_parts.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string_view>

namespace solemech::solver
{
void add_losses(Result &result)
{
  std::map<std::string, double> lost;
  for (const auto &row : result.ledger)
    if (row.type == EnergyKind::dissipated && row.part != rig_part::guide)
      lost[row.part] += row.values.back();
  for (const auto &[part, energy] : lost)
    add_reading(result, catalogue.lost_in_part, part, energy,
                "turned into heat in this part until the end of contact");
}

Recorder::Recorder(const StackModel &model, const TimeIntegrator &integrator, double picture_interval)
  : model_(model), integrator_(integrator), picture_interval_(picture_interval)
{
  auto &picture = result_.picture;
  for (const auto &part : model.parts)
    picture.part_names.push_back(part.name);
  for (const auto &cell : model.mesh->cells())
  {
    auto &numbers = picture.cells.emplace_back();
    std::copy(cell.begin(), cell.end(), numbers.begin());
  }
  for (const auto &cell : model.mesh->mesh().cells)
    picture.cell_part.push_back(cell.part);
  for (const auto &point : geometry::outline(model.tup_surface, 24, 1.5 * model.height))
    picture.tup_outline.push_back(point);
}

void Recorder::open_ledger(double given)
{
  given_ = given;
  opening_.clear();
  held_before_.reset();
  // What is stored counts from the opening, or, where a leak can spend more than that, from nothing.
  if (std::any_of(model_.chambers.begin(), model_.chambers.end(),
                  [](const Chamber &chamber) { return chamber.gas && chamber.gas->leaks(); }))
    held_before_ = 0;
  for (const auto &entry : integrator_.energies())
    if (held_before_ && entry.type == EnergyKind::stored)
      *held_before_ += entry.value;
    else
      opening_[{std::string(entry.part), std::string(entry.kind)}] += entry.value;
  numerical_at_opening_ = integrator_.numerical_energy();
  residual_at_opening_ = integrator_.residual_energy();
  fallen_at_opening_ = integrator_.fallen_energy();
  work_at_opening_ = integrator_.driven_work();
}

void Recorder::push(const std::string &name, const std::string &unit, const std::string &meaning,
                    double value)
{
  auto found = std::find_if(result_.curves.begin(), result_.curves.end(),
                            [&](const Curve &curve) { return curve.name == name; });
  if (found == result_.curves.end())
    found = result_.curves.insert(found, Curve{name, unit, meaning, {}});
  found->values.push_back(value);
}

void Recorder::push_row(const std::string &part, const std::string &kind, EnergyKind type, double value)
{
  const auto [found, is_new] = rows_.try_emplace({part, kind}, result_.ledger.size());
  if (is_new)
    result_.ledger.push_back({part, kind, type, std::vector<double>(result_.time.size() - 1, 0.0)});
  // Several contributions may share a row: side and ground face of a stack both meet the base.
  auto &values = result_.ledger[found->second].values;
  if (values.size() == result_.time.size())
    values.back() += value;
  else
    values.push_back(value);
}

void Recorder::end_at(double time)
{
  static constexpr std::string_view felt[] = {"force", "deceleration", "contact_radius", "peak_pressure",
                                              "penetration"};
  auto                             &times = result_.time;
  const auto                        last = times.size() - 1;
  const double                      share = (time - times[last - 1]) / (times[last] - times[last - 1]);
  const auto                        move_back = [&](std::vector<double> &values) {
    values[last] = values[last - 1] + share * (values[last] - values[last - 1]);
  };
  for (auto &curve : result_.curves)
    if (std::find(std::begin(felt), std::end(felt), curve.name) == std::end(felt))
      move_back(curve.values);
  for (auto &row : result_.ledger)
    if (row.values.size() == times.size())
      move_back(row.values);
  times[last] = time;
}

void Recorder::space_pictures(double interval)
{
  if (picture_interval_ > 0)
    picture_interval_ = interval;
}

void Recorder::set(const std::string &part, const std::string &kind, EnergyKind type, double value)
{
  result_.ledger.push_back({part, kind, type, std::vector<double>(result_.time.size(), value)});
}

void Recorder::record(double time, bool picture_now)
{
  result_.time.push_back(time);
  const auto  &x = integrator_.x;
  const int    tup = model_.tup_unknown();
  const auto   state = model_.tup_contact->state(x);
  const double weight = model_.equation.bodies[0].inertia[0] * model_.input.gravity;
  push("force", "N", "force of the stack on the striker, upwards", state.force);
  push("tup_displacement", "m", "travel of the striker below its level at first touch", -x[tup]);
  push("tup_velocity", "m/s", "speed of the striker, upwards positive", integrator_.v[tup]);
  if (weight > 0)
    push("deceleration", "1", "upward acceleration of the drop weight over g: F/(m g) - 1",
         state.force / weight - 1);
  push("contact_radius", "m", "outermost radius in contact with the striker", state.radius);
  push("peak_pressure", "Pa",
       "highest mean contact pressure over a ring 5 mm wide (an eighth of a small striker)",
       state.peak_pressure);
  push("penetration", "m", "greatest penetration of the striker into the surface (numerical)", state.deepest);
  for (const auto &chamber : model_.chambers)
  {
    if (chamber.gas)
    {
      const auto &gas = chamber.gas->state();
      push(chamber.layer + ".gauge_pressure", "Pa", "gas pressure above the atmosphere",
           gas.pressure() - chamber.gas->gas().atmospheric_pressure);
      push(chamber.layer + ".gas_temperature", "K", "mean temperature of the gas", gas.temperature);
      push(chamber.layer + ".volume", "m3", "volume of the chamber in the plug", chamber.gas->volume(x));
    }
    if (chamber.fibres)
      push(chamber.layer + ".height", "m", "smallest height between the films",
           chamber.fibres->smallest_height(x));
  }

  for (const auto &entry : integrator_.energies())
    push_row(std::string(entry.part), std::string(entry.kind), entry.type, entry.value);
  for (const auto &[key, opened] : opening_)
    result_.ledger[rows_.at(key)].values.back() -= opened;
  if (held_before_)
    push_row("stack", held_before_kind, EnergyKind::exchanged, -*held_before_);
  double bodies = 0;
  for (std::size_t body = 0; body < model_.equation.bodies.size(); ++body)
  {
    const double moving = integrator_.body_kinetic_energy(body);
    push_row(body == 0 ? rig_part::striker : rig_part::support, "motion", EnergyKind::kinetic, moving);
    bodies += moving;
  }
  push_row("stack", "motion", EnergyKind::kinetic, integrator_.kinetic_energy() - bodies);
  push_row("scheme", "numerical", EnergyKind::numerical,
           integrator_.numerical_energy() - numerical_at_opening_);
  push_row("scheme", "residual", EnergyKind::numerical, integrator_.residual_energy() - residual_at_opening_);
  const double fallen = integrator_.fallen_energy() - fallen_at_opening_;
  if (fallen != 0 || rows_.contains({"creasing", "fall"}))
    push_row("creasing", "fall", EnergyKind::dissipated, fallen);
  const double driven = integrator_.driven_work() - work_at_opening_;
  if (driven != 0 || rows_.contains({"drive", "work"}))
    push_row("drive", "work", EnergyKind::exchanged, -driven);

  if (picture_interval_ > 0 && (picture_now || time - last_picture_ >= picture_interval_))
    take_picture(time);
}

void Recorder::take_picture(double time)
{
  last_picture_ = time;
  const auto &x = integrator_.x;
  Snapshot    shot;
  shot.time = time;
  shot.tup_position = model_.touch_height + x[model_.tup_unknown()];
  const auto &mesh = *model_.mesh;
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
  {
    Point u{};
    for (unsigned c = 0; c < 2; ++c)
      if (const int dof = mesh.dof(node, c); dof >= 0)
        u[c] = x[dof];
    shot.displacement.push_back(u);
    shot.position.push_back({mesh.nodes()[node][0] + u[0], mesh.nodes()[node][1] + u[1]});
  }
  const std::size_t n = 4 * mesh.cells().size();
  for (auto *field : {&shot.vertical_stress, &shot.mean_stress, &shot.shear_stress, &shot.vertical_stretch,
                      &shot.energy_density, &shot.dissipated_density})
    field->resize(n);
  // The integration point nearest to a corner speaks for it.
  static constexpr std::array<unsigned, 4> corner_point{0, 2, 6, 8};
  for (const auto *body : model_.bodies)
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
  result_.picture.snapshots.push_back(std::move(shot));
}

const std::vector<double> &Recorder::curve(const std::string &name) const
{
  for (const auto &curve : result_.curves)
    if (curve.name == name)
      return curve.values;
  throw std::logic_error("no curve " + name);
}

/// A fall that sets free too little to be read counts with the errors of the scheme.
void Recorder::drop_small_falls()
{
  constexpr double readable = 5e-4; // of the energy there is at the end
  const auto       fall = rows_.find({"creasing", "fall"});
  if (fall == rows_.end())
    return;
  double all = 0;
  for (const auto &row : result_.ledger)
    if (row.type != EnergyKind::exchanged && row.type != EnergyKind::numerical)
      all += row.values.back();
  const auto freed = result_.ledger[fall->second].values;
  if (freed.back() > readable * all)
    return;
  auto &numerical = result_.ledger[rows_.at({"scheme", "numerical"})].values;
  for (std::size_t i = 0; i < freed.size(); ++i)
    numerical[i] += freed[i];
  result_.ledger.erase(result_.ledger.begin() + fall->second);
}

Result Recorder::finish()
{
  for (auto &row : result_.ledger)
    row.values.resize(result_.time.size(), row.values.empty() ? 0.0 : row.values.back());
  if (!result_.time.empty())
    drop_small_falls();
  result_.input_energy = given_;
  result_.chambers = model_.chamber_facts;
  result_.facts.unknowns = model_.equation.size();
  result_.facts.cells = model_.mesh->cells().size();
  const auto &inflating = model_.inflating;
  result_.facts.steps = integrator_.n_steps + inflating.steps;
  result_.facts.repeated_steps = integrator_.n_repeated + inflating.repeated;
  result_.facts.iterations = integrator_.n_iterations + inflating.iterations;
  result_.facts.descents = integrator_.n_descents + inflating.descents;
  return std::move(result_);
}
} // namespace solemech::solver
