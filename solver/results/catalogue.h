// SPDX-License-Identifier: Apache-2.0
// The catalogue of readings, one row each, in the order of the summary. A new reading is its row here and the
// rig that gives it: tables, pages, comparisons, trials, sheets, [[expect]] and measures follow. What a row
// can say is in reading_kind.h. A definition for people stands beside each value in its rig, since it differs
// from rig to rig.
#pragma once

#include "solver/results/reading_kind.h"
#include "solver/results/result.h"

#include <algorithm>
#include <array>
#include <bit>
#include <span>
#include <type_traits>
#include <vector>

namespace solemech::solver
{
struct Catalogue
{
  // A row is read as one block.
  // clang-format off
  // A drop weight, and what a press shares with it.
  ReadingKind rebound_by_height{
    .name = "rebound_by_height",
    .unit = "1",
    .label = "rebound, share of the drop height",
    .shown = {"%", 1e2, 1},
    .given_by = {RigKind::drop},
    .headline = true,
    .sets_accuracy = true,
    .line = {"rebound (return by height)", "rebound %", LineForm::rebound},
    .beside = "rebound_height",
    .rule = "Rule: the weight leaves the stack at some speed, the guide takes its share on the way up, and "
            "the rest carries it up. The reading is that rise divided by the drop height.",
    .least_error = {0.004, 0.002},
    .compared = {.place = 10,
                 .label = "rebound",
                 .more = "higher",
                 .less = "lower",
                 .real_difference = 0.02,
                 .share_error_in_points = true},
    .tried = {10, "rebound", Wish::more, true, "rebounds higher", "rebounds lower",
              "higher rebound ({})", "lower rebound ({})"},
    .main = {10, 10, "rebound", "rebound", "rebounds higher"},
    .usual = {0.05, 0.97},
    .expected = "Rise divided by fall."};
  ReadingKind rebound_height{.name = "rebound_height",
                             .unit = "m",
                             .label = "rebound",
                             .shown = {"mm", 1e3, 0},
                             .given_by = {RigKind::drop},
                             .follows = "rebound_by_height",
                             .on_sheet = "rebound",
                             .usual = {5e-3, 2},
                             .expected = "Rise above the level of first touch."};
  ReadingKind rebound_of_hit{.name = "rebound_by_height.hit_",
                             .unit = "1",
                             .label = "rebound of hit {}",
                             .shown = {"%", 1e2, 1},
                             .given_by = {RigKind::drop},
                             .least_error = {0.004, 0.002}};

  // A hardness gauge.
  ReadingKind hardness{
    .name = "hardness",
    .unit = "points",
    .label = "hardness",
    .shown = {"points", 1, 1},
    .given_by = {RigKind::gauge},
    .headline = true,
    .sets_accuracy = true,
    .line = {"hardness", "hardness", LineForm::points},
    .least_error = {0.003, 0.001},
    .compared = {.place = 120, .label = "hardness", .more = "harder", .less = "softer", .real_difference = 1},
    .tried = {90, "hardness", Wish::neither, false, "reads harder", "reads softer"},
    .main = {50, 50, "hardness", "hardness", "reads harder"},
    .expected = "Reading of a hardness gauge, in points of its scale."};

