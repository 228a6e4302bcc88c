// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/wear.h"

#include "materials/abrasion_bench.h"
#include "solver/part_law.h"
#include "solver/results/catalogue.h"
#include "solver/results/energy_rows.h"
#include "solver/rigs/slide.h"
#include "solver/wear_process.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
namespace
{
constexpr double      jump_tolerance = 2e-3; ///< of the lug's height, at step tolerance 1
constexpr double      first_jump = 3e-3;     ///< of the lug's height
constexpr double      early_depth = 0.03;    ///< of the wished depth: until then a lug has begun to wear
constexpr std::size_t kept_faces = 6;        ///< fresh and worn ones, for pictures

/// Of a rubber, from the one that is known [1/Pa].
double coefficient_of(const materials::Material &rubber, const WearLife &wear)
{
  // Young's modulus at rest, as the reader of cases takes it for the reference rubber.
  const double modulus = std::get<materials::RubberData>(rubber.data).youngs_modulus();
  return materials::court_wear_of({.youngs_modulus = modulus}, materials::CourtWear(wear.coefficient),
                                  {.youngs_modulus = wear.reference_modulus})
    .value();
}

class Life
{
public:
  Life(const Case &input, const SlideRig &rig, const Resolution &resolution, const RunOptions &options)
    : input_(input), rig_(rig), wear_(*rig.wear), resolution_(resolution), options_(options)
  {
  }

  Result run()
  {
    auto fresh = rig_.lug;
    fresh.skin = input_.layers.at(0).thickness, fresh.height = input_.layers.at(1).thickness;
    const double modulus = equilibrium_modulus(input_.layers[1].material, input_);
    coefficient_ = coefficient_of(input_.layers[1].material, wear_);
    const WearControl control{.depth = wear_.depth,
                              .tolerance = jump_tolerance * fresh.height * resolution_.step_tolerance,
                              .first_jump = first_jump * fresh.height,
                              .conforming = coefficient_ * modulus * 4 / 3,
                              .to_and_fro = wear_.to_and_fro};
    history_ = wear_down(
      fresh, [this](const geometry::LugOutline &outline) { return slide_on(outline); }, control,
      [this](const WearState &state) {
        return !options_.progress ||
               options_.progress(std::min(1.0, state.depth / wear_.depth), "wear of the lug");
      });
    curves();
    readings();
    faces();
    return std::move(result_);
  }

private:
  ProfileSlide slide_on(const geometry::LugOutline &outline)
  {
    SlideRig now = rig_;
    now.lug = outline;
    now.wear.reset();
    RunOptions quiet;
    quiet.pictures = false;
    const bool   is_fresh = outline.worn_face.empty();
    ProfileSlide slide;
    try
    {
      auto        study = study_slide(input_, now, resolution_, quiet);
      const auto &outcome = study.outcome;
      auto       &facts = result_.facts;
      facts.unknowns = std::max(facts.unknowns, study.result.facts.unknowns);
      facts.cells = std::max(facts.cells, study.result.facts.cells);
      facts.steps += study.result.facts.steps, facts.iterations += study.result.facts.iterations;
      slide.stands = outcome.end == SlideEnd::steady || outcome.end == SlideEnd::way_is_over;
      slide.reason = outcome.reason;
      for (const auto &point : outcome.surface)
      {
        // What slides goes the whole way of the court; before it is steady the pressure of the end stands for
        // it.
        const double pressure =
          outcome.steady_way > 0 ? point.pressure_slid / outcome.steady_way : point.pressure;
        slide.losses.push_back(
          {point.at_rest[0], coefficient_ * pressure * point.length, std::max(0.0, point.gap), point.face});
      }
      slide.grip = study.result.find(catalogue.effective_grip)->value;
      slide.contact_share = study.result.find(catalogue.contact_share)->value;
      slide.face = study.result.faces.front();
      slide.edge_pressure = windowed_peak(outcome.surface, edge_window);
      if (is_fresh)
        fresh_ = std::move(study.result);
    }
    catch (const RunFailed &failure)
    {
      if (is_fresh)
        throw;
      slide.stands = false;
      slide.reason = failure.what();
    }
    return slide;
  }

  void curves()
  {
    const auto add = [&](const char *name, const char *unit, const char *meaning, auto value) {
      Curve curve{name, unit, meaning, {}};
      for (const auto &state : history_.states)
        curve.values.push_back(value(state));
      result_.curves.push_back(std::move(curve));
    };
    for (const auto &state : history_.states)
      result_.time.push_back(state.way / rig_.speed);
    add("way", "m", "of slip since the lug was fresh", [](const auto &state) { return state.way; });
    add("steps", "1", "with the slip of one step", [&](const auto &state) { return state.way / wear_.slip; });
    add("depth", "m", "lost, mean over the face", [](const auto &state) { return state.depth; });
    add("greatest_depth", "m", "lost where most is lost", [](const auto &state) { return state.greatest; });
    add("grip", "1", "friction along the heading divided by the force on the lug",
        [](const auto &state) { return state.slide.grip; });
    add("contact_share", "1", "length in contact divided by the width of the fresh face",
        [](const auto &state) { return state.slide.contact_share; });
    add("edge_pressure", "Pa", "highest mean pressure over 0.25 mm of the surface",
        [](const auto &state) { return state.slide.edge_pressure; });
    double work = 0;
    auto   heat = std::vector<double>{0};
    for (std::size_t i = 1; i < history_.states.size(); ++i)
    {
      const auto &a = history_.states[i - 1], &b = history_.states[i];
      work += 0.5 * (a.slide.grip + b.slide.grip) * rig_.pressure * rig_.lug.width * (b.way - a.way);
      heat.push_back(work);
    }
    add_rubbed(result_.ledger, "court", "friction", "drive", heat);
    result_.input_energy = work;
    set_ledger_facts(result_, std::max(work, 1e-12));
  }

