// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/slide.h"

#include "geometry/tread_pattern.h"
#include "materials/contact_heat.h"
#include "solver/closed_run.h"
#include "solver/part_law.h"
#include "solver/results/catalogue.h"
#include "solver/results/energy_rows.h"
#include "solver/rig_parts.h"
#include "solver/time/no_balance.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
namespace
{
constexpr double mesh_share =
  0.7 / 1.2; ///< level of the lug's mesh over that of a stack at the same accuracy
constexpr double edge_fineness =
  1.2 / 0.7; ///< of the mesh where contact and pressure at the edge are asked for, not grip alone
constexpr double slip_share = 1e-5 / 3e-3; ///< elastic slip over lug height, at step tolerance 1
constexpr double least_cosine = 0.02; ///< below this a slide is along the bar: nothing shears the section
constexpr double least_driven =
  0.2; ///< of the way the section is slid, so that its pressure pattern gets steady too
constexpr double elastic_share = 0.3; ///< of the last shear, up to which the lug counts as elastic
constexpr double longest_run = 10;    ///< of a heat path along the bar, over the contact across it

/// The bar with height and skin of the layers: a change may replace one of these and keep the rig.
geometry::LugOutline outline_of(const Case &input, const SlideRig &rig)
{
  auto outline = rig.lug;
  outline.skin = input.layers.at(0).thickness;
  outline.height = input.layers.at(1).thickness;
  return outline;
}

/// A pad with free ends acts as a long bar of softer rubber.
materials::Material rubber_of(const Case &input, const SlideRig &rig)
{
  auto  material = input.layers.at(1).material;
  auto *rubber = std::get_if<materials::RubberData>(&material.data);
  if (rig.pad_length > 0 && rubber)
  {
    const double share =
      geometry::pad_stiffness_share(rig.lug.width, rig.pad_length, input.layers.at(1).thickness);
    for (double *coefficient : {&rubber->c10, &rubber->c20, &rubber->c30, &rubber->c01})
      *coefficient *= share;
  }
  return material;
}

/// One recorded state, beside what slide_process.h records.
struct Moment
{
  double axial = 0; ///< nominal shear along the bar [Pa]
  double grip = 0;  ///< along the heading [-]
};

class Slide
{
public:
  Slide(const Case &input, const SlideRig &rig, const Resolution &resolution, const RunOptions &options)
    : input_(input), rig_(rig), options_(options), friction_(rig.friction),
      cosine_(std::max(0.0, std::cos(rig.heading))), sine_(std::sin(rig.heading)),
      driven_(std::max(cosine_, least_driven)),
      model_({outline_of(input, rig), rubber_of(input, rig), input.layers.at(0).material, rig.neighbours},
             input, mesh_share * resolution.mesh_level,
             slip_share * input.layers.at(1).thickness * resolution.step_tolerance * driven_),
      integrator_(sliding_integrator(model_, resolution.open_parts)),
      step_share_(std::min(1.0, resolution.step_tolerance)), newton_tolerance_(resolution.newton_tolerance)
  {
    model_.court->set_shear_law([this](double pressure) {
      const auto [stress, slope] = friction_.traction(pressure, rig_.speed, input_.temperature);
      return ShearLimit{cosine_ * stress, cosine_ * slope};
    });
  }

  StudiedSlide run()
  {
    // In the section the court goes the share cos(heading) of its way in the same time.
    const SlideLoad load{.pressure = rig_.pressure,
                         .speed = rig_.speed * driven_,
                         .distance = rig_.distance * driven_,
                         .step_share = step_share_,
                         .newton_tolerance = newton_tolerance_};
    try
    {
      outcome_ =
        slide(model_, integrator_, load, [this](const SlideMoment &moment) { return record(moment); });
    }
    catch (const NoBalance &error)
    {
      fail(error.what());
    }
    if (outcome_.moments.empty())
      fail(outcome_.reason);
    curves();
    ledger();
    readings();
    result_.faces = {face_line(model_, outcome_.surface)};
    result_.faces[0].way = way_of(outcome_.moments.back());
    return {std::move(result_), std::move(outcome_)};
  }

private:
  [[noreturn]] void fail(const std::string &reason)
  {
    result_.complete = false;
    result_.stop_reason = reason;
    throw RunFailed(reason, std::move(result_));
  }

