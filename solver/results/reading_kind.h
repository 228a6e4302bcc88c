// SPDX-License-Identifier: Apache-2.0
// What is known of a reading whatever its value: its name and unit, how it is shown, judged, compared and
// bounded. The rows are in catalogue.h; everything that prints, orders or judges readings looks there.
#pragma once

#include "solver/rig.h"

#include <initializer_list>
#include <limits>
#include <string>
#include <string_view>

namespace solemech::solver
{
/// Kinds of rig that give a reading.
struct RigKinds
{
  unsigned bits = 0;

  constexpr RigKinds(std::initializer_list<RigKind> kinds)
  {
    for (const auto kind : kinds)
      bits |= 1u << static_cast<unsigned>(kind);
  }
  constexpr bool has(RigKind kind) const { return (bits >> static_cast<unsigned>(kind)) & 1u; }
};

/// How people see the value.
struct Shown
{
  std::string_view unit;       ///< display unit, "" for a pure number
  double           factor = 1; ///< display value of one SI unit
  int              digits = 2; ///< decimals
};

/// How the line of the summary is written.
enum class LineForm {
  none,         ///< no line of its own
  digits,       ///< three digits and the unit
  two_digits,   ///< two digits and the unit
  share,        ///< per cent
  length,       ///< as a rule shows it, in the lengths that the reader wishes
  fine_length,  ///< three digits, for depths that a rule does not show
  force,        ///< N or kN
  points,       ///< with the scale of the gauge
  count,        ///< rounded, "12,000"
  range,        ///< itself and the reading beside it: least and greatest
  rebound,      ///< the height beside the share
  of_the_stack, ///< a compression, with the height of the stack and the share of it
  travel_left   ///< "bottomed", or what is left
};

/// Line of the summary and column of the table with one row a run.
struct SummaryLine
{
  std::string_view heading;
  std::string_view column = {}; ///< heading with its unit; "": no column
  LineForm         form = LineForm::digits;
  std::string_view unit = {}; ///< where the terminal writes it otherwise than `Shown`: "mm3" for "mm³"
  bool             only_details = false;
};

/// Least error of a reading at mesh level and step tolerance 1, relative (shares: in points of one). Errors
/// of mesh and step have either sign and can cancel in the difference of two runs; less than this is never
/// stated. Envelope of the errors of mesh levels 0.6 to 3 and step tolerances 0.25 to 1.6 on a foam cylinder
/// of 25 mm under a flat weight of 45 mm, pressed to half its height too.
struct LeastError
{
  double mesh = 0, step = 0;
};

/// Words and thresholds of a comparison of two runs.
struct Compared
{
  int              place = 0; ///< in the order in which people read them; 0: not compared
  std::string_view label = {};
  std::string_view more = {}, less = {}; ///< "higher", "lower"
  /// Least difference that is read as real unless the inputs are known that well [SI], and the same relative
  /// to the reading; 0: no such limit.
  double           real_difference = 0, real_share = 0;
  bool             split = true; ///< the difference is split among the changes
  std::string_view unit = {};    ///< where a comparison writes it otherwise than `Shown`
  /// Envelope of the errors of shares at a target accuracy of 1 %, relative to the reading: shares of two
  /// pairs of stacks (foam against air unit, two air units) at this level and a finer one, the difference
  /// taken to the limit of mesh and step.
  double least_share_error = 1e-3;
  bool   share_error_in_points = false; ///< of one, not relative
};

/// Whether a greater value is mostly wished for (return, reserve), not wished for (force, pressure) or just a
/// fact (compression, contact time).
enum class Wish { more, less, neither };

/// Row of a trial: what a change of the reading means.
struct Tried
{
  int              place = 0; ///< in the table; 0: no row
  std::string_view name = {};
  Wish             wish = Wish::neither;
  bool             in_points = false;       ///< a share, compared in points
  std::string_view higher = {}, lower = {}; ///< what it means, for the note
  std::string_view more = {}, less = {}; ///< the same as an item of a list, {} for the amount; "": not listed
};

/// Main numbers of a run: they stand in sentences, charts and behind the words on accuracy.
struct Main
{
  int told = 0, charted = 0;   ///< place among those whose accuracy is told, and among the charts; 0: none
  std::string_view words = {}; ///< "peak force", where its accuracy is told
  std::string_view noun = {}, verb = {}; ///< "peak force", "hits harder"; "": in no sentence on several runs
};

/// What a bench shows of it, wide open [SI]. Common practice, no source. What lies outside is asked back.
struct Usual
{
  double lowest = -std::numeric_limits<double>::infinity();
  double highest = std::numeric_limits<double>::infinity();

  constexpr bool holds(double value) const { return value >= lowest && value <= highest; }
};

/// One row of the catalogue. A name that ends in '.' or '_' is that of a family: a part or a number follows
/// it.
struct ReadingKind
{
  std::string_view name;  ///< machine name, in results, files and measures
  std::string_view unit;  ///< SI unit text
  std::string_view label; ///< for people; of a family with {} for what follows its name
  Shown            shown = {};
  RigKinds         given_by = {};
  bool             with_friction = false; ///< taken as proportional to friction; that holds until a lug tips
  bool             headline = false;      ///< belongs to the numbers at the top of its page
  bool             sets_accuracy = false; ///< the target accuracy is about it
  SummaryLine      line = {"", "", LineForm::none};
  std::string_view beside = {}; ///< name of the reading that stands on the same line
  std::string_view rule = {};   ///< how it is read beyond its definition, where people ask for it
  /// What is another reading over a constant is as good as that one: its name.
  std::string_view follows = {};
  LeastError       least_error = {};
  bool             part_of_input = false; ///< energy whose error counts against what was put in
  Compared         compared = {};
  Tried            tried = {};
  Main             main = {};
  std::string_view on_sheet = {}; ///< its kind on bench sheets, of those read on a drop rig
  Usual            usual = {};
  std::string_view expected = {}; ///< sentence of the entry of [[expect]] of this name; "": there is none

  constexpr bool is_family() const { return name.ends_with('.') || name.ends_with('_'); }
  /// True for the name of the row, and for every name of a family.
  constexpr bool is_named(std::string_view full) const
  {
    return full == name || (is_family() && full.starts_with(name));
  }
  /// Name of the member of a family.
  std::string of(std::string_view part) const { return std::string(name) + std::string(part); }

  operator std::string() const { return std::string(name); } // NOLINT: a row stands for its name
  friend constexpr bool operator==(std::string_view full, const ReadingKind &kind)
  {
    return full == kind.name;
  }
};
} // namespace solemech::solver
