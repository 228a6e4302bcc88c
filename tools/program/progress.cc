// SPDX-License-Identifier: Apache-2.0
#include "tools/program/progress.h"

#include "tools/program/terminal.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>

namespace solemech::tools
{
namespace
{
constexpr double silent_seconds = 2;   // shorter work shows nothing
constexpr double redraw_seconds = 0.1; // at most ten times a second
constexpr double plain_seconds = 10;   // between two lines in a log file
constexpr double smoothing = 0.3;      // weight of the newest estimate of the time left
constexpr double known_share = 0.02;   // before it the mean speed says nothing
constexpr int    bar_width = 24;
constexpr double full = 1 - 1e-12;
} // namespace

std::string duration_text(double seconds)
{
  const long whole = std::max(0L, std::lround(seconds));
  if (whole < 60)
    return fmt::format("{} s", whole);
  if (whole < 3600)
    return fmt::format("{} min {} s", whole / 60, whole % 60);
  return fmt::format("{} h {} min", whole / 3600, whole % 3600 / 60);
}

ProgressOutput progress_on_standard_error()
{
  return {
    [](std::string_view text) {
      std::fwrite(text.data(), 1, text.size(), stderr);
      std::fflush(stderr);
    },
    [] { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); },
    is_terminal(stderr), terminal_width(stderr)};
}

Progress::Progress(ProgressOutput output, bool quiet)
  : output_(std::move(output)), quiet_(quiet), start_(output_.now())
{
}

Progress::~Progress()
{
  clear();
}

std::string Progress::line(double fraction, std::string_view what, double elapsed)
{
  std::string left = "time left not known yet";
  if (fraction >= known_share)
  {
    const double estimate = elapsed * (1 - fraction) / fraction;
    seconds_left_ = seconds_left_ < 0 ? estimate : (1 - smoothing) * seconds_left_ + smoothing * estimate;
    left = "about " + duration_text(seconds_left_) + " left";
  }
  const int percent = static_cast<int>(100 * fraction);
  if (!output_.redraws)
    return fmt::format("{:3d} %  {}, {}", percent, what, left);
  const int   n_full = static_cast<int>(bar_width * fraction);
  std::string text = fmt::format("{}{} {:3d} %  {}, {}", std::string(n_full, '#'),
                                 std::string(bar_width - n_full, '.'), percent, left, what);
  // A line that wraps cannot be redrawn in place.
  text.resize(std::min<std::size_t>(text.size(), std::max(1, output_.width - 1)));
  return text;
}

void Progress::update(double fraction, std::string_view what)
{
  if (quiet_)
    return;
  const std::lock_guard lock(mutex_);
  furthest_ = std::max(furthest_, std::min(fraction, 1.0));
  const double now = output_.now();
  const double elapsed = now - start_;
  const double pause = output_.redraws ? redraw_seconds : plain_seconds;
  if (elapsed < (output_.redraws ? silent_seconds : plain_seconds) || now - last_shown_ < pause ||
      fraction > full)
    return;
  last_shown_ = now;
  const std::string text = line(furthest_, what, elapsed);
  output_.write(output_.redraws ? "\r\033[K" + text : text + "\n");
  line_is_drawn_ = output_.redraws;
}

void Progress::clear()
{
  const std::lock_guard lock(mutex_);
  if (line_is_drawn_)
    output_.write("\r\033[K");
  line_is_drawn_ = false;
}
} // namespace solemech::tools