  void readings()
  {
    const auto  &first = history_.states.front(), &last = history_.states.back();
    const double rate = coefficient_ * rig_.pressure; // of the mean depth: the force stays
    const double way = last.depth > 0 ? wear_.depth * last.way / last.depth : wear_.depth / rate;
    add_reading(result_, catalogue.effective_grip, first.slide.grip,
                "friction along the slide divided by the force on the lug, fresh");
    add_reading(result_, catalogue.worn_grip, last.slide.grip, "the same at the end of the wear");
    add_reading(result_, catalogue.life_steps, way / wear_.slip,
                "steps until the chosen depth is gone, with the given slip per step");
    add_reading(result_, catalogue.life_steps_lowest, way / wear_.slip * wear_.coefficient / wear_.highest,
                "the same at the upper bound of wear");
    add_reading(result_, catalogue.life_steps_highest, way / wear_.slip * wear_.coefficient / wear_.lowest,
                "the same at the lower bound of wear");
    add_reading(result_, catalogue.relative_life, wear_.coefficient / coefficient_,
                "life divided by that of the reference rubber, same lug and court");
    add_reading(result_, catalogue.depth_per_way, last.way > 0 ? last.depth / last.way : rate,
                "mean depth lost per distance of slip");
    add_reading(result_, catalogue.worn_depth, last.depth, "depth lost at the end, mean over the face");
    add_reading(result_, catalogue.greatest_worn_depth, last.greatest, "greatest depth lost at the end");
    add_reading(result_, catalogue.edge_pressure, first.slide.edge_pressure,
                "highest mean pressure over 0.25 mm of the surface, fresh");
    add_reading(result_, catalogue.worn_edge_pressure, last.slide.edge_pressure,
                "the same at the end of the wear");
    add_reading(result_, catalogue.first_wear_place, first_place(),
                "where most is lost at first: 0 is the leading end of the face, 1 the trailing end");
    if (const auto *rise = fresh_.find(catalogue.temperature_rise))
      result_.readings.push_back(*rise);
    if (wear_.known_hours > 0)
      add_reading(result_, catalogue.life_hours, wear_.known_hours * wear_.depth / wear_.known_depth,
                  "playing time until the chosen depth is gone, from the known worn pair");
    if (wear_.known_hours > 0 && wear_.steps_per_second > 0)
    {
      const double steps = wear_.known_hours * wear_.steps_per_second;
      add_reading(result_, catalogue.pair_life_steps, steps * wear_.depth / wear_.known_depth,
                  "steps until the chosen depth is gone, from the known worn pair");
      // The way that the model needs for the known depth at the coefficient given, over the way of the pair.
      add_reading(result_, catalogue.pair_coefficient,
                  wear_.coefficient * way * wear_.known_depth / wear_.depth / (steps * wear_.slip),
                  "wear of the reference rubber on this court, from the worn pair: volume per force and "
                  "sliding distance");
    }
    if (last.lost > 0)
      add_reading(result_, catalogue.volume_balance, last.lost / last.asked - 1,
                  "section lost by the drawn faces divided by the section that the slides take, minus one");
    result_.time_of_peak = result_.time.back();
    result_.facts.repeated_steps = static_cast<std::size_t>(history_.repeated);
    if (!history_.reason.empty())
      result_.warnings.push_back({catalogue.worn_depth, fmt::format("the wear ends at {:.2f} mm: {}",
                                                                    1e3 * last.depth, history_.reason)});
  }

  /// From the first state in which the wear can be seen.
  double first_place() const
  {
    const auto seen =
      std::find_if(history_.states.begin(), history_.states.end(),
                   [&](const WearState &state) { return state.depth > early_depth * wear_.depth; });
    const auto &face = (seen == history_.states.end() ? history_.states.back() : *seen).face;
    double      deepest = 0, place = 0;
    for (const auto &[x, z] : face)
      if (const double depth = geometry::surface_height_at(rig_.lug, x) - z;
          std::abs(x) < 0.5 * rig_.lug.width && depth > deepest)
        deepest = depth, place = x;
    return std::clamp(0.5 + place / rig_.lug.width, 0.0, 1.0);
  }

  void faces()
  {
    const std::size_t n = history_.states.size(), kept = std::min(n, kept_faces);
    for (std::size_t i = 0; i < kept; ++i)
    {
      // By depth, not by number: jumps grow.
      const double wished = history_.states.back().depth * static_cast<double>(i) /
                            static_cast<double>(std::max<std::size_t>(kept - 1, 1));
      const auto state =
        std::min_element(history_.states.begin(), history_.states.end(), [&](const auto &a, const auto &b) {
          return std::abs(a.depth - wished) < std::abs(b.depth - wished);
        });
      if (!result_.faces.empty() && result_.faces.back().way == state->way)
        continue;
      result_.faces.push_back(state->slide.face);
      result_.faces.back().way = state->way;
    }
  }

  const Case       &input_;
  const SlideRig   &rig_;
  const WearLife   &wear_;
  const Resolution &resolution_;
  const RunOptions &options_;
  double            coefficient_ = 0; ///< of the rubber of the lug [1/Pa]
  WearHistory       history_;
  Result            fresh_, result_;
};
} // namespace

Result run_wear(const Case &input, const SlideRig &rig, const Resolution &resolution,
                const RunOptions &options)
{
  return Life(input, rig, resolution, options).run();
}
} // namespace solemech::solver