  bool record(const SlideMoment &moment)
  {
    Moment own;
    double sum = 0;
    for (const auto &point : model_.court->points(integrator_.x))
      if (point.pressure > 0)
        sum += friction(point.pressure) * mobilised(point, moment.way) * sine_ * point.length;
    own.axial = sum / model_.nominal_width();
    own.grip = moment.pressure > 0 ? (cosine_ * moment.shear + sine_ * own.axial) / moment.pressure : 0.0;
    moments_.push_back(own);
    energies_.record(integrator_);
    const double share = 0.1 + 0.9 * moment.way / (rig_.distance * driven_);
    return !options_.progress || options_.progress(share, "the slide");
  }

  /// mu p [Pa].
  double friction(double pressure) const
  {
    return friction_.traction(pressure, rig_.speed, input_.temperature)[0];
  }

  /// How far friction is called upon at a point, 0..1: as much along the bar as across it.
  double mobilised(const SlidingPointState &point, double way) const
  {
    const double limit = cosine_ * friction(point.pressure);
    if (cosine_ < least_cosine)
      return way > 0 ? 1 : 0;
    return limit > 0 ? std::min(1.0, std::abs(point.shear) / limit) : 0.0;
  }

  double way_of(const SlideMoment &moment) const { return moment.way / driven_; }

  void curves()
  {
    const auto &moments = outcome_.moments;
    const auto  add = [&](const char *name, const char *unit, const char *meaning, auto value) {
      Curve curve{name, unit, meaning, {}};
      for (std::size_t i = 0; i < moments.size(); ++i)
        curve.values.push_back(value(i));
      result_.curves.push_back(std::move(curve));
    };
    for (const auto &moment : moments)
      result_.time.push_back(moment.time);
    add("way", "m", "travel of the court along the heading",
        [&](std::size_t i) { return way_of(moments[i]); });
    add("pressure", "Pa", "force on the lug divided by the area of its fresh face",
        [&](std::size_t i) { return moments[i].pressure; });
    add("shear", "Pa", "friction along the heading divided by the area of the fresh face",
        [&](std::size_t i) { return moments_[i].grip * moments[i].pressure; });
    add("grip", "1", "friction along the heading divided by the force on the lug",
        [&](std::size_t i) { return moments_[i].grip; });
    add("contact_share", "1", "length in contact divided by the width of the fresh face",
        [&](std::size_t i) { return moments[i].contact_share; });
    add("deflection", "m", "deflection of the lug's face across the bar, along the motion of the court",
        [&](std::size_t i) { return moments[i].deflection; });
    add("offset", "m",
        "distance of the force from the middle of the deflected face, towards the trailing edge",
        [&](std::size_t i) { return moments[i].offset; });
    add("sink", "m", "travel of the court into the lug since first touch",
        [&](std::size_t i) { return moments[i].sink; });
  }

  /// Along the bar friction takes what the drive gives at once [J/m].
  std::vector<double> heat_along_bar() const
  {
    std::vector<double> heat{0};
    for (std::size_t i = 1; i < moments_.size(); ++i)
    {
      const double sheared = 0.5 * (moments_[i].axial + moments_[i - 1].axial);
      const double way = way_of(outcome_.moments[i]) - way_of(outcome_.moments[i - 1]);
      heat.push_back(heat.back() + sheared * model_.nominal_width() * sine_ * way);
    }
    return heat;
  }

  /// Energies per metre of bar.
  void ledger()
  {
    result_.ledger = energies_.moved();
    if (sine_ > 0)
      add_rubbed(result_.ledger, "court", "friction along the bar", "drive along the bar", heat_along_bar());
    double put_in = 0;
    for (const auto &known : result_.ledger)
      if (known.type == EnergyKind::exchanged)
        put_in -= known.values.back();
    result_.input_energy = std::max(put_in, 0.0);
    set_ledger_facts(result_, std::max(put_in, 1e-12));
  }