  // An abrasion bench.
  ReadingKind ground_depth{
    .name = "ground_depth",
    .unit = "m",
    .label = "depth ground by the abrasive",
    .shown = {"mm", 1e3, 2},
    .given_by = {RigKind::abrasion},
    .headline = true,
    .line = {"ground away", "ground mm", LineForm::fine_length},
    .compared =
      {.place = 150, .label = "depth ground", .more = "deeper", .less = "shallower", .real_share = 0.03},
    .tried = {160, "ground away", Wish::less, false, "ground deeper", "ground shallower"},
    .main = {80, 70, "depth", "depth", "is ground deeper"},
    .expected = "Depth that an abrasion bench ground."};
  ReadingKind ground_depth_lowest{.name = "ground_depth_lowest",
                                  .unit = "m",
                                  .label = "depth at the lower bound",
                                  .shown = {"mm", 1e3, 2},
                                  .given_by = {RigKind::abrasion},
                                  .line = {"  lower, upper bound", "", LineForm::range},
                                  .beside = "ground_depth_highest"};
  ReadingKind ground_depth_highest{.name = "ground_depth_highest",
                                   .unit = "m",
                                   .label = "depth at the upper bound",
                                   .shown = {"mm", 1e3, 2},
                                   .given_by = {RigKind::abrasion}};
  ReadingKind ground_volume{.name = "ground_volume",
                            .unit = "m3",
                            .label = "volume ground off",
                            .shown = {"mm³", 1e9, 1},
                            .given_by = {RigKind::abrasion},
                            .headline = true,
                            .line = {.heading = "volume ground off", .column = "mm3", .unit = "mm3"},
                            .expected = "Volume ground off."};
  ReadingKind through_time{.name = "through_time",
                           .unit = "s",
                           .label = "time until the piece was worn through",
                           .shown = {"s", 1, 1},
                           .given_by = {RigKind::abrasion},
                           .line = {"worn through after", "through s"},
                           .expected = "Time until the piece was worn through."};
  ReadingKind loss_over_reference{
    .name = "loss_over_reference",
    .unit = "1",
    .label = "loss divided by that of the reference rubber",
    .shown = {"", 1, 2},
    .given_by = {RigKind::abrasion},
    .line = {"loss vs the reference rubber", "taken x"},
    .expected = "Loss of the outermost layer divided by that of the reference rubber."};
  ReadingKind face_rise{.name = "face_rise",
                        .unit = "K",
                        .label = "warming of the face, upper bound",
                        .shown = {"K", 1, 0},
                        .given_by = {RigKind::abrasion},
                        .headline = true,
                        .line = {"face warms by at most", "warm K"},
                        .compared = {.place = 160,
                                     .label = "warming of the face",
                                     .more = "warmer",
                                     .less = "cooler",
                                     .real_share = 0.1,
                                     .split = false}};
  ReadingKind found_volume{.name = "found_volume",
                           .unit = "m3",
                           .label = "relative volume loss by ISO 4649",
                           .shown = {"mm³", 1e9, 1},
                           .given_by = {RigKind::abrasion},
                           .line = {.heading = "loss by the standard", .column = "loss mm3", .unit = "mm3"},
                           .expected = "Relative volume loss by ISO 4649, from the masses lost."};
  ReadingKind found_loss{.name = "found_loss",
                         .unit = "1/Pa",
                         .label = "loss of the outermost layer, as the bench found",
                         .shown = {"mm³/(N m)", 1e9, 3},
                         .given_by = {RigKind::abrasion},
                         .line = {.heading = "found on the bench", .column = "found", .unit = "mm3/(N m)"}};
  ReadingKind found_over_expected{.name = "found_over_expected",
                                  .unit = "1",
                                  .label = "found divided by expected",
                                  .shown = {"", 1, 2},
                                  .given_by = {RigKind::abrasion},
                                  .line = {.heading = "  vs expected", .unit = "x"}};
  ReadingKind rubbing_speed{.name = "rubbing_speed",
                            .unit = "m/s",
                            .label = "speed of the abrasive over the piece",
                            .shown = {"m/s", 1, 2},
                            .given_by = {RigKind::abrasion}};
  ReadingKind rubbing_power{.name = "rubbing_power",
                            .unit = "W",
                            .label = "power of the rubbing",
                            .shown = {"W", 1, 1},
                            .given_by = {RigKind::abrasion}};
  ReadingKind abrasive_loss{.name = "abrasive_loss",
                            .unit = "1/Pa",
                            .label = "loss of the outermost layer",
                            .shown = {"mm³/(N m)", 1e9, 3},
                            .given_by = {RigKind::abrasion}};
  ReadingKind groove_width{.name = "groove_width",
                           .unit = "m",
                           .label = "width of the groove",
                           .shown = {"mm", 1e3, 1},
                           .given_by = {RigKind::abrasion}};

  // A lug that is worn down.
  ReadingKind life_steps{.name = "life_steps",
                         .unit = "1",
                         .label = "steps until the depth is gone",
                         .shown = {"thousand", 1e-3, 0},
                         .given_by = {RigKind::wear},
                         .headline = true,
                         .line = {"life in steps", "steps", LineForm::count},
                         .compared = {.place = 130,
                                      .label = "life",
                                      .more = "longer",
                                      .less = "shorter",
                                      .real_share = 0.03,
                                      .unit = "1000 steps"},
                         .tried = {150, "life in steps", Wish::more, false, "lasts longer", "lasts shorter",
                                   "longer life of the tread ({})", "shorter life of the tread ({})"},
                         .main = {70, 60, "life in steps", "life", "lasts longer"},
                         .expected = "Steps until the chosen depth of a lug is gone."};
  ReadingKind life_steps_lowest{.name = "life_steps_lowest",
                                .unit = "1",
                                .label = "steps, at the upper bound of wear",
                                .shown = {"thousand", 1e-3, 0},
                                .given_by = {RigKind::wear},
                                .line = {"  lower, upper bound", "", LineForm::range},
                                .beside = "life_steps_highest"};
  ReadingKind life_steps_highest{.name = "life_steps_highest",
                                 .unit = "1",
                                 .label = "steps, at the lower bound of wear",
                                 .shown = {"thousand", 1e-3, 0},
                                 .given_by = {RigKind::wear}};
  ReadingKind relative_life{.name = "relative_life",
                            .unit = "1",
                            .label = "life divided by that of the reference rubber",
                            .shown = {"", 1, 2},
                            .given_by = {RigKind::wear},
                            .headline = true,
                            .line = {"life vs the reference rubber", "life x"},
                            .expected = "Life of a lug divided by that of the reference rubber."};
  ReadingKind life_hours{.name = "life_hours",
                         .unit = "s",
                         .label = "playing time until the depth is gone",
                         .shown = {"h", 1.0 / 3600, 0},
                         .given_by = {RigKind::wear},
                         .headline = true,
                         .line = {"playing time", "hours"}};
  ReadingKind pair_life_steps{.name = "pair_life_steps",
                              .unit = "1",
                              .label = "steps until the depth is gone, from the worn pair",
                              .shown = {"thousand", 1e-3, 0},
                              .given_by = {RigKind::wear}};
  ReadingKind pair_coefficient{.name = "pair_coefficient",
                               .unit = "1/Pa",
                               .label = "wear of the reference rubber, from the worn pair",
                               .shown = {"mm³/(N m)", 1e9, 4},
                               .given_by = {RigKind::wear},
                               .line = {"wear from the worn pair", "", LineForm::two_digits, "mm3/(N m)"}};
  ReadingKind worn_depth{.name = "worn_depth",
                         .unit = "m",
                         .label = "depth lost, mean",
                         .shown = {"mm", 1e3, 2},
                         .given_by = {RigKind::wear},
                         .line = {"depth lost, mean", "lost mm", LineForm::fine_length}};
  ReadingKind greatest_worn_depth{.name = "greatest_worn_depth",
                                  .unit = "m",
                                  .label = "greatest depth lost",
                                  .shown = {"mm", 1e3, 2},
                                  .given_by = {RigKind::wear},
                                  .line = {"  at its greatest", "", LineForm::fine_length}};
  ReadingKind first_wear_place{.name = "first_wear_place",
                               .unit = "1",
                               .label = "place of first wear, from leading to trailing end",
                               .shown = {"%", 1e2, 0},
                               .given_by = {RigKind::wear}};
  ReadingKind depth_per_way{.name = "depth_per_way",
                            .unit = "1",
                            .label = "depth lost per kilometre of slip",
                            .shown = {"mm", 1e6, 3},
                            .given_by = {RigKind::wear}};
  ReadingKind volume_balance{.name = "volume_balance",
                             .unit = "1",
                             .label = "volume error",
                             .shown = {"%", 1e2, 2},
                             .given_by = {RigKind::wear}};

