// SPDX-License-Identifier: Apache-2.0
// What may be written: finite numbers only, every column as long as the time axis. A result that breaks this
// is refused before any file is touched, so that no reader ever meets NaN or a torn table.
#pragma once

#include "solver/results/result.h"

#include <cmath>
#include <stdexcept>
#include <string>

namespace solemech::solver
{
/// A file or folder of results could not be written or read; names the path and the system's reason.
struct ResultsError : std::runtime_error
{
  using std::runtime_error::runtime_error;
};

/// Throws ResultsError naming the first entry that is not finite or has the wrong length.
inline void require_writable(const std::string &label, const Result &result)
{
  const auto refuse = [&](const std::string &what) {
    throw ResultsError("result of '" + label + "': " + what + "; nothing was written");
  };
  const auto number = [&](double value, const std::string &what) {
    if (!std::isfinite(value))
      refuse(what + " is not a finite number");
  };
  const auto column = [&](const std::vector<double> &values, const std::string &what) {
    if (values.size() != result.time.size())
      refuse(what + " has " + std::to_string(values.size()) + " values for " +
             std::to_string(result.time.size()) + " recorded times");
    for (const double value : values)
      number(value, what);
  };
  const auto list = [&](const std::vector<double> &values, std::size_t size, const std::string &what) {
    if (values.size() != size)
      refuse(what + " has " + std::to_string(values.size()) + " values instead of " + std::to_string(size));
    for (const double value : values)
      number(value, what);
  };

  column(result.time, "time");
  for (const auto &curve : result.curves)
    column(curve.values, "curve '" + curve.name + "'");
  for (const auto &row : result.ledger)
    column(row.values, "ledger row '" + row.part + ", " + row.kind + "'");
  for (const auto &reading : result.readings)
  {
    number(reading.value, "reading '" + reading.name + "'");
    number(reading.error, "error of reading '" + reading.name + "'");
    for (const double shift : reading.shifts)
      number(shift, "band of reading '" + reading.name + "'");
  }
  number(result.input_energy, "input energy");
  number(result.time_of_peak, "time of peak");
  number(result.time_of_loss, "time of contact loss");
  number(result.facts.seconds, "solver time");
  number(result.facts.ledger_residual, "ledger residual");
  number(result.facts.ledger_numerical, "numerical share of the ledger");
  for (const auto &chamber : result.chambers)
    for (const double value : {chamber.gauge_pressure, chamber.fibre_tension, chamber.bulge,
                               chamber.threshold_load, chamber.heat_time, chamber.volume})
      number(value, "chamber of layer '" + chamber.layer + "'");

  for (const auto &face : result.faces)
  {
    number(face.way, "way of a face");
    list(face.place, face.place.size(), "places of a face");
    list(face.height, face.place.size(), "heights of a face");
    list(face.pressure, face.place.size(), "pressures on a face");
  }

  const Picture &picture = result.picture;
  if (picture.cell_part.size() != picture.cells.size())
    refuse("the picture has " + std::to_string(picture.cells.size()) + " cells and " +
           std::to_string(picture.cell_part.size()) + " part numbers");
  for (const int part : picture.cell_part)
    if (part < 0 || static_cast<std::size_t>(part) >= picture.part_names.size())
      refuse("a cell of the picture belongs to part " + std::to_string(part) + ", which has no name");
  for (const auto &point : picture.tup_outline)
    for (const double value : point)
      number(value, "tup outline");
  for (const auto &shot : picture.snapshots)
  {
    if (shot.displacement.size() != shot.position.size())
      refuse("a snapshot has " + std::to_string(shot.position.size()) + " positions and " +
             std::to_string(shot.displacement.size()) + " displacements");
    for (const auto &nodes : {shot.position, shot.displacement})
      for (const auto &node : nodes)
        for (const double value : node)
          number(value, "node of a snapshot");
    for (const auto &cell : picture.cells)
      for (const std::size_t node : cell)
        if (node >= shot.position.size())
          refuse("a cell of the picture names node " + std::to_string(node) + ", which a snapshot lacks");
    const std::size_t corners = 4 * picture.cells.size();
    list(shot.vertical_stress, corners, "vertical stress of a snapshot");
    list(shot.mean_stress, corners, "mean stress of a snapshot");
    list(shot.shear_stress, corners, "shear stress of a snapshot");
    list(shot.vertical_stretch, corners, "vertical stretch of a snapshot");
    list(shot.energy_density, corners, "energy density of a snapshot");
    list(shot.dissipated_density, corners, "dissipated energy of a snapshot");
    number(shot.time, "time of a snapshot");
    number(shot.tup_position, "tup position of a snapshot");
  }
}
} // namespace solemech::solver