  void readings()
  {
    const auto  &moments = outcome_.moments;
    const auto  &last = moments.back();
    const double steady_from = last.way - outcome_.steady_way;
    double       grip = 0;
    int          n = 0;
    for (std::size_t i = 0; i < moments.size(); ++i)
      if (moments[i].way > steady_from)
        grip += moments_[i].grip, ++n;
    grip = n > 0 ? grip / n : moments_.back().grip;

    add_reading(result_, catalogue.effective_grip, grip,
                "friction along the slide divided by the force on the lug, in the steady part");
    add_reading(result_, catalogue.contact_share, last.contact_share,
                "length in contact divided by the width of the fresh face, at the end");
    add_reading(result_, catalogue.edge_pressure, windowed_peak(outcome_.surface, edge_window),
                "highest mean pressure over 0.25 mm of the surface, at the end");
    lifts();
    add_reading(result_, catalogue.deflection, last.deflection,
                "deflection of the lug's face across the bar at the end, mean");
    if (const double stiffness = first_stiffness(); stiffness > 0)
      add_reading(result_, catalogue.lug_shear_stiffness, stiffness,
                  "nominal shear divided by deflection of the face, in the first part, where the lug sticks");
    beam_parts();
    if (const double work = work_per_way(); work > 0)
      add_reading(
        result_, catalogue.friction_work, work,
        "work of friction per area of the fresh face and per distance: joule per square metre and metre");
    add_reading(
      result_, catalogue.temperature_rise, temperature_rise(grip),
      "warming of the face after the whole distance: even heating, straight down, floor fresh under the lug");
    if (outcome_.wall_contact > 0)
      add_reading(result_, catalogue.wall_contact, outcome_.wall_contact,
                  "length of the walls lying on the court at the end");
    add_reading(result_, catalogue.steady_way, outcome_.steady_way / driven_,
                "travel of the court in the steady part");

    result_.time_of_peak = result_.time.back();
    result_.facts.unknowns = model_.equation.size();
    result_.facts.cells = model_.mesh->cells().size();
    result_.facts.steps = integrator_.n_steps;
    result_.facts.repeated_steps = integrator_.n_repeated;
    result_.facts.iterations = integrator_.n_iterations;
    if (outcome_.end != SlideEnd::steady)
      result_.warnings.push_back({catalogue.effective_grip, outcome_.reason});
  }

  /// Shares of the flat face that are off the court at its ends. The court moves to the right: the right end
  /// trails.
  void lifts()
  {
    const double                           flat = geometry::lug_wall(model_.cell.outline).edge_center[0];
    std::vector<const SlidingPointState *> face;
    for (const auto &point : outcome_.surface)
      if (std::abs(point.at_rest[0]) < flat)
        face.push_back(&point);
    std::sort(face.begin(), face.end(),
              [](const auto *a, const auto *b) { return a->at_rest[0] < b->at_rest[0]; });
    const auto touches = [](const auto *point) { return point->pressure > 0; };
    const auto first = std::find_if(face.begin(), face.end(), touches);
    const auto behind = std::find_if(face.rbegin(), face.rend(), touches).base();
    // Contact ends between two points: so much less is off than the whole points that are.
    const bool   lead_is_off = first != face.begin() && first != face.end();
    const bool   trail_is_off = behind != face.begin() && behind != face.end();
    const double ahead = lead_is_off ? contact_overhang(**first, **std::prev(first)) : 0.0;
    const double aft = trail_is_off ? contact_overhang(**std::prev(behind), **behind) : 0.0;
    const auto   length = [](auto from, auto to) {
      double sum = 0;
      for (; from != to; ++from)
        sum += (*from)->length;
      return sum;
    };
    const double whole = length(face.begin(), face.end());
    const bool   none = first == face.end();
    add_reading(result_, catalogue.leading_lift,
                none ? 0.0 : std::max(0.0, length(face.begin(), first) - ahead) / whole,
                "share of the flat face that is off the court at its leading end");
    add_reading(result_, catalogue.trailing_lift,
                none ? 1.0 : std::max(0.0, length(behind, face.end()) - aft) / whole,
                "share of the flat face that is off the court at its trailing end");
  }