  // A whole tread.
  ReadingKind grip_push_off{
    .name = "grip_push_off",
    .unit = "1",
    .label = "grip in a push-off",
    .shown = {"", 1, 2},
    .given_by = {RigKind::tread}, .with_friction = true,
    .headline = true,
    .line = {"grip in a push-off", "push-off"},
    .compared = {.place = 170,
                 .label = "grip in a push-off",
                 .more = "more",
                 .less = "less",
                 .real_share = 0.03,
                 .split = false},
    .tried = {110, "grip in a push-off", Wish::neither, false, "grips more", "grips less"},
    .expected = "Grip of a sole against sliding back in a push-off."};
  ReadingKind grip_braking{
    .name = "grip_braking",
    .unit = "1",
    .label = "grip in braking",
    .shown = {"", 1, 2},
    .given_by = {RigKind::tread}, .with_friction = true,
    .headline = true,
    .line = {"grip in braking", "braking"},
    .compared = {.place = 180,
                 .label = "grip in braking",
                 .more = "more",
                 .less = "less",
                 .real_share = 0.03,
                 .split = false},
    .tried = {120, "grip in braking", Wish::neither, false, "grips more", "grips less"},
    .expected = "Grip of a sole against sliding ahead in braking."};
  ReadingKind grip_side_cut{
    .name = "grip_side_cut",
    .unit = "1",
    .label = "grip in a side cut",
    .shown = {"", 1, 2},
    .given_by = {RigKind::tread}, .with_friction = true,
    .headline = true,
    .line = {"grip in a side cut", "side cut"},
    .compared = {.place = 190,
                 .label = "grip in a side cut",
                 .more = "more",
                 .less = "less",
                 .real_share = 0.03,
                 .split = false},
    .tried = {130, "grip in a side cut", Wish::neither, false, "grips more", "grips less"},
    .expected = "Grip of a sole against sliding outwards in a side cut."};
  ReadingKind lowest_grip{.name = "lowest_grip",
                          .unit = "1",
                          .label = "lowest grip in any direction",
                          .shown = {"", 1, 2},
                          .given_by = {RigKind::tread}, .with_friction = true,
                          .line = {"  lowest, highest in any direction", "", LineForm::range},
                          .beside = "highest_grip"};
  ReadingKind highest_grip{.name = "highest_grip",
                           .unit = "1",
                           .label = "highest grip in any direction",
                           .shown = {"", 1, 2},
                           .given_by = {RigKind::tread}, .with_friction = true};
  ReadingKind lowest_grip_heading{.name = "lowest_grip_heading",
                                  .unit = "rad",
                                  .label = "direction of the lowest grip, from ahead outwards",
                                  .shown = {"°", 180 / 3.14159265358979, 0},
                                  .given_by = {RigKind::tread}};
  ReadingKind pivot_moment{.name = "pivot_moment",
                           .unit = "N m",
                           .label = "moment that resists turning on the ball",
                           .shown = {"N·m", 1, 1},
                           .given_by = {RigKind::tread}, .with_friction = true,
                           .headline = true,
                           .line = {.heading = "pivot on the ball", .column = "pivot N m", .unit = "N m"},
                           .compared = {.place = 200,
                                        .label = "pivot moment",
                                        .more = "more",
                                        .less = "less",
                                        .real_share = 0.03,
                                        .unit = "N m"},
                           .tried = {140, "pivot on the ball", Wish::neither, false,
                                     "resists turning more", "resists turning less"},
                           .expected = "Moment of friction against turning on the ball."};
  ReadingKind highest_zone_pressure{.name = "highest_zone_pressure",
                                    .unit = "Pa",
                                    .label = "highest pressure on the bars of a zone",
                                    .shown = {"kPa", 1e-3, 0},
                                    .given_by = {RigKind::tread},
                                    .line = {"  highest pressure on the bars"}};
  ReadingKind rolled_contact_share{.name = "rolled_contact_share",
                                   .unit = "1",
                                   .label = "contact area, foot rolled 15° outward",
                                   .shown = {"%", 1e2, 0},
                                   .given_by = {RigKind::tread},
                                   .line = {"contact, rolled 15° outward", "", LineForm::share}};

