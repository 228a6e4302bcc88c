// SPDX-License-Identifier: Apache-2.0
#include "solver/wear_process.h"

#include "solver/run.h"

#include <Eigen/Dense>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::solver
{
namespace
{
using Depths = std::vector<double>; ///< at the places of a profile

constexpr unsigned n_places = 121;     ///< as close as the pressure of a mesh tells
constexpr double   finest = 0.25e-3;   ///< nothing is worn finer, as no pressure is told finer at an edge [m]
constexpr double   finest_share = 0.1; ///< of the face, at most
constexpr double   shortest_jump = 1e-3; ///< of the wished depth: no pattern changes faster than that

/// First and last place that lie on the face.
std::pair<std::size_t, std::size_t> on_face(const geometry::WornProfile &profile)
{
  const auto [left, right] = profile.ends();
  const auto &x = profile.places();
  const auto  first = std::lower_bound(x.begin(), x.end(), left),
             last = std::upper_bound(x.begin(), x.end(), right);
  return {static_cast<std::size_t>(first - x.begin()), static_cast<std::size_t>(last - x.begin()) - 1};
}

/// Beyond the face, what lies nearest on it.
void continue_outwards(Depths &depth, std::size_t first, std::size_t last)
{
  std::fill(depth.begin(), depth.begin() + static_cast<std::ptrdiff_t>(first), depth[first]);
  std::fill(depth.begin() + static_cast<std::ptrdiff_t>(last) + 1, depth.end(), depth[last]);
}

/// What a slide does to the face, place by place.
struct Wearing
{
  Depths rate; ///< depth per way [-]
  Depths gap;  ///< to the court where nothing touches [m]
};

/// Share of a volume spread about x that lies below a place; what would lie beyond an end is folded back.
double share_below(double place, double x, double spread, double left, double right)
{
  if (spread <= 0)
    return place > x ? 1.0 : 0.0;
  const auto below = [&](double at) { return std::clamp((at - x) / spread + 0.5, 0.0, 1.0); };
  return below(place) - below(2 * left - place) + 1 - below(2 * right - place);
}

/// Depth per way at each place. Volumes are spread and shared out, so that none is lost between points;
/// what the walls lose counts at the ends of the face.
Wearing wearing(const geometry::WornProfile &profile, std::vector<WearLoss> losses, bool to_and_fro)
{
  const auto &x = profile.places();
  const auto [first, last] = on_face(profile);
  const double half = 0.5 * profile.spacing(), left = x[first] - half, right = x[last] + half;
  double       sum = 0;
  for (auto &loss : losses)
  {
    loss.x = std::clamp(loss.x, left, right);
    loss.spread = std::min(std::max(loss.spread, profile.spacing()), right - left);
    sum += loss.volume;
  }
  std::sort(losses.begin(), losses.end(), [](const WearLoss &a, const WearLoss &b) { return a.x < b.x; });
  Depths rate(x.size(), 0.0);
  double before = 0;
  for (std::size_t i = first; i <= last; ++i)
  {
    double now = sum;
    if (i < last)
    {
      now = 0;
      for (const auto &loss : losses)
        now += loss.volume * share_below(x[i] + half, loss.x, loss.spread, left, right);
    }
    rate[i] = (now - before) / profile.spacing();
    before = now;
  }
  Depths      gap(x.size(), 0.0);
  std::size_t next = 0;
  for (std::size_t i = first; i <= last; ++i)
  {
    while (next + 1 < losses.size() && losses[next + 1].x < x[i])
      ++next;
    const auto  &a = losses[next], &b = losses[std::min(next + 1, losses.size() - 1)];
    const double t = b.x > a.x ? std::clamp((x[i] - a.x) / (b.x - a.x), 0.0, 1.0) : 0.0;
    gap[i] = rate[i] > 0 ? 0.0 : std::max(0.0, (1 - t) * a.gap + t * b.gap);
  }
  if (to_and_fro)
    for (std::size_t i = 0, j = rate.size() - 1; i < j; ++i, --j)
    {
      rate[i] = rate[j] = 0.5 * (rate[i] + rate[j]);
      gap[i] = gap[j] = rate[i] > 0 ? 0.0 : std::min(gap[i], gap[j]);
    }
  continue_outwards(rate, first, last);
  return {rate, gap};
}

double cosine(std::size_t wave, std::size_t i, std::size_t n)
{
  return std::cos(std::numbers::pi * static_cast<double>(wave) * (static_cast<double>(i) + 0.5) /
                  static_cast<double>(n));
}

double wave_number(std::size_t wave, std::size_t n, double spacing)
{
  return std::numbers::pi * static_cast<double>(wave) / (static_cast<double>(n) * spacing);
}

/// Gap of a face over its pressure, wave by wave, without the mean: 2/(E* q) times E* [m].
Eigen::MatrixXd yielding(std::size_t n, double spacing)
{
  Eigen::MatrixXd waves(n, n);
  for (std::size_t wave = 1; wave < n; ++wave)
    for (std::size_t i = 0; i < n; ++i)
      waves(i, wave) =
        cosine(wave, i, n) * std::sqrt(2.0 / static_cast<double>(n) * 2 / wave_number(wave, n, spacing));
  waves.col(0).setZero();
  return waves * waves.transpose();
}

/// Rates at the end of a jump, as the half-space has it: none is negative, what is worn touches, and what
/// would penetrate carries. Primal-dual active set; a strictly convex problem (M. Hintermueller, K. Ito & K.
/// Kunisch, SIAM J. Optim. 13, 2002, from memory).
Depths rates_after(const geometry::WornProfile &profile, const Wearing &now, double way, double conforming)
{
  const auto [first, last] = on_face(profile);
  const std::size_t     n = last - first + 1;
  const Eigen::MatrixXd give = yielding(n, profile.spacing()) / conforming;
  Eigen::VectorXd       rate(n), gap(n);
  std::vector<bool>     touches(n);
  for (std::size_t i = 0; i < n; ++i)
  {
    rate[i] = now.rate[first + i];
    gap[i] = now.gap[first + i];
    touches[i] = rate[i] > 0;
  }
  const double          sum = rate.sum();
  const Eigen::VectorXd yielded = give * rate - gap;
  Eigen::VectorXd       after = rate;
  for (int pass = 0; pass < 60; ++pass)
  {
    std::vector<Eigen::Index> carrying;
    for (std::size_t i = 0; i < n; ++i)
      if (touches[i])
        carrying.push_back(static_cast<Eigen::Index>(i));
    const auto      m = static_cast<Eigen::Index>(carrying.size());
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(m + 1, m + 1);
    Eigen::VectorXd right(m + 1);
    for (Eigen::Index a = 0; a < m; ++a)
    {
      for (Eigen::Index b = 0; b < m; ++b)
        matrix(a, b) = give(carrying[a], carrying[b]);
      matrix(a, a) += way;
      matrix(a, m) = -way, matrix(m, a) = way; // of one size with the rest
      right[a] = yielded[carrying[a]];
    }
    right[m] = way * sum;
    const Eigen::VectorXd solution = matrix.partialPivLu().solve(right);
    after.setZero();
    for (Eigen::Index a = 0; a < m; ++a)
      after[carrying[a]] = solution[a];
    const Eigen::VectorXd opening = give * after + way * after - yielded;
    bool                  settled = true;
    for (std::size_t i = 0; i < n; ++i)
    {
      const auto at = static_cast<Eigen::Index>(i);
      const bool carries = touches[i] ? after[at] > 0 : opening[at] < way * solution[m];
      settled = settled && carries == touches[i];
      touches[i] = carries;
    }
    if (settled)
      break;
  }
  Depths out(now.rate.size(), 0.0);
  for (std::size_t i = 0; i < n; ++i)
    out[first + i] = std::max(0.0, after[static_cast<Eigen::Index>(i)]);
  continue_outwards(out, first, last);
  return out;
}

/// What a jump of such a way takes otherwise when its rates are others, less what the face makes up for by
/// giving way: root mean square over the face [m].
double difference_of(const geometry::WornProfile &profile, const Depths &a, const Depths &b, double way,
                     double conforming)
{
  const auto [first, last] = on_face(profile);
  const std::size_t n = last - first + 1;
  double            square = 0; // by Parseval's theorem
  for (std::size_t wave = 1; wave < n; ++wave)
  {
    double amplitude = 0;
    for (std::size_t i = 0; i < n; ++i)
      amplitude += (b[first + i] - a[first + i]) * cosine(wave, i, n);
    amplitude *=
      2.0 / static_cast<double>(n) / (1 + way * conforming * wave_number(wave, n, profile.spacing()) / 2);
    square += 0.5 * amplitude * amplitude;
  }
  return way * std::sqrt(square);
}

/// Spreads what is taken by a hat as long as `finest`, folded back at the ends of the face, so that the sum
/// over the face stays. Bumps of the mesh's size would else stand on the face and carry several times the
/// mean pressure.
void spread_out(const geometry::WornProfile &profile, Depths &depth)
{
  const auto [first, last] = on_face(profile);
  const auto n = static_cast<std::ptrdiff_t>(last - first + 1);
  const auto reach = static_cast<std::ptrdiff_t>(
    std::lround(0.5 * std::min(finest / profile.spacing(), finest_share * static_cast<double>(n))));
  if (reach < 1 || n <= reach)
    return;
  Depths out(static_cast<std::size_t>(n), 0.0);
  for (std::ptrdiff_t i = 0; i < n; ++i)
    for (std::ptrdiff_t k = -reach; k <= reach; ++k)
    {
      std::ptrdiff_t to = i + k;
      if (to < 0)
        to = -1 - to;
      if (to >= n)
        to = 2 * n - 1 - to;
      out[static_cast<std::size_t>(to)] += depth[first + static_cast<std::size_t>(i)] *
                                           static_cast<double>(reach + 1 - std::abs(k)) /
                                           static_cast<double>((reach + 1) * (reach + 1));
    }
  std::copy(out.begin(), out.end(), depth.begin() + static_cast<std::ptrdiff_t>(first));
  continue_outwards(depth, first, last);
}

double total(const std::vector<WearLoss> &losses)
{
  double sum = 0;
  for (const auto &loss : losses)
    sum += loss.volume;
  return sum;
}
} // namespace

WearHistory wear_down(const geometry::LugOutline &fresh, const SlideOfProfile &slide,
                      const WearControl &control, const std::function<bool(const WearState &)> &on_state)
{
  WearHistory           history;
  geometry::WornProfile profile(fresh, n_places);
  const auto            keep = [&](double way, double asked, const ProfileSlide &now) {
    WearState state;
    state.way = way, state.asked = asked;
    state.lost = profile.lost_section();
    state.depth = profile.mean_depth();
    state.greatest = *std::max_element(profile.depth().begin(), profile.depth().end());
    state.face = profile.outline().worn_face;
    state.slide = now;
    history.states.push_back(std::move(state));
    if (on_state && !on_state(history.states.back()))
      throw RunStopped();
  };

  ProfileSlide now = slide(fresh);
  keep(0, 0, now);
  if (!now.stands)
  {
    history.reason = now.reason;
    return history;
  }
  double way = 0, asked = 0, speed = total(now.losses) / fresh.width; // of the mean depth, per way
  if (!(speed > 0))
  {
    history.reason = "nothing wears: no place slides under pressure";
    return history;
  }
  double  jump = control.first_jump / speed;
  Wearing at_start = wearing(profile, now.losses, control.to_and_fro);
  for (int n_jumps = 0; history.states.back().depth < control.depth * (1 - 1e-6); ++n_jumps)
  {
    if (n_jumps + history.repeated >= control.greatest_jumps)
    {
      history.reason = fmt::format("the target depth was not reached in {} jumps of the wear calculation",
                                   control.greatest_jumps);
      break;
    }
    speed = total(now.losses) / fresh.width;
    jump =
      std::min(jump, std::max(control.depth - history.states.back().depth, 1e-4 * control.depth) / speed);
    auto         trial = profile;
    const Depths foreseen = rates_after(profile, at_start, jump, control.conforming);
    Depths       taken = foreseen;
    for (double &depth : taken)
      depth *= jump;
    spread_out(profile, taken);
    trial.take(taken);
    const ProfileSlide then = slide(trial.outline());
    const bool         can_be_shorter = jump * speed > shortest_jump * control.depth;
    double             share = 1;
    if (then.stands)
    {
      const Wearing at_end = wearing(trial, then.losses, control.to_and_fro);
      const double  error =
        std::max(difference_of(trial, foreseen, at_end.rate, jump, control.conforming),
                 0.5 * difference_of(trial, at_start.rate, at_end.rate, jump, control.conforming));
      share = std::sqrt(control.tolerance / std::max(error, 1e-6 * control.tolerance));
      if (share >= 1 / 1.2 || !can_be_shorter)
      {
        profile = trial, at_start = at_end;
        way += jump;
        asked += jump * total(now.losses);
        now = then;
        keep(way, asked, now);
        jump *= std::clamp(0.8 * share, 0.5, 2.0);
        continue;
      }
    }
    else if (!can_be_shorter)
    {
      history.reason = then.reason;
      break;
    }
    ++history.repeated;
    jump *= then.stands ? std::clamp(0.8 * share, 0.2, 0.7) : 0.4;
  }
  return history;
}
} // namespace solemech::solver
