// SPDX-License-Identifier: Apache-2.0
// Speed on the bench problem B1 against what the project promises and against a yardstick, timed beside it:
// the same blow by a plain program on deal.II. Also the assembly, the program with start-up, cost against
// unknowns, and many variants in one process. Seconds depend on the machine, ratios hardly.
#include "solver/in_parallel.h"
#include "solver/models/stack_model.h"
#include "solver/part_law.h"
#include "solver/rigs/drop.h"
#include "solver/run.h"
#include "solver/time/generalised_alpha.h"
#include "tests/benchmark/timing.h"
#include "tests/benchmark/yardstick.h"
#include "tests/support/foam_cases.h"

#include <fmt/format.h>

#include <cstdlib>
#include <filesystem>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr unsigned       goes = 5;
const solver::RunOptions plain{.progress = {}, .pictures = false};

void row(const std::string &what, const std::string &value, const std::string &promised)
{
  fmt::print("  {:<58} {:>14} {:>16}\n", what, value, promised);
}

double value(const solver::Result &result, const char *name)
{
  return result.find(name)->value;
}

void error_row(double peak_force, double compression, double return_by_speed)
{
  row("  error of peak force, compression, return",
      fmt::format("{:.2f} {:.2f} {:.2f} %", 100 * (peak_force / b1::smoothed_peak_force.value - 1),
                  100 * (compression / b1::peak_compression.value - 1),
                  100 * (return_by_speed - b1::return_by_speed.value)),
      "each <= 0.5 %");
}

void effort_row(unsigned unknowns, unsigned steps, unsigned iterations)
{
  row("  unknowns, steps, iterations", fmt::format("{}, {}, {}", unknowns, steps, iterations), "");
}

/// The yardstick on the coarsest mesh that reads B1 within 0.5 %, with the step at which its contact, a
/// linear penalty without any remedy, still converges: at twice the step Newton's method goes round in
/// circles.
struct Yardstick
{
  double seconds = 0, microseconds_a_point = 0; ///< processor time

  Yardstick()
  {
    YardstickBlow blow;
    seconds = timed([&] { blow = yardstick_blow(8, 5, 0.1e-3); }).processor;
    microseconds_a_point = 1e6 * blow.assembly_seconds / blow.iterations / blow.points;
    row("yardstick: B1 by a plain program on deal.II, processor time [s]", fmt::format("{:.3f}", seconds),
        "");
    row("  its assembly a point, two branches [us]", fmt::format("{:.2f}", microseconds_a_point), "");
    error_row(blow.peak_force, blow.compression, blow.return_by_speed);
    effort_row(blow.unknowns, blow.steps, blow.iterations);
  }
};

void blow_row(const std::string &what, const solver::Result &result, const Seconds &time,
              const Yardstick &yardstick)
{
  row(what, fmt::format("{:.3f}", time.processor), "<= 0.15");
  row("  yardstick over it", fmt::format("{:.0f} x", yardstick.seconds / time.processor), ">= 15 x");
  error_row(value(result, "peak_force"), value(result, "greatest_compression"),
            value(result, "return_by_speed"));
  effort_row(result.facts.unknowns, result.facts.steps, result.facts.iterations);
}

void blow(const Yardstick &yardstick)
{
  solver::Result result;
  auto           input = b1_case();
  const auto    &rig = std::get<solver::DropRig>(input.rig);
  // The coarsest mesh and step that a check against the listed readings lets pass.
  const solver::Resolution sufficient{1.2, 1.0};
  const auto enough = quickest(goes, [&] { result = solver::run_rig(input, rig, sufficient, plain); });
  blow_row("B1 on mesh and step that reach 0.5 %, processor time [s]", result, enough, yardstick);

  input.accuracy = 0.005;
  auto single = plain;
  single.estimate_error = false;
  const auto alone = quickest(goes, [&] { result = solver::run(input, single); });
  blow_row("B1 on mesh and step chosen for accuracy 0.5 % [s]", result, alone, yardstick);
  const auto with_estimate = quickest(goes, [&] { (void)solver::run(input, plain); });
  row("  the same with its error estimated [s]", fmt::format("{:.3f}", with_estimate.processor), "");
}

void assembly(const Yardstick &yardstick)
{
  const auto               input = b1_case();
  const solver::StackModel model(input, b1_tup(), b1::mass, {3.0, 1.0});
  const auto               kernel = solver::make_part_kernel(model.parts[0].material, 1.0, input);
  auto                     group = model.mesh->group(0, kernel->n_branches(), model.mesh->nodes(), {});
  const solver::Vector     x = solver::Vector::Zero(model.mesh->n_unknowns());
  solver::Vector           force = x;
  std::vector<double>      matrix(model.mesh->pattern().nonZeros() + 1);
  const std::size_t        n_points = 9 * model.mesh->cells().size();
  constexpr unsigned       n_times = 200;
  kernel->begin_step(group, x.data(), 1e-4);
  const auto   time = quickest(goes, [&] {
    for (unsigned i = 0; i < n_times; ++i)
      kernel->assemble(group, x.data(), force.data(), matrix.data());
  });
  const double each = 1e6 * time.processor / n_times / n_points;
  row("assembly a point, two branches [us]", fmt::format("{:.3f}", each), "<= 0.12");
  row("  yardstick over it", fmt::format("{:.0f} x", yardstick.microseconds_a_point / each), ">= 50 x");
}

