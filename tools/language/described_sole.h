// SPDX-License-Identifier: Apache-2.0
// A whole sole: members as a drawing or a run sees them, and the entries of the blocks of a sole file. A row
// of values (thickness, inset, half widths) is one value or a list.
#pragma once

#include "solver/sole.h"
#include "tools/language/described_case.h"

namespace solemech::tools
{
// Tables: a row is read as one line.
// clang-format off
template <>
struct Description<geometry::HalfWidths>
{
  using S = geometry::HalfWidths;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::medial, "medial")
      .as(Dimension::length, within(0.001, 0.15), "",
          "Seven distances from the middle line to the inner (big toe) edge, at 6, 16, 35 (waist), 50, 64, 74 "
          "(ball) and 90 % of the length from the heel.", "", "points"),
    member(&S::lateral, "lateral")
      .as(Dimension::length, within(0.001, 0.15), "",
          "The same seven distances to the outer (little toe) edge.", "", "points"));
};

template <>
struct Description<geometry::OutlineShape>
{
  using S = geometry::OutlineShape;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::length, "length")
      .as(Dimension::length, within(0.1, 0.5), required,
          "From the rearmost point of the heel to the tip of the toe, along the sole. A trace is scaled to it."),
    part(&S::half_widths),
    said("points", Dimension::file, any_value, "",
         "CSV file with points of the traced edge in order, x and y in one unit, in the folder of the sole file. 24 to "
         "5000 of them.", "", "path"),
    said("path", Dimension::file, any_value, "",
         "SVG drawing with one closed path, in the folder of the sole file.", "", "points"),
    said("toe", Dimension::choice, any_value, "up", "Which way the toe points in the trace.",
         "up|right|down|left"),
    said("foot", Dimension::choice, any_value, "left",
         "Which sole was traced, seen from above. Soles are shown as left ones.", "left|right"),
    rows(&S::trace, "trace", "x", "y"),
    member(&S::ball_medial, "ball_medial")
      .as(Dimension::length, within(0, 0.5), "",
          "Distance of the ball point at the inner edge (big toe joint) from the heel. Default: 73 % of the length."),
    member(&S::ball_lateral, "ball_lateral")
      .as(Dimension::length, within(0, 0.5), "",
          "Distance of the ball point at the outer edge from the heel. Default: 64 % of the length."));
};

template <>
struct Description<geometry::BottomShape>
{
  using S = geometry::BottomShape;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::heel_bevel_start, "heel_bevel_start")
      .as(Dimension::length, within(0, 0.3), "", "Where the heel begins to lift off the floor, from the heel."),
    member(&S::heel_bevel_rise, "heel_bevel_rise")
      .as(Dimension::length, within(0, 0.05), "0 mm", "Gap under the rearmost point of the heel."),
    member(&S::toe_spring_start, "toe_spring_start")
      .as(Dimension::length, within(0, 0.5), "",
          "Where the toe begins to lift off the floor, from the heel. Default: 5 mm behind the ball."),
    member(&S::toe_spring_rise, "toe_spring_rise")
      .as(Dimension::length, within(0, 0.08), "0 mm", "Gap under the tip of the toe."),
    member(&S::rocker_radius, "rocker_radius")
      .as(Dimension::length, above_to(0, 10), "",
          "Radius of the arc with which the toe lifts; then straight to the tip. Default: one arc to the tip."));
};

template <>
struct Description<geometry::SlotShape>
{
  using S = geometry::SlotShape;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::from, "from").as(Dimension::length, within(0, 0.5), required, "Where it begins, from the heel."),
    member(&S::to, "to")
      .as(Dimension::length, within(0, 0.5), required,
          "Where it ends. It is open, and the plate forked, when this lies beyond the plate."),
    member(&S::middle, "middle")
      .as(Dimension::length, within(-0.1, 0.1), "0 mm",
          "Distance of its middle from the middle line of the sole, to the outer side: one value, or two for "
          "both ends."),
    member(&S::width, "width")
      .as(Dimension::length, above_to(0, 0.15), required, "Its width: one value, or two for both ends."));
};

template <>
struct Description<geometry::LayerShape>
{
  using S = geometry::LayerShape;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::thickness, "thickness")
      .as(Dimension::length, within(geometry::least_layer_thickness, 0.1), required,
          "Thickness: one value, or five at heel edge, heel (16 % of the length), waist (35 %), ball line and toe "
          "tip."),
    member(&S::from, "from")
      .as(Dimension::length, within(0, 0.5), "0 mm", "Where the layer begins, from the heel."),
    member(&S::to, "to")
      .as(Dimension::length, within(0, 0.5), "", "Where the layer ends. Default: the tip of the toe."),
    member(&S::inset, "inset")
      .as(Dimension::length, within(0, 0.1), "0 mm",
          "Distance of its edge from the edge of the sole: one value, or four at heel, waist, ball and toes."),
    said("medial", Dimension::length, within(0.001, 0.15), "",
         "Its own edge on the inner side, as in [outline]: one value, or seven.", "", "inset"),
    said("lateral", Dimension::length, within(0.001, 0.15), "",
         "Its own edge on the outer side.", "", "inset"),
    said("filled_by", Dimension::text, any_value, "",
         "Layer whose material fills what this one leaves free. Default: the layer above it, of the first one "
         "the layer below."),
    member(&S::own, "own"),
    said("slot", Dimension::blocks, any_value, "", "Slots of a plate: forks, windows, a horseshoe."),
    member(&S::slots, "slot"), member(&S::host, "host"));
};

