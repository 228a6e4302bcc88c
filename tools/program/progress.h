// SPDX-License-Identifier: Apache-2.0
// Tells how far a calculation is and how long it will take. On a terminal one line is redrawn at most ten
// times a second, but not before two seconds have passed, so that short runs stay silent; elsewhere a plain
// line appears every ten seconds. Time left: elapsed (1 - f)/f from the mean speed so far, smoothed over the
// last reports, and unknown before a fiftieth of the work is done. The share that is done never falls.
#pragma once

#include <functional>
#include <mutex>
#include <string>
#include <string_view>

namespace solemech::tools
{
/// Where progress is written to, and its clock. Replaced in tests.
struct ProgressOutput
{
  std::function<void(std::string_view)> write;           ///< takes text as it is
  std::function<double()>               now;             ///< monotonic [s]
  bool                                  redraws = false; ///< a terminal: the line may be redrawn
  int                                   width = 80;      ///< columns of the terminal
};

/// Standard error and the steady clock.
ProgressOutput progress_on_standard_error();

/// One progress line. Safe to update from several threads.
class Progress
{
public:
  /// @param quiet  never write anything
  Progress(ProgressOutput output, bool quiet);
  ~Progress();
  Progress(const Progress &) = delete;
  Progress &operator=(const Progress &) = delete;

  /// @param fraction  of the whole work that is done, 0..1
  /// @param what      what is going on, a few words
  void update(double fraction, std::string_view what);

  /// Takes the redrawn line off the terminal. Called by the destructor too.
  void clear();

private:
  std::string line(double fraction, std::string_view what, double elapsed);

  ProgressOutput output_;
  bool           quiet_;
  double         start_;
  double         last_shown_ = -1e9;
  double         seconds_left_ = -1;
  double         furthest_ = 0; ///< greatest share told so far
  bool           line_is_drawn_ = false;
  std::mutex     mutex_;
};

/// "8 s", "2 min 5 s", "1 h 10 min".
std::string duration_text(double seconds);
} // namespace solemech::tools
