// SPDX-License-Identifier: Apache-2.0
// Gas of a closed chamber: the load p - p_a on every wetted face follows from one discrete volume of the
// wetted nodes, so that its work is exactly that of the gas. The volume outside the plug is added (sealed,
// leaking). A leak splits a step like the exchange of heat: half of it, the motion, the other half; the
// pressure is that of the end.
#pragma once

#include "materials/chamber_gas.h"
#include "materials/chamber_leak.h"
#include "solver/contribution.h"
#include "solver/mesh/discretisation.h"

#include <optional>

namespace solemech::solver
{
class GasChamber : public Contribution
{
public:
  GasChamber(std::string name, const Discretisation &mesh, const geometry::ChamberMesh &chamber,
             materials::ChamberGas gas, double outside_volume, std::optional<materials::ChamberLeak> leak);

  /// Volume inside the plug [m3] (plane: whole section [m2]).
  double volume(const Vector &x) const;

  /// Holds the gauge pressure [Pa], whatever the volume: inflating the unit.
  void hold(double gauge_pressure);

  /// Seals the gas at the volume of `x` and this gauge pressure [Pa]; the ledger counts from here.
  void seal(const Vector &x, double gauge_pressure);

  const materials::GasState   &state() const { return state_; }
  const materials::ChamberGas &gas() const { return gas_; }
  bool                         leaks() const { return leak_.has_value(); }

  void        begin_step(const Vector &x, double dt) override;
  bool        add(const Vector &x, Vector &force, Tangent *tangent) const override;
  void        accept(const Vector &x, double dt) override;
  void        energies(std::vector<EnergyEntry> &entries) const override;
  std::string name() const override { return name_; }

private:
  std::string                           name_;
  materials::ChamberGas                 gas_;
  double                                outside_volume_, symmetry_;
  std::optional<materials::ChamberLeak> leak_;
  MeshSection                           section_;
  const Discretisation                 *mesh_;
  struct Edge
  {
    std::array<int, 6>   dof;
    std::array<Point, 3> node;
  };
  std::vector<Edge>     edges_;
  std::optional<double> held_;
  materials::GasState   state_;
  double                dt_ = 0, exergy_at_seal_ = 0, heat_loss_ = 0, flow_loss_ = 0;

  materials::LeakStep    half_leak(const materials::GasState &state) const;
  materials::GasPressure pressure(double volume) const; ///< at the end of the step
  geometry::EdgeNodes    positions(const Edge &edge, const Vector &x) const;
};
} // namespace solemech::solver