  // A lug that slides, and what wear and tread share with it.
  ReadingKind effective_grip{
    .name = "effective_grip",
    .unit = "1",
    .label = "grip along the slide",
    .shown = {"", 1, 2},
    .given_by = {RigKind::slide, RigKind::wear, RigKind::tread}, .with_friction = true,
    .headline = true,
    .sets_accuracy = true,
    .line = {"grip along the slide", "grip"},
    .beside = "steady_way",
    .compared = {.place = 90, .label = "grip", .more = "more", .less = "less", .real_share = 0.03},
    .tried = {100, "grip along the slide", Wish::neither, false, "grips more", "grips less"},
    .main = {60, 80, "grip", "grip", "grips more"},
    .expected = "Friction along a slide divided by the force on the lug."};
  ReadingKind worn_grip{
    .name = "worn_grip",
    .unit = "1",
    .label = "grip along the slide, worn",
    .shown = {"", 1, 2},
    .given_by = {RigKind::wear}, .with_friction = true,
    .headline = true,
    .line = {"  when worn", "worn grip"},
    .compared = {.place = 140, .label = "grip when worn", .more = "more", .less = "less", .real_share = 0.03},
    .tried = {170, "grip when worn", Wish::neither, false, "grips more", "grips less"},
    .expected = "Grip along the slide when the lug is worn."};
  ReadingKind contact_share{
    .name = "contact_share",
    .unit = "1",
    .label = "face in contact",
    .shown = {"%", 1e2, 0},
    .given_by = {RigKind::slide},
    .headline = true,
    .line = {"face in contact", "contact %", LineForm::share},
    .compared = {.place = 100, .label = "contact", .more = "more", .less = "less", .real_difference = 0.02},
    .tried = {180, "face in contact", Wish::neither, true, "more of the face down", "less of the face down"},
    .main = {90, 90, "contact"},
    .expected = "Share of the face of a sliding lug that touches."};
  ReadingKind edge_pressure{
    .name = "edge_pressure",
    .unit = "Pa",
    .label = "pressure at the edge",
    .shown = {"kPa", 1e-3, 0},
    .given_by = {RigKind::slide, RigKind::wear},
    .headline = true,
    .line = {"pressure at the edge", "edge kPa"},
    .compared =
      {.place = 110, .label = "edge pressure", .more = "higher", .less = "lower", .real_share = 0.03},
    .tried = {190, "pressure at the edge", Wish::neither, false, "more on the edge", "less on the edge"},
    .main = {100, 100, "edge pressure"},
    .expected = "Highest pressure over 0.25 mm of a sliding lug."};
  ReadingKind worn_edge_pressure{.name = "worn_edge_pressure",
                                 .unit = "Pa",
                                 .label = "pressure at the edge, worn",
                                 .shown = {"kPa", 1e-3, 0},
                                 .given_by = {RigKind::wear},
                                 .line = {"  when worn", "worn edge kPa"},
                                 .expected = "Pressure at the edge when the lug is worn."};
  ReadingKind leading_lift{
    .name = "leading_lift",
    .unit = "1",
    .label = "leading end off the court, share of the face",
    .shown = {"%", 1e2, 0},
    .given_by = {RigKind::slide},
    .line = {.heading = "leading end off the court", .form = LineForm::share, .only_details = true}};
  ReadingKind trailing_lift{.name = "trailing_lift",
                            .unit = "1",
                            .label = "trailing end off the court, share of the face",
                            .shown = {"%", 1e2, 0},
                            .given_by = {RigKind::slide},
                            .line = {"trailing end off the court", "trail %", LineForm::share},
                            .expected = "Share of the face that is off the floor at its trailing end."};
  ReadingKind deflection{
    .name = "deflection",
    .unit = "m",
    .label = "distance the face is dragged",
    .shown = {"mm", 1e3, 2},
    .given_by = {RigKind::slide},
    .line = {"lug face dragged by", "along mm", LineForm::fine_length},
    .tried = {200, "lug face dragged by", Wish::neither, false, "bends further", "bends less"},
    .expected = "Distance that the face of a sliding lug is dragged."};
  ReadingKind wall_contact{.name = "wall_contact",
                           .unit = "m",
                           .label = "wall lying on the court",
                           .shown = {"mm", 1e3, 2},
                           .given_by = {RigKind::slide},
                           .line = {"wall lying on the court", "wall mm", LineForm::fine_length}};
  ReadingKind lug_shear_stiffness{.name = "lug_shear_stiffness",
                                  .unit = "Pa/m",
                                  .label = "shear stiffness of the lug",
                                  .shown = {"kPa/mm", 1e-6, 0},
                                  .given_by = {RigKind::slide},
                                  .line = {"shear stiffness of the lug", "kPa/mm"}};
  ReadingKind bending_stiffness{.name = "bending_stiffness",
                                .unit = "Pa/m",
                                .label = "stiffness in bending only",
                                .shown = {"kPa/mm", 1e-6, 0},
                                .given_by = {RigKind::slide}};
  ReadingKind shearing_stiffness{.name = "shearing_stiffness",
                                 .unit = "Pa/m",
                                 .label = "stiffness in shear only",
                                 .shown = {"kPa/mm", 1e-6, 0},
                                 .given_by = {RigKind::slide}};
  ReadingKind friction_work{
    .name = "friction_work",
    .unit = "J/m3",
    .label = "work of friction per metre of slide",
    .shown = {"kJ/m²", 1e-3, 0},
    .given_by = {RigKind::slide},
    .line = {.heading = "work of friction", .column = "kJ/m2/m", .unit = "kJ/m2 per m"}};
  ReadingKind temperature_rise{.name = "temperature_rise",
                               .unit = "K",
                               .label = "warming of the face",
                               .shown = {"K", 1, 1},
                               .given_by = {RigKind::slide, RigKind::wear},
                               .line = {"warming of the face", "warm K"}};
  ReadingKind steady_way{.name = "steady_way",
                         .unit = "m",
                         .label = "steady part of the slide",
                         .shown = {"mm", 1e3, 1},
                         .given_by = {RigKind::slide}};

