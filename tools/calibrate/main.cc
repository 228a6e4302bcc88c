// SPDX-License-Identifier: Apache-2.0
// solemech-calibrate: fits the loss of the library's foams on the virtual press, reads press and ball, and
// writes the numbers back into the library:  solemech-calibrate materials/library
#include "tools/calibrate/library_file.h"
#include "tools/calibrate/loss_fit.h"
#include "tools/calibrate/pulse_targets.h"
#include "tools/calibrate/virtual_bench.h"
#include "tools/language/library.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <stdexcept>

namespace
{
using namespace solemech;
using namespace solemech::tools;

struct Request
{
  std::filesystem::path    library;
  std::vector<std::string> foams;          ///< empty: all
  double                   accuracy = 0.5; ///< [%]
  bool                     dry = false;
};

struct Readings
{
  BenchReading pulse, ball;
};

Readings read(const materials::Material &foam, double accuracy)
{
  return {pulse_return(foam, accuracy), ball_rebound(foam, accuracy)};
}

template <typename Branch>
std::vector<double> shares(const std::vector<Branch> &branches)
{
  std::vector<double> out;
  for (const auto &branch : branches)
    out.push_back(branch.share);
  return out;
}

void write(const Request &request, const LossFit &fit, const Readings &readings)
{
  const auto &foam = fit.material;
  const auto &data = std::get<materials::FoamData>(foam.data);
  LibraryFile file(request.library / (foam.name + ".toml"), foam.name);
  if (fit.slipping_factor != 1)
    file.set_shares("slipping", shares(data.slipping));
  if (fit.relaxing_factor != 1)
    file.set_shares("relaxing", shares(data.relaxing));
  file.set_reading("pulse_return", readings.pulse.value);
  file.set_reading("ball_rebound", readings.ball.value);
  if (!request.dry)
    file.write();
}

void calibrate(const Request &request, const materials::Material &foam)
{
  const double accuracy = request.accuracy / 100;
  const auto   target = pulse_target(foam.name);
  const auto   before = read(foam, accuracy);
  LossFit      fit{foam};
  if (target)
    fit = fit_loss(foam, target->loop_return, accuracy);
  const auto after = read(fit.material, accuracy);
  write(request, fit, after);

  fmt::print("{:20} {:>7} {:8.2f} {:8.2f} {:6.2f} {:8.2f} {:8.2f} {:6.2f} {:9.4f}   {}\n", foam.name,
             target ? fmt::format("{:.1f}", 100 * target->loop_return) : "-", 100 * before.pulse.value,
             100 * after.pulse.value, 100 * after.pulse.error, 100 * before.ball.value,
             100 * after.ball.value, 100 * after.ball.error, fit.slipping_factor,
             target ? target->source : "readings only");
  if (fit.relaxing_factor != 1)
    fmt::print("  {}: its relaxing branches alone lose more than the target; they were scaled by {:.4f} and "
               "its slipping branches were removed\n",
               foam.name, fit.relaxing_factor);
}

bool chosen(const Request &request, const materials::Material &material)
{
  const auto &names = request.foams;
  return std::holds_alternative<materials::FoamData>(material.data) &&
         (names.empty() || std::find(names.begin(), names.end(), material.name) != names.end());
}
} // namespace

int main(int argc, char **argv)
{
  Request  request;
  CLI::App app{
    "Fits the loss of the library's foams to their press pulse (2000 N in 185 ms on a 30 mm pad under a flat "
    "60 mm head), reads press and ball, and writes shares and readings into the library."};
  app.add_option("library", request.library, "Folder of the material library")
    ->required()
    ->check(CLI::ExistingDirectory);
  app.add_option("--foam", request.foams, "Only this foam. May be repeated");
  app.add_option("--accuracy", request.accuracy, "Numerical accuracy of the readings [%]")
    ->capture_default_str()
    ->check(CLI::Range(0.1, 5.0));
  app.add_flag("--dry-run", request.dry, "Calculate and print, write nothing");
  CLI11_PARSE(app, argc, argv);
  try
  {
    fmt::print("{:20} {:>7} {:>8} {:>8} {:>6} {:>8} {:>8} {:>6} {:>9}\n{:20} {:>7} {:>8} {:>8} {:>6} {:>8} "
               "{:>8} {:>6}\n",
               "foam", "target", "pulse", "pulse", "+-", "ball", "ball", "+-", "slipping", "", "[%]",
               "before", "after", "", "before", "after", "");
    const auto library = materials::Library::load(request.library);
    for (const auto &name : request.foams)
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
