// SPDX-License-Identifier: Apache-2.0
#include "tools/calibrate/law_fit.h"

#include "tools/calibrate/virtual_bench.h"
#include "tools/language/quantity.h"

#include <Eigen/Dense>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <stdexcept>
#include <vector>

namespace solemech::tools
{
using materials::FoamData;
using materials::Material;
using materials::RubberData;

namespace
{
constexpr double first_step = 0.2;   // of the logarithm of a factor, for the first slopes
constexpr double longest_step = 0.7; // of the same: a factor of two
constexpr double closer = 0.5;       // of the tolerance: where a search ends
constexpr int    most_rounds = 25;   // over all readings; five or so do
constexpr double rougher = 4;        // accuracy of the slopes and of the first approach, over what is asked

enum class Turned { stiffness, slipping, relaxing };

/// A reading to meet and what is turned for it.
struct Goal
{
  double                                          wanted;
  double                                          tolerance; ///< in units of the reading
  Turned                                          turned;
  std::function<double(const Material &, double)> read; ///< at an accuracy [-]
};

double rounded_modulus(double modulus)
{
  constexpr double kilopascal = 1e3;
  return std::round(modulus / kilopascal) * kilopascal;
}

template <typename Branches>
void scale_shares(Branches &branches, double factor)
{
  for (auto &branch : branches)
    branch.share = rounded_share(factor * branch.share);
}

Material turned(Material material, Turned what, double factor)
{
  if (auto *foam = std::get_if<FoamData>(&material.data))
  {
    if (what == Turned::stiffness)
      for (auto &term : foam->network)
        term.shear_modulus = rounded_modulus(factor * term.shear_modulus);
    else if (what == Turned::slipping)
      scale_shares(foam->slipping, factor);
    else
      scale_shares(foam->relaxing, factor);
  }
  else if (auto *rubber = std::get_if<RubberData>(&material.data); rubber && what == Turned::relaxing)
    scale_shares(rubber->relaxing, factor);
  return material;
}

double &factor_of(LawFit &fit, Turned what)
{
  return what == Turned::stiffness  ? fit.stiffness_factor
         : what == Turned::slipping ? fit.slipping_factor
                                    : fit.relaxing_factor;
}

void turn(LawFit &fit, Turned what, double factor)
{
  fit.material = turned(fit.material, what, factor);
  factor_of(fit, what) *= factor;
}

/// How far the readings are from the goals, in tolerances.
Eigen::VectorXd misses(const std::vector<Goal> &goals, const Material &material, double accuracy)
{
  Eigen::VectorXd out(goals.size());
  for (std::size_t i = 0; i < goals.size(); ++i)
    out[static_cast<Eigen::Index>(i)] =
      (goals[i].read(material, accuracy) - goals[i].wanted) / goals[i].tolerance;
  return out;
}

/// Turns all factors together. Runs are dear: slopes are taken once, then kept up by Broyden's rule.
class Search
{
public:
  Search(const LawFit &start, const std::vector<Goal> &goals, double accuracy)
    : start_(start), goals_(goals),
      logarithms_(Eigen::VectorXd::Zero(static_cast<Eigen::Index>(goals.size()))),
      slopes_(logarithms_.size(), logarithms_.size())
  {
    const auto here = misses(goals_, start_.material, accuracy);
    for (Eigen::Index k = 0; k < logarithms_.size(); ++k)
    {
      const Eigen::VectorXd step = first_step * Eigen::VectorXd::Unit(logarithms_.size(), k);
      slopes_.col(k) = (misses(goals_, at(step).material, accuracy) - here) / first_step;
    }
  }

  /// @returns the worst miss that is left, in tolerances
  double approach(double accuracy)
  {
    auto miss = misses(goals_, at(logarithms_).material, accuracy);
    for (int round = 0; round < most_rounds && miss.cwiseAbs().maxCoeff() > closer; ++round)
    {
      Eigen::VectorXd step = -slopes_.fullPivLu().solve(miss);
      step *= std::min(1.0, longest_step / step.cwiseAbs().maxCoeff());
      const auto there = misses(goals_, at(logarithms_ + step).material, accuracy);
      slopes_ += (there - miss - slopes_ * step) * step.transpose() / step.squaredNorm();
      logarithms_ += step;
      miss = there;
    }
    return miss.cwiseAbs().maxCoeff();
  }

  LawFit fit() const { return at(logarithms_); }

private:
  LawFit at(const Eigen::VectorXd &logarithms) const
  {
    LawFit fit = start_;
    for (std::size_t i = 0; i < goals_.size(); ++i)
      turn(fit, goals_[i].turned, std::exp(logarithms[static_cast<Eigen::Index>(i)]));
    return fit;
  }

  const LawFit            &start_;
  const std::vector<Goal> &goals_;
  Eigen::VectorXd          logarithms_; ///< of the factors
  Eigen::MatrixXd          slopes_;     ///< of the misses over them
};

std::vector<Goal> goals_of(const Material &material)
{
  const auto &stated = material.stated;
  const bool  has_pulse = stated.pulse_return >= 0, has_ball = stated.ball_rebound >= 0;
  const bool  is_foam = std::holds_alternative<FoamData>(material.data);

  std::vector<Goal> goals;
  if (is_foam && !material.hardness.empty())
    goals.push_back({materials::parse_hardness(material.hardness).value, gauge_tolerance, Turned::stiffness,
                     [](const Material &tried, double accuracy) {
                       return gauge_reading(tried, gauge_for(tried), accuracy).value;
                     }});
  if (has_pulse)
    goals.push_back(
      {stated.pulse_return, share_tolerance, Turned::slipping,
       [](const Material &tried, double accuracy) { return pulse_return(tried, accuracy).value; }});
  if (has_ball)
    goals.push_back(
      {stated.ball_rebound, share_tolerance, is_foam && !has_pulse ? Turned::slipping : Turned::relaxing,
       [](const Material &tried, double accuracy) { return ball_rebound(tried, accuracy).value; }});
  return goals;
}

/// A foam that states one return: nothing slips if the relaxing branches alone lose more than that.
void choose_branches(std::vector<Goal> &goals, LawFit &fit, double accuracy)
{
  if (std::ranges::any_of(goals, [](const Goal &goal) { return goal.turned == Turned::relaxing; }))
    return;
  for (auto &goal : goals)
    if (goal.turned == Turned::slipping &&
        goal.read(turned(fit.material, Turned::slipping, 0), accuracy) < goal.wanted)
    {
      goal.turned = Turned::relaxing;
      turn(fit, Turned::slipping, 0);
    }
}
} // namespace

double rounded_share(double share)
{
  return std::round(1e4 * share) * 1e-4;
}

LawFit fit_law(const Material &material, double accuracy)
{
  LawFit fit{material};
  auto   goals = goals_of(material);
  if (const auto *foam = std::get_if<FoamData>(&material.data);
      foam && !goals.empty() && (foam->slipping.empty() || foam->relaxing.empty()))
    throw std::invalid_argument("'" + material.name + "' is not a foam with relaxing and slipping branches");
  if (goals.empty() || misses(goals, material, accuracy).cwiseAbs().maxCoeff() <= 1)
    return fit;
  const double rough = rougher * accuracy;
  choose_branches(goals, fit, rough);
  Search search(fit, goals, rough);
  search.approach(rough);
  if (!(search.approach(accuracy) <= 1))
    throw std::runtime_error(
      fmt::format("'{}': no stiffness and loss give its stated readings together", material.name));
  return search.fit();
}
} // namespace solemech::tools