  // The gauge again: what its reading is made of.
  ReadingKind tip_depth{.name = "tip_depth",
                        .unit = "m",
                        .label = "depth of the tip",
                        .shown = {"mm", 1e3, 2},
                        .given_by = {RigKind::gauge},
                        .line = {"depth of the tip", "tip mm", LineForm::fine_length}};
  ReadingKind tip_force{.name = "tip_force",
                        .unit = "N",
                        .label = "force of the gauge's spring",
                        .shown = {"N", 1, 2},
                        .given_by = {RigKind::gauge},
                        .line = {"force of the gauge's spring", "spring N"}};
  ReadingKind tip_contact_radius{.name = "tip_contact_radius",
                                 .unit = "m",
                                 .label = "radius that touches the tip",
                                 .shown = {"mm", 1e3, 2},
                                 .given_by = {RigKind::gauge}};
  ReadingKind youngs_modulus{.name = "youngs_modulus",
                             .unit = "Pa",
                             .label = "modulus of the rubber",
                             .shown = {"MPa", 1e-6, 2},
                             .given_by = {RigKind::gauge},
                             .line = {"modulus of the rubber", "E MPa"}};
  ReadingKind modulus_gent{.name = "modulus_gent",
                           .unit = "Pa",
                           .label = "modulus from the hardness reading (Gent 1958)",
                           .shown = {"MPa", 1e-6, 2},
                           .given_by = {RigKind::gauge},
                           .line = {"modulus from hardness (Gent 1958)", "Gent MPa"}};
  ReadingKind half_space_hardness{.name = "half_space_hardness",
                                  .unit = "points",
                                  .label = "hardness on a very thick block, small strain, tip without "
                                           "friction",
                                  .shown = {"points", 1, 1},
                                  .given_by = {RigKind::gauge},
                                  .line = {"very thick block, no friction", "endless", LineForm::points}};
  ReadingKind modulus_for_wanted{.name = "modulus_for_wanted",
                                 .unit = "Pa",
                                 .label = "modulus of the rubber for the target reading",
                                 .shown = {"MPa", 1e-6, 2},
                                 .given_by = {RigKind::gauge},
                                 .line = {"rubber for the target reading", "wanted MPa"}};
  ReadingKind thick_for_wanted{.name = "thick_for_wanted",
                               .unit = "points",
                               .label = "reading on a thick sheet of that rubber",
                               .shown = {"points", 1, 1},
                               .given_by = {RigKind::gauge},
                               .line = {"  its reading on a thick sheet", "thick", LineForm::points}};

