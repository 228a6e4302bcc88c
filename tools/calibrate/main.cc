// SPDX-License-Identifier: Apache-2.0
// solemech-calibrate: turns the laws of the library until the virtual bench reads what their sources state,
// and writes numbers and readings back into the library:  solemech-calibrate materials/library
#include "tools/calibrate/law_fit.h"
#include "tools/calibrate/library_file.h"
#include "tools/calibrate/virtual_bench.h"
#include "tools/language/library.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <concepts>
#include <filesystem>
#include <stdexcept>

namespace
{
using namespace solemech;
using namespace solemech::tools;
using namespace solemech::materials;

struct Request
{
  std::filesystem::path    library;
  std::vector<std::string> materials;      ///< empty: all
  double                   accuracy = 0.5; ///< [%]
  bool                     dry = false;
};

/// What the virtual bench reads, in the entries of the file.
BenchReadings read(const Material &material, double accuracy)
{
  const auto   &gauge = gauge_for(material);
  const bool    is_foam = std::holds_alternative<FoamData>(material.data);
  const double  points = gauge_reading(material, gauge, accuracy).value;
  BenchReadings out;
  out.ball_rebound = ball_rebound(material, accuracy).value;
  if (is_foam)
    out.pulse_return = pulse_return(material, accuracy).value;
  (is_foam ? out.asker_c : out.shore_a) = points;
  return out;
}

template <typename Branch>
std::vector<double> shares(const std::vector<Branch> &branches)
{
  std::vector<double> out;
  for (const auto &branch : branches)
    out.push_back(branch.share);
  return out;
}

void write_law(LibraryFile &file, const LawFit &fit)
{
  std::visit(
    [&]<typename Law>(const Law &law) {
      if constexpr (std::same_as<Law, FoamData>)
      {
        if (fit.stiffness_factor != 1)
          file.set_shear_modulus(law.network.front().shear_modulus);
        if (fit.slipping_factor != 1)
          file.set_shares("slipping", shares(law.slipping));
      }
      if (fit.relaxing_factor != 1)
        file.set_shares("relaxing", shares(law.relaxing));
    },
    fit.material.data);
}

/// A stored reading that is right to a tenth of a point stays as it is.
void write_readings(LibraryFile &file, const BenchReadings &stored, const BenchReadings &now)
{
  const auto moved = [](double before, double after, double tolerance) {
    return after >= 0 && !(std::abs(after - before) <= tolerance);
  };
  if (moved(stored.pulse_return, now.pulse_return, 1e-3))
    file.set_reading("pulse_return", now.pulse_return);
  if (moved(stored.ball_rebound, now.ball_rebound, 1e-3))
    file.set_reading("ball_rebound", now.ball_rebound);
  if (moved(stored.asker_c, now.asker_c, 0.1))
    file.set_points("asker_c", now.asker_c);
  if (moved(stored.shore_a, now.shore_a, 0.1))
    file.set_points("shore_a", now.shore_a);
}

std::string cell(double value, double scale)
{
  return value < 0 ? "-" : fmt::format("{:.1f}", scale * value);
}

void calibrate(const Request &request, const Material &material)
{
  const double accuracy = request.accuracy / 100;
  const auto   fit = fit_law(material, accuracy);
  const auto   now = read(fit.material, accuracy);
  LibraryFile  file(request.library / (material.name + ".toml"), material.name);
  write_law(file, fit);
  write_readings(file, material.readings, now);
  if (!request.dry)
    file.write();

  const auto  &stated = material.stated;
  const double gauge = std::max(now.asker_c, now.shore_a);
  fmt::print("{:24} {:>12} {:>6} {:>8} {:>6} {:>8} {:>6} {:10.4f} {:9.4f} {:9.4f}\n", material.name,
             material.hardness.empty() ? "-" : material.hardness, cell(gauge, 1),
             cell(stated.pulse_return, 100), cell(now.pulse_return, 100), cell(stated.ball_rebound, 100),
             cell(now.ball_rebound, 100), fit.stiffness_factor, fit.slipping_factor, fit.relaxing_factor);
}

bool chosen(const Request &request, const Material &material)
{
  const auto &names = request.materials;
  return (std::holds_alternative<FoamData>(material.data) || material.family == "rubber") &&
         (names.empty() || std::find(names.begin(), names.end(), material.name) != names.end());
}
} // namespace

int main(int argc, char **argv)
{
  Request  request;
  CLI::App app{
    "Turns the stiffness and loss of the library's foams and rubbers until the virtual bench reads "
    "what their sources state, and writes numbers and readings into the library."};
  app.add_option("library", request.library, "Folder of the material library")
    ->required()
    ->check(CLI::ExistingDirectory);
  app.add_option("--only", request.materials, "Only this material. May be repeated");
  app.add_option("--accuracy", request.accuracy, "Numerical accuracy of the readings [%]")
    ->capture_default_str()
    ->check(CLI::Range(0.1, 5.0));
  app.add_flag("--dry-run", request.dry, "Calculate and print, write nothing");
  CLI11_PARSE(app, argc, argv);
  try
  {
    fmt::print("{:24} {:>12} {:>6} {:>8} {:>6} {:>8} {:>6} {:>10} {:>9} {:>9}\n{:24} {:>12} {:>6} {:>8} "
               "{:>6} {:>8} {:>6}\n",
               "material", "gauge", "", "pulse", "[%]", "ball", "[%]", "stiffness", "slipping", "relaxing",
               "", "stated", "read", "stated", "read", "stated", "read");
    const auto library = Library::load(request.library);
    for (const auto &name : request.materials)
      if (!library.find(name))
        throw std::runtime_error("the library has no material '" + name + "'");
    for (const auto &material : library.materials())
      if (chosen(request, material))
        calibrate(request, material);
  }
  catch (const std::exception &problem)
  {
    fmt::print(stderr, "solemech-calibrate: {}\n", problem.what());
    return 1;
  }
  return 0;
}
