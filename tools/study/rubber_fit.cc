// SPDX-License-Identifier: Apache-2.0
#include "tools/study/rubber_fit.h"

#include <Eigen/Dense>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

namespace solemech::settle
{
namespace
{
using materials::IsochoricRubber;

double second_stretch(Pull pull)
{
  return pull == Pull::uniaxial ? -0.5 : pull == Pull::pure_shear ? 0.0 : 1.0;
}

/// The law with one coefficient at 1: stress is linear in each.
std::vector<IsochoricRubber> unit_laws(RubberForm form)
{
  std::vector<IsochoricRubber> laws(form == RubberForm::neo_hooke ? 1 : form == RubberForm::mooney ? 2 : 3);
  laws[0].c10 = 1;
  if (form == RubberForm::mooney)
    laws[1].c01 = 1;
  if (form == RubberForm::yeoh)
  {
    laws[1].c20 = 1;
    laws[2].c30 = 1;
  }
  return laws;
}

void refuse_bad_points(const std::vector<StretchPoint> &points, std::size_t n_coefficients)
{
  std::set<double> stretches;
  for (std::size_t i = 0; i < points.size(); ++i)
  {
    const auto &point = points[i];
    if (!(point.stretch > 0) || !std::isfinite(point.stretch) || !std::isfinite(point.nominal_stress))
      throw std::invalid_argument(
        fmt::format("point {}: stretch {} and stress {} Pa; a stretch is length over length at rest, above 0",
                    i + 1, point.stretch, point.nominal_stress));
    if (point.stretch != 1)
      stretches.insert(point.stretch);
  }
  if (stretches.size() < n_coefficients)
    throw std::invalid_argument(
      fmt::format("{} coefficients need at least as many different stretches, {} are there", n_coefficients,
                  stretches.size()));
}

std::vector<std::string> warnings_for(const RubberFit &fit, const std::vector<StretchPoint> &points,
                                      RubberForm form)
{
  std::vector<std::string> warnings;
  std::set<Pull>           pulls;
  for (const auto &point : points)
    pulls.insert(point.pull);
  if (pulls.size() == 1)
    warnings.push_back(fmt::format(
      "All points come from one kind of test. {} Under a shoe rubber is squeezed and sheared: add a "
      "sheet pulled wide, or "
      "a squeezed button, before trusting it there.",
      form == RubberForm::mooney
        ? "They cannot settle the second coefficient, which comes out many times too large."
        : "The fit is a guess for every other kind."));
  const double limit = std::max({fit.greatest_stretch, 1 / fit.least_stretch, 1.05});
  if (fit.rubber.shear_modulus() <= 0)
    warnings.emplace_back("The coefficients give a rubber without stiffness at rest; it cannot be used.");
  else if (!monotone(fit.rubber, limit))
    warnings.push_back(
      fmt::format("Within stretch {:.3g} this rubber would get weaker as it is pulled; it cannot be "
                  "used in a run.",
                  limit));
  return warnings;
}
} // namespace

RubberFit fit_rubber(const std::vector<StretchPoint> &points, RubberForm form)
{
  const auto laws = unit_laws(form);
  refuse_bad_points(points, laws.size());
  Eigen::MatrixXd columns(points.size(), laws.size());
  Eigen::VectorXd stress(points.size());
  RubberFit       fit;
  for (std::size_t i = 0; i < points.size(); ++i)
  {
    for (std::size_t k = 0; k < laws.size(); ++k)
      columns(i, k) = laws[k].nominal_stress(points[i].stretch, second_stretch(points[i].pull));
    stress[Eigen::Index(i)] = points[i].nominal_stress;
    fit.least_stretch = std::min(fit.least_stretch, points[i].stretch);
    fit.greatest_stretch = std::max(fit.greatest_stretch, points[i].stretch);
  }
  const Eigen::VectorXd c = columns.colPivHouseholderQr().solve(stress);
  fit.rubber.c10 = c[0];
  if (form == RubberForm::mooney)
    fit.rubber.c01 = c[1];
  if (form == RubberForm::yeoh)
  {
    fit.rubber.c20 = c[1];
    fit.rubber.c30 = c[2];
  }
  fit.misfit = (columns * c - stress).norm() / std::sqrt(double(points.size()));
  fit.warnings = warnings_for(fit, points, form);
  return fit;
}
} // namespace solemech::settle
