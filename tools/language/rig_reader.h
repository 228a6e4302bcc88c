// SPDX-License-Identifier: Apache-2.0
// Rigs of a case: the blocks [drop], [ball], [press], [hold] and [durometer].
#pragma once

#include "solver/case.h"
#include "tools/language/problem.h"
#include "tools/language/sheet_folder.h"

#include <toml++/toml.h>

namespace solemech::tools
{
/// A falling weight; an energy becomes the height E/(m g), `gravity` [m/s2].
solver::DropRig read_drop(const toml::table &block, double gravity, materials::Problems &problems);

/// The ball of ISO 8307 as a falling weight.
solver::DropRig read_ball(const toml::table &block, materials::Problems &problems);

/// A press; body weights are scaled by body mass and `gravity` [m/s2], histories are sought in `folder`.
solver::PressRig read_press(const toml::table &block, double gravity, SheetFolder &folder,
                            materials::Problems &problems);

/// A squeeze or a load that is kept up.
solver::HoldRig read_hold(const toml::table &block, materials::Problems &problems);

/// A hardness gauge with its own tip.
solver::DurometerRig read_durometer(const toml::table &block, materials::Problems &problems);
} // namespace solemech::tools