  // Drop weight and press.
  ReadingKind peak_force{
    .name = "peak_force",
    .unit = "N",
    .label = "peak force",
    .shown = {"N", 1, 0},
    .given_by = {RigKind::drop, RigKind::press, RigKind::hold},
    .headline = true,
    .sets_accuracy = true,
    .line = {"peak force", "force kN", LineForm::force},
    .beside = "peak_force_raw",
    .rule = "Rule: the force curve is smoothed before its highest value is read, so that a passing stress "
            "wave does not count as the peak.",
    .least_error = {0.01, 0.002},
    .compared = {.place = 50,
                 .label = "peak force",
                 .more = "higher",
                 .less = "lower",
                 .real_share = 0.03,
                 .least_share_error = 2e-3},
    .tried = {40, "peak force", Wish::less, false, "harder landing", "softer landing",
              "harder landing (peak force {})", "softer landing (peak force {})"},
    .main = {30, 30, "peak force", "peak force", "hits harder"},
    .on_sheet = "peak force",
    .usual = {30, 20e3},
    .expected = "Peak force."};
  ReadingKind greatest_compression{
    .name = "greatest_compression",
    .unit = "m",
    .label = "greatest compression",
    .shown = {"mm", 1e3, 2},
    .given_by = {RigKind::drop, RigKind::press, RigKind::hold},
    .headline = true,
    .sets_accuracy = true,
    .line = {"greatest compression", "compr.", LineForm::of_the_stack},
    .beside = "compression_share",
    .rule = "Rule: travel of the striker itself. It includes how far the face of the stack gives under it.",
    .least_error = {0.007, 0.001},
    .compared = {.place = 60, .label = "compression", .more = "deeper", .less = "shallower"},
    .tried = {60, "compression", Wish::neither, false, "sinks in further", "sinks in less"},
    .main = {40, 40, "compression"},
    .on_sheet = "compression",
    .usual = {0.5e-3, 60e-3},
    .expected = "Greatest compression of the stack."};
  ReadingKind compression_share{.name = "compression_share",
                                .unit = "1",
                                .label = "compression, share of the stack",
                                .shown = {"%", 1e2, 1},
                                .given_by = {RigKind::drop, RigKind::press, RigKind::hold},
                                .follows = "greatest_compression",
                                .expected = "Greatest compression divided by the height of the stack."};
  ReadingKind return_by_speed{
    .name = "return_by_speed",
    .unit = "1",
    .label = "energy return, by speed",
    .shown = {"%", 1e2, 1},
    .given_by = {RigKind::drop},
    .sets_accuracy = true,
    .line = {.heading = "energy return, by speed", .form = LineForm::share, .only_details = true},
    .least_error = {0.004, 0.002},
    .compared = {.place = 20,
                 .label = "return by speed",
                 .more = "higher",
                 .less = "lower",
                 .real_difference = 0.02,
                 .split = false},
    .expected = "Speed at contact loss squared, divided by speed at first touch squared."};
  ReadingKind return_by_loop{
    .name = "return_by_loop",
    .unit = "1",
    .label = "energy return, by loop",
    .shown = {"%", 1e2, 1},
    .given_by = {RigKind::drop},
    .line = {.heading = "energy return, by loop", .form = LineForm::share, .only_details = true},
    .least_error = {0.004, 0.002},
    .compared = {.place = 30,
                 .label = "return by loop",
                 .more = "higher",
                 .less = "lower",
                 .real_difference = 0.02,
                 .split = false},
    .tried = {20, "energy return, by loop", Wish::more, true, "returns more", "returns less"},
    .expected = "Unloading area divided by loading area of force against travel."};
  ReadingKind loop_return{
    .name = "loop_return",
    .unit = "1",
    .label = "energy return, by loop",
    .shown = {"%", 1e2, 1},
    .given_by = {RigKind::press, RigKind::hold},
    .headline = true,
    .sets_accuracy = true,
    .line = {"energy return, by loop", "return %", LineForm::share},
    .rule = "Rule: area under the unloading branch divided by the area under the loading branch, of force "
            "against travel.",
    .least_error = {0.002, 0.001},
    .compared = {.place = 40,
                 .label = "energy return",
                 .more = "higher",
                 .less = "lower",
                 .real_difference = 0.02,
                 .share_error_in_points = true},
    .tried = {30, "energy return, by loop", Wish::more, true, "returns more", "returns less",
              "more energy returned ({})", "less energy returned ({})"},
    .main = {20, 20, "return", "energy return", "gives more back"},
    .expected = "Loop return of a press."};
  ReadingKind loop_energy_in{.name = "loop_energy_in",
                             .unit = "J",
                             .label = "energy put in",
                             .shown = {"J", 1, 2},
                             .given_by = {RigKind::press},
                             .line = {"energy put in", "in J"},
                             .least_error = {0.01, 0.001},
                             .expected = "Work of loading of a press."};
  ReadingKind loop_energy_lost{.name = "loop_energy_lost",
                               .unit = "J",
                               .label = "energy lost in the loop",
                               .shown = {"J", 1, 2},
                               .given_by = {RigKind::press},
                               .line = {"energy lost in the loop", "lost J"},
                               .least_error = {0.002, 0.001},
                               .part_of_input = true,
                               .expected = "Area of the loop of a press."};
  ReadingKind secant_stiffness{.name = "secant_stiffness",
                               .unit = "N/m",
                               .label = "stiffness, zero to peak",
                               .shown = {"N/mm", 1e-3, 1},
                               .given_by = {RigKind::press},
                               .line = {"stiffness, zero to peak", "N/mm"},
                               .expected = "Peak force divided by travel of a press."};
  ReadingKind peak_displacement{
    .name = "peak_displacement",
    .unit = "m",
    .label = "displacement at peak",
    .shown = {"mm", 1e3, 2},
    .given_by = {RigKind::press},
    .line = {"displacement at peak", "at peak", LineForm::length},
    .follows = "greatest_compression",
    .compared = {.place = 70, .label = "displacement", .more = "deeper", .less = "shallower"}};
  ReadingKind peak_deceleration{
    .name = "peak_deceleration",
    .unit = "1",
    .label = "deceleration of the weight",
    .shown = {"g", 1, 1},
    .given_by = {RigKind::drop},
    .line = {"deceleration of the weight", "decel. g"},
    .follows = "peak_force",
    .tried = {50, "deceleration of weight", Wish::less, false, "as the force", "as the force"},
    .on_sheet = "deceleration",
    .usual = {3, 1000},
    .expected = "Peak deceleration of the weight in g, F/(m g) - 1."};
  ReadingKind peak_force_over_weight{.name = "peak_force_over_weight",
                                     .unit = "1",
                                     .label = "peak force divided by weight",
                                     .shown = {"", 1, 1},
                                     .given_by = {RigKind::drop},
                                     .line = {.heading = "peak force divided by weight", .only_details = true},
                                     .follows = "peak_force"};
  ReadingKind peak_force_raw{
    .name = "peak_force_raw",
    .unit = "N",
    .label = "peak force, unsmoothed",
    .shown = {"N", 1, 0},
    .given_by = {RigKind::drop},
    .line = {.heading = "peak force, unsmoothed", .form = LineForm::force, .only_details = true},
    .least_error = {0.01, 0.004}};
  ReadingKind contact_time{
    .name = "contact_time",
    .unit = "s",
    .label = "contact time",
    .shown = {"ms", 1e3, 2},
    .given_by = {RigKind::drop},
    .sets_accuracy = true,
    .line = {"contact time", "contact ms"},
    .least_error = {0.006, 0.001},
    .compared =
      {.place = 80, .label = "contact time", .more = "longer", .less = "shorter", .least_share_error = 4e-3},
    .tried = {70, "contact time", Wish::neither, false, "longer contact", "shorter contact"},
    .on_sheet = "contact time",
    .usual = {1e-3, 0.1},
    .expected = "Time from first touch to contact loss."};
  ReadingKind peak_pressure{
    .name = "peak_pressure",
    .unit = "Pa",
    .label = "peak pressure",
    .shown = {"kPa", 1e-3, 0},
    .given_by = {RigKind::drop, RigKind::press},
    .line = {"peak pressure", "peak pressure kPa"},
    .least_error = {0.02, 0.004},
    .tried = {80, "peak pressure", Wish::less, false, "more concentrated", "more spread out"},
    .expected = "Highest pressure under the striker."};
  ReadingKind bottoming_margin{.name = "bottoming_margin",
                               .unit = "1",
                               .label = "travel left before bottoming",
                               .shown = {"%", 1e2, 0},
                               .given_by = {RigKind::drop, RigKind::press},
                               .line = {"bottoming", "travel left %", LineForm::travel_left},
                               .least_error = {0.007, 0.001},
                               .tried = {210, "bottoming", Wish::more, true, "further from the end",
                                         "nearer to the end", "more travel left ({})",
                                         "less travel left ({})"},
                               .expected = "Travel left before the weakest part locks up."};
  ReadingKind compression_of_layer{.name = "compression.",
                                   .unit = "m",
                                   .label = "compression of {}",
                                   .shown = {"mm", 1e3, 2},
                                   .given_by = {RigKind::drop, RigKind::press},
                                   .least_error = {0.007, 0.001}};
  ReadingKind time_of_peak{.name = "time_of_peak",
                           .unit = "s",
                           .label = "time of greatest compression",
                           .shown = {"ms", 1e3, 2},
                           .given_by = {RigKind::drop},
                           .line = {.heading = "time of greatest compression", .only_details = true},
                           .least_error = {0.006, 0.002}};
  ReadingKind impact_speed{.name = "impact_speed",
                           .unit = "m/s",
                           .label = "speed at first touch",
                           .shown = {"m/s", 1, 2},
                           .given_by = {RigKind::drop},
                           .line = {.heading = "speed at first touch", .only_details = true}};
  ReadingKind rebound_speed{.name = "rebound_speed",
                            .unit = "m/s",
                            .label = "speed at contact loss",
                            .shown = {"m/s", 1, 2},
                            .given_by = {RigKind::drop},
                            .line = {.heading = "speed at contact loss", .only_details = true},
                            .least_error = {0.004, 0.002}};
  ReadingKind guide_loss_up{.name = "guide_loss_up",
                            .unit = "J",
                            .label = "lost in the guide on the way up",
                            .shown = {"J", 1, 3},
                            .given_by = {RigKind::drop}};
  ReadingKind left_in_stack{.name = "left_in_stack",
                            .unit = "J",
                            .label = "left in the stack",
                            .shown = {"J", 1, 3},
                            .given_by = {RigKind::drop},
                            .line = {.heading = "left in the stack", .only_details = true},
                            .least_error = {0.002, 0.001},
                            .part_of_input = true,
                            .expected = "Energy still in the stack at contact loss."};
  ReadingKind lost_in_part{.name = "lost.",
                           .unit = "J",
                           .label = "turned into heat in {}",
                           .shown = {"J", 1, 3},
                           .given_by = {RigKind::drop, RigKind::press, RigKind::hold},
                           .least_error = {0.002, 0.001},
                           .part_of_input = true};

