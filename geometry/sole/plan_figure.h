// SPDX-License-Identifier: Apache-2.0
// A small figure in the plan of a sole: an ellipse, or a box with rounded corners, turned as it lies.
// Pockets, pods and grooves have one.
#pragma once

#include "geometry/sole/outline.h"

#include <vector>

namespace solemech::geometry
{
struct PlanFigure
{
  enum class Form { ellipse, box };
  Form   form = Form::ellipse;
  double x = 0, y = 0;          ///< of its middle [m]
  double length = 0, width = 0; ///< along and across itself [m]
  double corner = 0;            ///< radius of the corners of a box [m]
  double turned = 0;            ///< of its length against the foot's, towards the lateral side [rad]
};

bool   covers(const PlanFigure &figure, const PlanPoint &point);
double area(const PlanFigure &figure);

/// `n` points round it, from its length towards its width.
std::vector<PlanPoint> points_round(const PlanFigure &figure, unsigned n);
} // namespace solemech::geometry