template <>
struct Description<geometry::PlanFigure>
{
  using S = geometry::PlanFigure;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::form, "form")
      .as(Dimension::choice, any_value, "ellipse", "Form in plan: an ellipse, or a box with rounded corners.",
          "ellipse|box"),
    member(&S::x, "x").as(Dimension::length, within(0, 0.5), required, "Its middle, from the heel."),
    member(&S::y, "y")
      .as(Dimension::length, within(-0.15, 0.15), "0 mm",
          "Its middle, from the middle line to the outer side; negative on the inner side."),
    member(&S::length, "length").as(Dimension::length, above_to(0, 0.5), required, "Its length."),
    member(&S::width, "width").as(Dimension::length, above_to(0, 0.2), required, "Its width."),
    member(&S::corner, "corner")
      .as(Dimension::length, within(0, 0.1), "0 mm", "Radius of the corners of a box."),
    member(&S::turned, "turned")
      .as(Dimension::angle, within(-described::degree * 180, described::degree * 180), "0 deg",
          "Angle of its length against the foot's, towards the outer side."));
};

template <>
struct Description<geometry::PocketShape>
{
  using S = geometry::PocketShape;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    part(&S::plan), member(&S::layer, "layer"),
    member(&S::floor, "floor")
      .as(Dimension::length, within(0, 0.1), "0 mm", "What the pocket leaves of the layer under it."),
    member(&S::roof, "roof")
      .as(Dimension::length, within(0, 0.1), "0 mm", "What it leaves of the layer over it."));
};

template <>
struct Description<geometry::PatchShape>
{
  using S = geometry::PatchShape;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::kind, "kind"), part(&S::plan),
    member(&S::depth, "depth")
      .as(Dimension::length, above_to(0, 0.05), required,
          "Depth of the groove, or of the gaps round a pod. Less than the outsole."),
    member(&S::coverage, "coverage")
      .when([](const S &patch) { return patch.kind == S::Kind::pod; })
      .as(Dimension::share, within(0.05, 1), "100 %",
          "Share of a pod with a fine pattern that is rubber down to the floor."));
};

template <>
struct Description<materials::Ply>
{
  using S = materials::Ply;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::modulus_along, "modulus_along")
      .as(Dimension::pressure, above_to(0, 1e12), required, "Young's modulus along its fibres."),
    member(&S::modulus_across, "modulus_across")
      .as(Dimension::pressure, above_to(0, 1e12), required, "Young's modulus across its fibres."),
    member(&S::shear_modulus, "shear_modulus")
      .as(Dimension::pressure, above_to(0, 1e12), required, "Shear modulus in its plane."),
    member(&S::poisson_ratio, "poisson_ratio")
      .as(Dimension::number, within(0, 0.5), "0.3",
          "Strain across the fibres divided by strain along them, under a pull along them."),
    member(&S::thickness, "thickness").as(Dimension::length, within(0.02e-3, 0.01), required, "Its thickness."),
    member(&S::angle, "angle")
      .as(Dimension::angle, within(-described::degree * 90, described::degree * 90), "0 deg",
          "Angle of its fibres against the length of the foot, towards the outer side."));
};

template <>
struct Description<materials::FlexuralData>
{
  using S = materials::FlexuralData;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::modulus_along, "modulus_along")
      .as(Dimension::pressure, above_to(0, 1e12), required, "From bending it along the foot."),
    member(&S::modulus_across, "modulus_across")
      .as(Dimension::pressure, above_to(0, 1e12), required, "From bending it across the foot."),
    member(&S::shear_modulus, "shear_modulus")
      .as(Dimension::pressure, above_to(0, 1e12), required, "Shear modulus in its plane, from twisting it."),
    member(&S::poisson_ratio, "poisson_ratio")
      .as(Dimension::number, within(0, 0.5), "0.3",
          "Strain across divided by strain along, under a pull along the foot."));
};

template <>
struct Description<solver::SoleLayer>
{
  using S = solver::SoleLayer;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::name, "name")
      .as(Dimension::text, any_value, required, "Name of the layer; unique in the sole."),
    said("material", Dimension::text, any_value, required, "Material of the layer."),
    member(&S::material, "material"), part(&S::shape),
    said("ply", Dimension::blocks, any_value, "", "Plies of a laminated plate, foot side first."),
    said("flexural", Dimension::block, any_value, "", "Moduli of a plate, from bending it."),
    said("pocket", Dimension::blocks, any_value, "", "Hollows in the layer, with or without an air unit."),
    member(&S::plies, "ply"), member(&S::flexural, "flexural"));
};

template <>
struct Description<solver::SolePocket>
{
  using S = solver::SolePocket;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    part(&S::shape),
    said("unit", Dimension::block, any_value, "", "The air unit that fills it. Without it the pocket is empty."),
    member(&S::unit, "unit"));
};

template <>
struct Description<solver::Sole>
{
  using S = solver::Sole;
  static constexpr std::size_t left_out = 0;
  static constexpr auto shown = std::tuple(
    member(&S::label, "label"), member(&S::title, "title"), member(&S::note, "note"),
    member(&S::invented, "invented"));
  static constexpr auto members = std::tuple(
    member(&S::outline, "outline"), member(&S::bottom, "bottom"), member(&S::layers, "layer"),
    member(&S::pockets, "pocket"), member(&S::patches, "patch"));
};
} // namespace solemech::tools