  // A long hold.
  ReadingKind compression_set{
    .name = "compression_set",
    .unit = "1",
    .label = "compression set, share of the squeeze",
    .shown = {"%", 1e2, 1},
    .given_by = {RigKind::hold},
    .headline = true,
    .sets_accuracy = true,
    .line = {"compression set", "set %", LineForm::share},
    .rule = "Rule: height lost after the rest, divided by the greatest squeeze of the hold. ISO 1856 "
            "divides by the height before (from memory): that value is given too.",
    .least_error = {0.004, 0.002},
    .compared = {.place = 86, .label = "compression set", .more = "more", .less = "less", .real_difference = 0.02},
    .expected = "Height lost after the rest divided by the greatest squeeze of the hold."};
  ReadingKind height_set{.name = "height_set",
                         .unit = "1",
                         .label = "compression set, share of the height",
                         .shown = {"%", 1e2, 1},
                         .given_by = {RigKind::hold},
                         .line = {"set, share of the height", "set of height %", LineForm::share},
                         .least_error = {0.004, 0.002},
                         .expected = "Height lost after the rest divided by the height before (ISO 1856, "
                                     "from memory)."};
  ReadingKind set_left{.name = "set_left",
                       .unit = "m",
                       .label = "height lost after the rest",
                       .shown = {"mm", 1e3, 2},
                       .given_by = {RigKind::hold},
                       .line = {"height lost after the rest", "set mm", LineForm::fine_length},
                       .expected = "Height lost after the rest."};
  ReadingKind force_left{
    .name = "force_left",
    .unit = "1",
    .label = "force left at the end of the hold",
    .shown = {"%", 1e2, 1},
    .given_by = {RigKind::hold},
    .headline = true,
    .sets_accuracy = true,
    .line = {"force left at the end", "force left %", LineForm::share},
    .least_error = {0.004, 0.002},
    .compared = {.place = 82, .label = "force left", .more = "more", .less = "less", .real_difference = 0.02},
    .expected = "Force at the end of a hold at constant squeeze divided by the force at its beginning."};
  ReadingKind force_at_end{.name = "force_at_end",
                           .unit = "N",
                           .label = "force at the end of the hold",
                           .shown = {"N", 1, 0},
                           .given_by = {RigKind::hold},
                           .line = {"force at the end of the hold", "end force kN", LineForm::force},
                           .least_error = {0.01, 0.002},
                           .expected = "Force at the end of a hold at constant squeeze."};
  ReadingKind creep{
    .name = "creep",
    .unit = "m",
    .label = "creep during the hold",
    .shown = {"mm", 1e3, 2},
    .given_by = {RigKind::hold},
    .headline = true,
    .sets_accuracy = true,
    .line = {"creep during the hold", "creep mm", LineForm::fine_length},
    .least_error = {0.01, 0.004},
    .compared = {.place = 84, .label = "creep", .more = "more", .less = "less", .real_share = 0.05},
    .expected = "Compression gained during a hold under constant load."};
  ReadingKind creep_share{.name = "creep_share",
                          .unit = "1",
                          .label = "creep, share of the height",
                          .shown = {"%", 1e2, 1},
                          .given_by = {RigKind::hold},
                          .line = {"creep, share of the height", "creep %", LineForm::share},
                          .least_error = {0.004, 0.002},
                          .expected = "Creep divided by the height of the stack."};
  // clang-format on
};

inline constexpr Catalogue catalogue{};

/// All rows in their order.
inline std::span<const ReadingKind> all_readings()
{
  static_assert(std::is_trivially_copyable_v<Catalogue>);
  static const auto rows =
    std::bit_cast<std::array<ReadingKind, sizeof(Catalogue) / sizeof(ReadingKind)>>(catalogue);
  return rows;
}

/// Row of a reading, members of families too; nullptr when there is none of this name.
inline const ReadingKind *find_reading(std::string_view name)
{
  for (const auto &kind : all_readings())
    if (kind.is_named(name))
      return &kind;
  return nullptr;
}

/// Rows with a place, from the first on.
/// @param place  of a row; 0: it is left out
template <typename Place>
std::vector<const ReadingKind *> in_order(Place place)
{
  std::vector<const ReadingKind *> kinds;
  for (const auto &kind : all_readings())
    if (place(kind) > 0)
      kinds.push_back(&kind);
  std::stable_sort(kinds.begin(), kinds.end(),
                   [&](const auto *a, const auto *b) { return place(*a) < place(*b); });
  return kinds;
}

/// Row of a reading of a result; of one that an older or a newer program gave under another name an empty
/// one.
inline const ReadingKind &kind_of(const Reading &reading)
{
  static constexpr ReadingKind unknown{.name = "", .unit = "", .label = ""};
  const auto                  *known = find_reading(reading.name);
  return known ? *known : unknown;
}

/// Adds a reading of a rig, its numerical error not yet estimated.
inline void add_reading(Result &result, const ReadingKind &kind, double value, std::string meaning)
{
  result.readings.push_back({kind, value, std::string(kind.unit), std::move(meaning), -1});
}

/// The same of a member of a family: a part of the stack, or the number of a hit.
inline void add_reading(Result &result, const ReadingKind &family, const std::string &of, double value,
                        std::string meaning)
{
  result.readings.push_back({family.of(of), value, std::string(family.unit), std::move(meaning), -1});
}
} // namespace solemech::solver