  /// Shear over deflection while the lug still sticks [Pa/m]; 0: the section is not sheared.
  double first_stiffness() const
  {
    const auto &moments = outcome_.moments;
    if (cosine_ < least_cosine)
      return 0;
    std::size_t start = 0;
    while (start + 1 < moments.size() && moments[start + 1].way <= 0)
      ++start;
    std::size_t end = start + 1;
    while (end + 1 < moments.size() && moments[end + 1].shear < elastic_share * moments.back().shear)
      ++end;
    if (end >= moments.size())
      return 0;
    const double deflection = moments[end].deflection - moments[start].deflection;
    return deflection > 0 ? (moments[end].shear - moments[start].shear) / deflection : 0.0;
  }

  /// What bending and what shearing alone would give: short beam between ends that stay parallel, d/F =
  /// h^3/(12 E' I) + h/(5/6 G A) per metre of bar, E' = E/(1 - nu^2) (handbook).
  void beam_parts()
  {
    const double modulus = equilibrium_modulus(model_.cell.lug, input_),
                 ratio = model_.cell.outline.width / model_.cell.outline.height;
    add_reading(result_, catalogue.bending_stiffness,
                modulus / 0.75 * ratio * ratio / model_.cell.outline.height,
                "nominal shear divided by deflection in bending only, by the short-beam formula");
    add_reading(result_, catalogue.shearing_stiffness, 5. / 6 * modulus / 3 / model_.cell.outline.height,
                "nominal shear divided by deflection in shear only, by the short-beam formula");
  }

  /// Since the slide is steady, or since the beginning [J/m3].
  double work_per_way() const
  {
    const double way = outcome_.steady_way > 0 ? outcome_.steady_way : outcome_.moments.back().way;
    if (way <= 0)
      return 0;
    // Slip across the bar is the share cos(heading) of the slip, as `way` is of the way.
    double sum = 0;
    for (const auto &point : outcome_.surface)
      if (point.pressure > 0)
        sum += friction(point.pressure) / point.pressure * point.pressure_slid * point.length;
    return sum / (model_.nominal_width() * way);
  }

  /// Constant heating of the touching face for the time of the whole slide [K].
  double temperature_rise(double grip) const
  {
    const double share = outcome_.moments.back().contact_share;
    if (share <= 0 || grip <= 0)
      return 0;
    const double contact = share * model_.nominal_width(), time = rig_.distance / rig_.speed;
    const double length = contact / std::max(cosine_, 1 / longest_run);
    const double into_lug =
      materials::sliding_heat_share(rig_.lug_heat, rig_.court_heat, length, rig_.speed, time);
    return materials::constant_flux_rise(rig_.lug_heat, into_lug * grip * rig_.pressure / share * rig_.speed,
                                         time);
  }

  const Case              &input_;
  const SlideRig          &rig_;
  const RunOptions        &options_;
  materials::CourtFriction friction_;
  double                   cosine_, sine_, driven_;
  LugModel                 model_;
  TimeIntegrator           integrator_;
  double                   step_share_;       ///< of the regular steps [-]
  double                   newton_tolerance_; ///< relative to the default [-]
  SlideOutcome             outcome_;
  std::vector<Moment>      moments_;
  /// The court comes down.
  EnergyRows energies_{{}, false, {.part = rig_part::press, .kind = "first touch"}};
  Result     result_;
};
} // namespace

StudiedSlide study_slide(const Case &input, const SlideRig &rig, const Resolution &resolution,
                         const RunOptions &options)
{
  return closed_run(resolution, [&](const Resolution &now) { return Slide(input, rig, now, options).run(); });
}

Result run_slide(const Case &input, const SlideRig &rig, const Resolution &resolution,
                 const RunOptions &options)
{
  Resolution for_the_edge = resolution;
  for_the_edge.mesh_level *= edge_fineness;
  return study_slide(input, rig, for_the_edge, options).result;
}

} // namespace solemech::solver
