// SPDX-License-Identifier: Apache-2.0
// What a rig returns: curves, ledger, readings, pictures in time. Plain data in SI, no solver types.
#pragma once

#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace solemech::solver
{
/// One column of the curves.
struct Curve
{
  std::string         name;    ///< e.g. "force"
  std::string         unit;    ///< "N", "m", "Pa", ...
  std::string         meaning; ///< one sentence
  std::vector<double> values;  ///< one per recorded time
};

/// Where energy is at a recorded time, one row per part and kind.
enum class EnergyKind { stored, kinetic, dissipated, exchanged, numerical };
struct LedgerRow
{
  std::string part; ///< layer or part of it (layer_parts.h), or one of rig_parts.h
  std::string
    kind; ///< "network", "cell gas", "densification", "relaxing", "slipping", "recovery", "contact", ...
  EnergyKind          type;
  std::vector<double> values; ///< [J], one per recorded time; energy since first touch
};

/// Row of what a stack with a leaking unit holds before anything is done to it, as given: a leak can spend
/// that too. The other rows of such a run count what is stored from nothing, those of others from the
/// beginning.
inline constexpr const char *held_before_kind = "held before";

/// The deformed stack at one instant, on the nodes and cells of Picture.
struct Snapshot
{
  double                             time = 0;     ///< [s]
  std::vector<std::array<double, 2>> position;     ///< current node positions (r, z) or (x, z) [m]
  std::vector<std::array<double, 2>> displacement; ///< of the nodes [m]
  // per cell and corner (4 values a cell, bottom-left, bottom-right, top-left, top-right)
  std::vector<double> vertical_stress;    ///< Cauchy sigma_zz [Pa]
  std::vector<double> mean_stress;        ///< Cauchy (sigma_rr + sigma_zz + sigma_tt)/3 [Pa]
  std::vector<double> shear_stress;       ///< Cauchy sigma_rz [Pa]
  std::vector<double> vertical_stretch;   ///< F_zz [-]
  std::vector<double> energy_density;     ///< stored, per reference volume [J/m3]
  std::vector<double> dissipated_density; ///< so far, per reference volume [J/m3]
  double              tup_position = 0;   ///< height of the tup's lowest point [m]
};

struct Picture
{
  std::vector<std::array<std::size_t, 9>>
                           cells;     ///< nine-node cells: 3 x 3 node numbers, r fastest, z upwards
  std::vector<int>         cell_part; ///< index into part_names
  std::vector<std::string> part_names;
  std::vector<Snapshot>    snapshots;
  std::vector<std::array<double, 2>>
    tup_outline; ///< right half of the tup below its shank, relative to its lowest point [m]
};

/// One number for people, with what is known about its accuracy.
struct Reading
{
  std::string name;       ///< machine name, e.g. "rebound_by_height"
  double      value = 0;  ///< SI
  std::string unit;       ///< SI unit text
  std::string meaning;    ///< definition in one sentence
  double      error = -1; ///< estimated numerical error, same unit; < 0: not estimated
  /// What half a band of each independent doubt about the case does to the value; empty: no doubt was given.
  std::vector<double> shifts = {};
  std::string         part = {}; ///< layer that it is the reading of; "": of the whole, or in the name

  /// Half the band in which nine of ten cases lie, from the doubts about the case; < 0: none was given.
  double doubt() const
  {
    double squares = 0;
    for (const double shift : shifts)
      squares += shift * shift;
    return shifts.empty() ? -1 : std::sqrt(squares);
  }
};

/// Half the band of the difference of two readings whose shifts belong to the same doubts [their unit]; 0
/// when they have none.
inline double doubt_of_difference(const Reading &a, const Reading &b)
{
  double squares = 0;
  if (a.shifts.size() == b.shifts.size())
    for (std::size_t i = 0; i < a.shifts.size(); ++i)
      squares += (b.shifts[i] - a.shifts[i]) * (b.shifts[i] - a.shifts[i]);
  return std::sqrt(squares);
}

struct Warning
{
  std::string reading; ///< the reading it touches, or empty
  std::string text;
};

struct SolverFacts
{
  std::size_t unknowns = 0, cells = 0, steps = 0, repeated_steps = 0, iterations = 0;
  std::size_t descents = 0;         ///< steps on which the stack fell into another state (descent.h)
  std::size_t given_up = 0;         ///< runs that failed and were taken again with a finer mesh
  double      seconds = 0;          ///< wall time of the solve
  double      ledger_residual = 0;  ///< |residual| over drop energy [-]
  double      ledger_numerical = 0; ///< |numerical| over drop energy [-]
};

/// Chamber facts after inflation, when the stack has an air unit.
struct ChamberFacts
{
  std::string layer;
  double      gauge_pressure = 0, fibre_tension = 0, bulge = 0, threshold_load = 0, heat_time = 0,
         volume = 0; ///< SI; fibre tension per fibre [N]; heat time below 0: no exchange
};

/// The face of a lug and what presses on it while it slides, across the bar from the leading end to the
/// trailing one.
struct FaceLine
{
  double              way = 0;  ///< of slip until then [m]
  std::vector<double> place;    ///< across the bar, unloaded [m]
  std::vector<double> height;   ///< above the bonded plane, unloaded [m]
  std::vector<double> pressure; ///< nominal [Pa]
};

struct Result
{
  std::vector<double>       time; ///< recorded times from first touch [s]
  std::vector<Curve>        curves;
  std::vector<LedgerRow>    ledger;
  double                    input_energy = 0; ///< 100 % of the energy picture [J]
  double                    time_of_peak = 0; ///< greatest compression [s]
  double                    time_of_loss = 0; ///< contact loss [s]; 0: never
  std::vector<Reading>      readings;
  std::vector<Warning>      warnings;
  std::vector<ChamberFacts> chambers;
  std::vector<FaceLine>     faces; ///< of a slide: at its end; of a wear: fresh and on the way
  Picture                   picture;
  SolverFacts               facts;
  bool                      complete = true; ///< false: the run stopped early; `stop_reason` says why
  std::string               stop_reason;

  /// What can be spent: put in by the rig, and held before by a leaking unit [J].
  double supplied_energy() const
  {
    double supplied = input_energy;
    for (const auto &row : ledger)
      if (row.kind == held_before_kind && !row.values.empty())
        supplied -= row.values.front();
    return supplied;
  }

  const Reading *find(const std::string &name) const
  {
    for (const auto &reading : readings)
      if (reading.name == name)
        return &reading;
    return nullptr;
  }
};
} // namespace solemech::solver
