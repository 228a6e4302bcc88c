// SPDX-License-Identifier: Apache-2.0
#include "tests/unit/output/results/synthetic.h"

#include <cmath>
#include <map>
#include <numbers>

namespace solemech::tests
{
namespace
{
using namespace solver;
using std::numbers::pi;
using tools::Run;

constexpr std::size_t n_times = 121;

struct Numbers
{
  double compression, contact, peak_force, rebound; // [m], [s], [N], [-]
};

Layer layer(const std::string &name, double thickness, const std::string &family = "foam")
{
  Layer layer;
  layer.name = name;
  layer.thickness = thickness;
  layer.material.name = name;
  layer.material.family = family;
  layer.material.source = "invented for the demo";
  layer.material.invented = true;
  return layer;
}

/// Squeezes the heights below the tup by a smooth dent; cells may be left out to make a cavity.
struct Mesher
{
  std::vector<double> r, z; // vertex lines [m]
  Picture             picture;

  void build(const std::vector<std::string> &names, int (*part_at)(double, double), const Numbers &numbers,
             double tup_radius, std::size_t n_shots)
  {
    picture.part_names = names;
    const std::size_t n_row = 2 * r.size() - 1;
    const auto        fine = [](const std::vector<double> &line) {
      std::vector<double> both;
      for (std::size_t i = 0; i + 1 < line.size(); ++i)
      {
        both.push_back(line[i]);
        both.push_back((line[i] + line[i + 1]) / 2);
      }
      both.push_back(line.back());
      return both;
    };
    const auto fine_r = fine(r), fine_z = fine(z);
    for (std::size_t j = 0; j + 1 < z.size(); ++j)
      for (std::size_t i = 0; i + 1 < r.size(); ++i)
        if (const int part = part_at((r[i] + r[i + 1]) / 2, (z[j] + z[j + 1]) / 2); part >= 0)
        {
          std::array<std::size_t, 9> cell;
          for (std::size_t k = 0; k < 9; ++k)
            cell[k] = (2 * j + k / 3) * n_row + 2 * i + k % 3;
          picture.cells.push_back(cell);
          picture.cell_part.push_back(part);
        }
    const double height = z.back();
    for (std::size_t s = 0; s < n_shots; ++s)
    {
      Snapshot shot;
      shot.time = numbers.contact * static_cast<double>(s) / static_cast<double>(n_shots - 1);
      const double dent = numbers.compression * std::sin(pi * shot.time / numbers.contact);
      shot.tup_position = height - dent;
      for (const double zz : fine_z)
        for (const double rr : fine_r)
        {
          const double under = 1 / (1 + std::exp((rr - tup_radius) / 2e-3));
          const double uz = -dent * under * zz / height;
          const double ur = 0.15 * dent * std::sin(pi * zz / height) * rr / r.back();
          shot.displacement.push_back({ur, uz});
          shot.position.push_back({rr + ur, zz + uz});
        }
      const std::size_t n = 4 * picture.cells.size();
      for (std::size_t i = 0; i < n; ++i)
      {
        const double share = dent / height * (1 + 0.1 * std::sin(static_cast<double>(i)));
        shot.vertical_stress.push_back(-1e6 * share);
        shot.mean_stress.push_back(-0.5e6 * share);
        shot.shear_stress.push_back(1e5 * share);
        shot.vertical_stretch.push_back(1 - share);
        shot.energy_density.push_back(4e5 * share * share);
        shot.dissipated_density.push_back(1e5 * share * share);
      }
      picture.snapshots.push_back(std::move(shot));
    }
  }
};

void add_readings(Result &result, const Numbers &n, double height, double drop_height, double mass)
{
  result.readings = {
    {"rebound_by_height", n.rebound, "1", "rise above first touch over fall height", 0.004 * n.rebound},
    {"rebound_height", n.rebound * drop_height, "m", "rise above first touch",
     0.004 * n.rebound * drop_height},
    {"return_by_speed", n.rebound + 0.03, "1", "squared speed ratio at contact loss", -1},
    {"return_by_loop", n.rebound + 0.05, "1", "unloading over loading area", -1},
    {"peak_force", n.peak_force, "N", "smoothed as the trade does", 0.006 * n.peak_force},
    {"peak_force_raw", 1.02 * n.peak_force, "N", "unsmoothed", -1},
    {"peak_deceleration", n.peak_force / (mass * 9.80665) - 1, "1", "F/(m g) - 1", -1},
    {"peak_force_over_weight", n.peak_force / (mass * 9.80665), "1", "F/(m g)", -1},
    {"greatest_compression", n.compression, "m", "travel of the tup since first touch",
     0.002 * n.compression},
    {"compression_share", n.compression / height, "1", "of the stack", -1},
    {"contact_time", n.contact, "s", "first touch to contact loss", -1},
    {"peak_pressure", n.peak_force / 1.2e-3, "Pa", "under the tup", -1},
    {"time_of_peak", n.contact / 2, "s", "of greatest compression", -1},
    {"impact_speed", std::sqrt(2 * 9.80665 * drop_height), "m/s", "at first touch", -1},
    {"rebound_speed", std::sqrt(2 * 9.80665 * drop_height * n.rebound), "m/s", "at contact loss", -1},
    {"bottoming_margin", 0.34, "1", "0: bottomed", -1}};
}

Run drop_run(const std::string &label, const std::vector<Layer> &layers, const Numbers &numbers,
             const std::map<std::string, double> &lost)
{
  Run   run;
  Case &setup = run.setup;
  run.label = label;
  setup.label = label;
  setup.title = "A stack under a drop weight";
  setup.note = "An invented club-hall bench";
  setup.invented = true;
  setup.layers = layers;
  setup.plug.radius = 0.042;
  DropRig rig;
  rig.tup = {TupShape::flat, 0.040, 0.003, 0, 0};
  rig.mass = 1.2;
  rig.height = 0.4;
  rig.guide_loss = 0.03;
  setup.rig = rig;

  double height = 0;
  for (const auto &one : layers)
    height += one.thickness;
  Result &result = run.result;
  result.input_energy = rig.mass * setup.gravity * rig.height;
  result.time_of_peak = numbers.contact / 2;
  result.time_of_loss = numbers.contact;
  Curve force{"force", "N", "on the drop weight", {}},
    travel{"tup_displacement", "m", "of the drop weight", {}};
  for (std::size_t i = 0; i < n_times; ++i)
  {
    const double x = 1.2 * static_cast<double>(i) / (n_times - 1);
    result.time.push_back(x * numbers.contact);
    const double s = std::sin(pi * std::min(x, 1.));
    travel.values.push_back(numbers.compression * s);
    force.values.push_back(numbers.peak_force * (0.25 * s + 0.75 * std::pow(s, 3)) *
                           (x < 0.5 ? 1 : 0.35 + 0.65 * s));
  }
  result.curves = {force, travel};
  double sum = numbers.rebound;
  for (const auto &[part, share] : lost)
  {
    LedgerRow row{part, part == "guide" ? "friction" : "relaxing", EnergyKind::dissipated, {}};
    for (const double t : result.time)
      row.values.push_back(share * result.input_energy * std::min(t / numbers.contact, 1.));
    result.ledger.push_back(row);
    sum += share;
  }
  LedgerRow stored{layers[1].name, "network", EnergyKind::stored, {}};
  for (std::size_t i = 0; i < n_times; ++i)
    stored.values.push_back((0.998 - sum) * result.input_energy);
  result.ledger.push_back(stored);
  LedgerRow tup{"tup", "kinetic", EnergyKind::kinetic, std::vector<double>(n_times, 1.)};
  result.ledger.push_back(tup);
  add_readings(result, numbers, height, rig.height, rig.mass);
  result.facts = {4210, 480, 212, 3, 655, 0, 0, 0.41, 0.0004, 0.0011};

  result.picture.tup_outline = {{0, 0},        {0.017, 0},     {0.0191, 0.0009}, {0.02, 0.003},
                                {0.02, 0.012}, {0.008, 0.012}, {0.008, 0.022}};
  return run;
}

std::vector<double> lines(double from, double to, std::size_t n)
{
  std::vector<double> result;
  for (std::size_t i = 0; i <= n; ++i)
    result.push_back(from + (to - from) * static_cast<double>(i) / static_cast<double>(n));
  return result;
}

void append(std::vector<double> &line, double to, std::size_t n)
{
  const auto more = lines(line.back(), to, n);
  line.insert(line.end(), more.begin() + 1, more.end());
}
} // namespace

tools::Run synthetic_heel(const std::string &label)
{
  const Numbers numbers{7.3e-3, 8.4e-3, 1340, 0.61};
  auto          run = drop_run(
             label,
             {layer("board", 1.5e-3, "board"), layer("core", 16e-3), layer("carrier", 7e-3),
              layer("outsole", 4.4e-3, "rubber")},
             numbers, {{"core", 0.23}, {"carrier", 0.06}, {"outsole", 0.025}, {"board", 0.004}, {"guide", 0.05}});
  Mesher mesher;
  mesher.r = {0};
  append(mesher.r, 0.027, 9);
  append(mesher.r, 0.042, 5);
  mesher.z = {0};
  append(mesher.z, 4.4e-3, 2);
  append(mesher.z, 11.4e-3, 4);
  append(mesher.z, 27.4e-3, 8);
  append(mesher.z, 28.9e-3, 1);
  mesher.picture.tup_outline = run.result.picture.tup_outline;
  mesher.build(
    {"board", "core", "core ring", "carrier", "outsole"},
    [](double r, double z) {
      return z > 27.4e-3 ? 0 : z > 11.4e-3 ? (r < 0.027 ? 1 : 2) : z > 4.4e-3 ? 3 : 4;
    },
    numbers, 0.02, 9);
  run.result.picture = mesher.picture;
  return run;
}

tools::Run synthetic_forefoot(const std::string &label)
{
  const Numbers numbers{8.5e-3, 9.9e-3, 1180, 0.77};
  auto          run =
    drop_run(label,
             {layer("board", 1.5e-3, "board"), layer("topper", 4e-3), layer("unit", 8e-3),
              layer("plate", 1.2e-3, "plate"), layer("base", 4.5e-3), layer("outsole", 4e-3, "rubber")},
             numbers, {{"topper", 0.05}, {"unit", 0.03}, {"base", 0.05}, {"outsole", 0.03}, {"guide", 0.05}});
  AirUnit unit;
  unit.diameter = 0.062;
  unit.film_thickness = 6e-4;
  unit.gauge_pressure = 140e3;
  run.setup.layers[2].unit = unit;
  run.result.warnings = {{"greatest_compression", "close to the soft limit of the unit"},
                         {"", "the weight is lighter than 5 x the moving part of the stack"}};
  run.result.chambers = {{"unit", 140e3, 1.3, 2e-4, 410, 0.012, 2.1e-5}};
  Mesher mesher;
  mesher.r = {0};
  append(mesher.r, 0.0304, 10);
  append(mesher.r, 0.031, 1);
  append(mesher.r, 0.042, 4);
  mesher.z = {0};
  append(mesher.z, 4e-3, 2);
  append(mesher.z, 8.5e-3, 3);
  append(mesher.z, 9.7e-3, 1);
  append(mesher.z, 10.3e-3, 1);
  append(mesher.z, 17.1e-3, 4);
  append(mesher.z, 17.7e-3, 1);
  append(mesher.z, 21.7e-3, 3);
  append(mesher.z, 23.2e-3, 1);
  mesher.picture.tup_outline = run.result.picture.tup_outline;
  mesher.build(
    {"board", "topper", "unit film", "unit ring", "plate", "base", "outsole"},
    [](double r, double z) {
      if (z > 9.7e-3 && z < 17.7e-3)
        return r > 0.031 ? 3 : (r > 0.0304 || z < 10.3e-3 || z > 17.1e-3) ? 2 : -1;
      return z > 21.7e-3 ? 0 : z > 17.7e-3 ? 1 : z > 8.5e-3 ? 4 : z > 4e-3 ? 5 : 6;
    },
    numbers, 0.02, 9);
  run.result.picture = mesher.picture;
  return run;
}

tools::Run synthetic_press(const std::string &label)
{
  tools::Run run = synthetic_heel(label);
  run.setup.label = label;
  PressRig rig;
  rig.tup = {TupShape::flat, 0.040, 0.003, 0, 0};
  rig.control = PressControl::force;
  rig.wave = PressWave::half_sine;
  rig.peak = 2000;
  rig.duration = 0.185;
  run.setup.rig = rig;
  run.result.readings = {{"loop_return", 0.65, "1", "unloading over loading area", 0.002},
                         {"loop_energy_in", 5.2, "J", "loading area", -1},
                         {"loop_energy_lost", 1.82, "J", "area of the loop", -1},
                         {"secant_stiffness", 2.4e5, "N/m", "peak force over its displacement", -1},
                         {"peak_displacement", 8.3e-3, "m", "at peak force", -1},
                         {"peak_force", 2000, "N", "of the pulse", 1}};
  return run;
}

tools::RunRecord record_of(const std::vector<tools::Run> &runs, const std::string &label)
{
  tools::RunRecord record;
  record.label = label;
  record.case_text = "title = \"An invented stack\"  # ±3 °C\n";
  record.canonical_text = "core.thickness = 0.016 m\n";
  record.hash = std::string(64, 'a');
  record.versions = {{"solemech", "0.1.0"}, {"HDF5", "1.10.8"}};
  record.runs = runs;
  return record;
}
} // namespace solemech::tests
