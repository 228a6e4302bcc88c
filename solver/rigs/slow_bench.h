// SPDX-License-Identifier: Apache-2.0
// A section on a bench that leads one tool so slowly that inertia does not count: from one target to the
// next, in shorter steps where it has to, always down the potential. Shared by the rigs that bend a sole.
#pragma once

#include "solver/models/roller.h"
#include "solver/models/section_line.h"
#include "solver/resolution.h"
#include "solver/results/recorder.h"

#include <functional>
#include <optional>
#include <string>

namespace solemech::solver
{
class SlowBench
{
public:
  /// @param led     unknown of the tool [m, rad]
  /// @param scale   about the force on the tool when it has only just touched [N]
  SlowBench(SectionModel &model, int led, double scale, const Resolution &resolution);

  TimeIntegrator integrator;
  /// Called after every step: the force that residuals count against from there on [N], or why to stop.
  struct Seen
  {
    double                     force = 0;
    std::optional<std::string> stop = {};
  };
  std::function<Seen()> on_step;

  /// Leads the tool from where it is.
  /// @param rate  [m/s, rad/s]
  /// @return why it did not arrive; empty: it is there
  std::string lead_to(double value, double rate, unsigned n_steps);

  double at() const { return integrator.x[led_]; } ///< [m, rad]

private:
  SectionModel &model_;
  int           led_;
  double        least_force_;
  StepSettings  settings_;
};

/// How far a roller sinks into the softest part at a pressure of its confined modulus [m], and the penalty of
/// its contact that follows [Pa/m2].
struct RollerContact
{
  double depth, penalty;
};
RollerContact roller_contact(const LongSection &section, const Case &input, const Resolution &resolution);

/// Height of the centre of a roller that touches the unloaded line from its side at a place along the foot
/// [m].
double touching_height(const SectionLine &line, Meets meets, double radius, double place);

/// The stretch of a plate along its upper and lower face: none without a plate.
class PlateLines
{
public:
  /// @param plate  name of a part, or empty
  /// Throws std::invalid_argument when the section has no such part.
  PlateLines(const LongSection &section, const Discretisation &mesh, const std::string &plate);

  bool        exist() const { return !lines_.empty(); }
  const auto &lower() const { return lines_.front(); }

  /// Greatest and least logarithmic strain of its faces [-].
  std::array<double, 2> strains(const Vector &x) const;

private:
  std::vector<SectionLine> lines_; ///< lower, upper
};

/// A record of curves and energies of a bench; its ledger is still to be opened.
Recorder bench_recorder(const SectionModel &model, const SlowBench &bench, std::unique_ptr<Probe> probe);
} // namespace solemech::solver
