// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/gas_chamber.h"

namespace solemech::solver
{
GasChamber::GasChamber(std::string name, const Discretisation &mesh, const geometry::ChamberMesh &chamber,
                       materials::ChamberGas gas, double outside_volume,
                       std::optional<materials::ChamberLeak> leak)
  : name_(std::move(name)), gas_(gas), outside_volume_(outside_volume),
    symmetry_(mesh.section() == MeshSection::axisymmetric ? 1.0 : 2.0), leak_(leak), section_(mesh.section()),
    mesh_(&mesh)
{
  for (const unsigned face : chamber.wetted_faces)
  {
    const auto nodes = mesh.edge(mesh.mesh().faces[face]);
    Edge       edge;
    for (unsigned a = 0; a < 3; ++a)
    {
      edge.node[a] = mesh.nodes()[nodes[a]];
      for (unsigned c = 0; c < 2; ++c)
        edge.dof[2 * a + c] = mesh.dof(nodes[a], c);
    }
    edges_.push_back(edge);
  }
}

geometry::EdgeNodes GasChamber::positions(const Edge &edge, const Vector &x) const
{
  geometry::EdgeNodes nodes = edge.node;
  for (unsigned i = 0; i < 6; ++i)
    if (edge.dof[i] >= 0)
      nodes[i / 2][i % 2] += x[edge.dof[i]];
  return nodes;
}

double GasChamber::volume(const Vector &x) const
{
  double sum = 0;
  for (const auto &edge : edges_)
    sum += edge_volume(positions(edge, x), section_).volume;
  return symmetry_ * sum;
}

void GasChamber::hold(double gauge_pressure)
{
  held_ = gauge_pressure;
}

void GasChamber::seal(const Vector &x, double gauge_pressure)
{
  held_.reset();
  state_ = gas_.seal(volume(x) + outside_volume_, gauge_pressure);
  exergy_at_seal_ = leak_ ? 0 : gas_.exergy(state_); // what a leak can spend counts from nothing
  heat_loss_ = flow_loss_ = 0;
}

void GasChamber::begin_step(const Vector &, double dt)
{
  dt_ = dt;
}

materials::LeakStep GasChamber::half_leak(const materials::GasState &state) const
{
  return leak_->leak(gas_, state, 0.5 * dt_, gas_.isothermal(dt_));
}

materials::GasPressure GasChamber::pressure(double volume) const
{
  if (!leak_)
    return gas_.pressure(state_, volume, dt_);
  const auto   start = half_leak(state_).state;
  const auto   at = [&](double v) { return half_leak(gas_.advance(start, v, dt_).state).state.pressure(); };
  const double h = 1e-4 * volume; // the leak is integrated to 1e-7: the slope is good to 1e-3
  return {at(volume), std::min(0.0, (at(volume + h) - at(volume - h)) / (2 * h))};
}

bool GasChamber::add(const Vector &x, Vector &force, Tangent *tangent) const
{
  const double inside = volume(x);
  if (!(inside > 0))
    return false;
  double gauge = held_.value_or(0.0), stiffness = 0;
  if (!held_)
  {
    const auto gas = pressure(inside + outside_volume_);
    gauge = gas.pressure - gas_.atmospheric_pressure;
    stiffness = -gas.derivative;
  }
  Vector gradient;
  if (tangent && !held_)
    gradient.setZero(mesh_->n_unknowns());
  for (const auto &edge : edges_)
  {
    const auto part = edge_volume(positions(edge, x), section_);
    for (unsigned i = 0; i < 6; ++i)
    {
      const int a = edge.dof[i];
      if (a < 0)
        continue;
      force[a] -= gauge * symmetry_ * part.gradient[i];
      if (!tangent)
        continue;
      if (!held_)
        gradient[a] += symmetry_ * part.gradient[i];
      for (unsigned j = 0; j < 6; ++j)
        if (const int b = edge.dof[j]; b >= 0 && a >= b)
          mesh_->add_entry(tangent->values, a, b, -gauge * symmetry_ * part.hessian[i][j]);
    }
  }
  if (tangent && !held_)
    tangent->rank_one.push_back({std::move(gradient), stiffness});
  return true;
}

void GasChamber::accept(const Vector &x, double dt)
{
  if (held_)
    return;
  const auto leak_half = [&] {
    if (!leak_)
      return;
    const auto leaked = half_leak(state_);
    state_ = leaked.state;
    flow_loss_ += leaked.flow_loss;
  };
  leak_half();
  const auto step = gas_.advance(state_, volume(x) + outside_volume_, dt);
  state_ = step.state;
  heat_loss_ += step.heat_loss;
  leak_half();
}

void GasChamber::energies(std::vector<EnergyEntry> &entries) const
{
  if (held_)
    return;
  entries.push_back({name_, "gas", EnergyKind::stored, gas_.exergy(state_) - exergy_at_seal_});
  entries.push_back({name_, "gas heat", EnergyKind::dissipated, heat_loss_});
  if (leak_)
    entries.push_back({name_, "leak", EnergyKind::dissipated, flow_loss_});
}
} // namespace solemech::solver