/// Wall time of the program with these arguments.
void answer_row(const std::string &what, const std::string &arguments, const std::string &promised)
{
  const auto command = fmt::format("\"{}\" {} > /dev/null 2>&1", SOLEMECH_PROGRAM, arguments);
  int        failed = 0;
  const auto time = quickest(goes, [&] { failed += std::system(command.c_str()) != 0; });
  row(what, failed ? "failed" : fmt::format("{:.3f}", time.wall), promised);
}

/// Wall time of cases run by the program, in new folders each time.
void program_row(const std::string &what, const std::string &cases, unsigned n_times,
                 const std::string &promised)
{
  const auto folder =
    std::filesystem::temp_directory_path() / fmt::format("solemech-benchmark-{}", std::rand());
  const auto command = [&](unsigned go) {
    return fmt::format("\"{}\" run {} --quiet -o \"{}\" > /dev/null 2>&1", SOLEMECH_PROGRAM, cases,
                       (folder / std::to_string(go)).string());
  };
  unsigned   go = 0;
  int        failed = 0;
  const auto time = quickest(n_times, [&] { failed += std::system(command(go++).c_str()) != 0; });
  std::filesystem::remove_all(folder);
  row(what, failed ? "failed" : fmt::format("{:.2f}", time.wall), promised);
}

void program()
{
  answer_row("help, wall [s]", "--help", "<= 0.1");
  answer_row("list of cases, wall [s]", "cases", "<= 0.1");
  answer_row("check of a prepared case, wall [s]", "check heel-drop", "<= 0.1");
  program_row("heel-drop and forefoot-drop by the program, wall [s]", "heel-drop forefoot-drop", 3, "<= 1.5");
  program_row("press and slide of three bars at 1 % with errors, wall [s]", "herringbone-hardwood", 3,
              "<= 6");
  program_row("wear life of two million steps at 2 % with errors, wall [s]", "worn-lug", 1, "<= 60");
  program_row("a hold under a sleeve, three rubbers, wall [s]", "abrasion-bench", 3, "");
  program_row("a sole of four zones at 24 headings with errors, wall [s]", "two-zone-tread", 1, "<= 30");
}

void cost_against_unknowns()
{
  fmt::print("\n  {:>10} {:>16} {:>12} {:>10} {:>16}\n", "unknowns", "ms an iteration", "exponent", "MB", "");
  double last_unknowns = 0, last_time = 0, first_unknowns = 0, first_time = 0;
  for (const double level : {1.0, 1.5, 2.5, 4.0, 6.0, 9.0, 12.5})
  {
    const auto             input = b1_case();
    solver::StackModel     model(input, b1_tup(), b1::mass, {level, 1.0});
    solver::TimeIntegrator integrator(model.equation, 0.6);
    integrator.v[model.tup_unknown()] = -std::sqrt(2 * b1::energy / b1::mass);
    integrator.start();
    constexpr unsigned n_steps = 6;
    const auto         time = timed([&] {
      for (unsigned i = 0; i < n_steps; ++i)
        integrator.step(2e-4, {.force_scale = 100});
    });
    const double       unknowns = model.equation.size();
    const double       each = time.processor / std::max<std::size_t>(1, integrator.n_iterations);
    fmt::print("  {:>10.0f} {:>16.2f} {:>12} {:>10.0f}\n", unknowns, 1e3 * each,
               last_unknowns > 0
                 ? fmt::format("{:.2f}", std::log(each / last_time) / std::log(unknowns / last_unknowns))
                 : "",
               peak_memory());
    if (first_unknowns == 0)
      first_unknowns = unknowns, first_time = each;
    last_unknowns = unknowns, last_time = each;
  }
  fmt::print("  cost grows as unknowns to the power {:.2f}\n\n",
             std::log(last_time / first_time) / std::log(last_unknowns / first_unknowns));
}

void variants()
{
  constexpr unsigned n_variants = 200;
  const auto         drop_all = [&](int n_threads) {
    auto single = plain;
    single.estimate_error = false;
    tbb::task_arena arena(n_threads);
    const auto      time = timed([&] {
      arena.execute([&] {
        solver::in_parallel(n_variants, [&](std::size_t i) {
          auto input = b1_case();
          input.layers[0].thickness *= 0.8 + 0.4 * (i % 20) / 19;
          std::get<materials::FoamData>(input.layers[0].material.data).network[0].shear_modulus *=
            0.7 + 0.6 * (i / 20) / 9;
          (void)solver::run(input, single);
        });
      });
    });
    return n_variants / time.wall;
  };
  const double one = drop_all(1), two = drop_all(2);
  row("200 variants at 1 %, one thread [drops/s]", fmt::format("{:.1f}", one), ">= 15");
  row("200 variants at 1 %, two threads [drops/s]", fmt::format("{:.1f}", two), "");
  row("  parallel efficiency", fmt::format("{:.2f}", two / (2 * one)), ">= 0.9");
  row("peak memory of this process [MB]", fmt::format("{:.0f}", peak_memory()), "");
}
} // namespace

int main()
{
  row("", "measured", "promised");
  const Yardstick yardstick;
  blow(yardstick);
  assembly(yardstick);
  program();
  variants();
  cost_against_unknowns();
}
