// SPDX-License-Identifier: Apache-2.0
// One kind of rig as summaries, pages, pictures and comparisons know it: everything that is said or asked of
// a rig in particular. Whoever needs it asks registry.h for the kind of a case; nobody else asks which rig a
// case has.
#pragma once

#include "solver/rig.h"
#include "tools/language/number_text.h"
#include "tools/rigs/difference.h"
#include "tools/rigs/run.h"
#include "tools/rigs/shown.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools::rigs
{
/// What the shares of the energy that was put in are of.
enum class EnergyBasis {
  none, ///< no shares: a gauge is read; of a slide all that is put in becomes heat in the end
  blow, ///< a falling weight: what comes back is thrown back
  work  ///< a press: what comes back is given back
};

/// A reading that is no better known than an input of the case that comes with a band.
struct InputRange
{
  double      low = 0, high = 0; ///< of the reading, SI
  const char *why = "";          ///< "the friction of this court"
};

/// The readings `<name>_lowest` and `<name>_highest` of a run, when they leave anything open.
std::optional<InputRange> range_beside(const Run &run, const std::string &reading, const char *why);

class Kind
{
public:
  Kind() = default;
  Kind(const Kind &) = delete;
  Kind &operator=(const Kind &) = delete;
  virtual ~Kind() = default;

  virtual solver::RigKind id() const = 0;

  /// "drop": kinds of one family give readings that can be set against each other.
  virtual const char *family() const = 0;

  /// Who touches the stack: "drop weight", "court".
  virtual std::string striker(const solver::Case &setup) const = 0;

  /// The rig in one line, with its masses, shapes and heights.
  virtual std::string text(const solver::Case &setup, Lengths lengths) const = 0;

  /// Hazards of the work at this bench, and what its numbers are not. General shop practice; local rules come
  /// first.
  virtual std::vector<std::string> cautions(const solver::Case &) const { return {}; }

  /// True when what is tested is a plug sawn out of a shoe, unless its shell is left on.
  virtual bool needs_a_plug(const solver::Case &) const { return false; }

  /// Points of a gauge are read on its scale: "Shore A".
  virtual std::string scale(const solver::Case &) const { return ""; }

  virtual EnergyBasis energy_basis() const { return EnergyBasis::none; }

  /// How well a reading is known by the inputs; none: as well as it is calculated.
  virtual std::optional<InputRange> input_range(const Run &, const std::string &) const
  {
    return std::nullopt;
  }

  /// Mass, height and guide of a weight that falls on the stack; null when nothing falls.
  virtual const solver::DropRig *fall(const solver::Case &) const { return nullptr; }

  /// True for level layers that are pressed from above, as the section is drawn.
  virtual bool presses_a_stack() const { return true; }

  /// Heading of a picture of force over time.
  virtual const char *force_title() const { return "Force on the striker"; }

  /// True when a run gave what the words of this kind are about; else it is told as any stack that is
  /// pressed.
  virtual bool tells(const Run &) const { return false; }

  /// What a run that tells() gave: one sentence, three numbers, the order of events, captions. What is empty
  /// is told as of any stack.
  virtual std::string              sentence(const Run &) const { return ""; }
  virtual std::vector<Headline>    headline(const Run &) const { return {}; }
  virtual std::vector<std::string> story(const Run &) const { return {}; }
  virtual Captions                 captions(const Run &) const { return {}; }

  /// Charts of runs that are all of this kind.
  virtual std::vector<LineBlock> blocks(const std::vector<const Run *> &) const { return {}; }

  /// True when the layers are one bar of a tread: its rubber and its height are chosen apart.
  virtual bool layers_are_a_bar() const { return false; }

  /// Numbers of the rig that follow from the layers, after these have changed.
  virtual void follow_layers(solver::Case &) const {}

  /// What differs between two rigs of this family and can be changed on its own. The striker and
  /// detail_rows() make one change of the whole rig, where a kind has nothing better.
  virtual std::vector<RigDifference> differences(const solver::Case &a, const solver::Case &b) const;

protected:
  /// Rows of differences() besides those of the striker: by itself the entries that differ.
  virtual Details detail_rows(const solver::Case &a, const solver::Case &b) const;
};

/// Each kind, in the file of its name.
#define SOLEMECH_KIND(name) const Kind &name();
SOLEMECH_RIG_KINDS(SOLEMECH_KIND)
#undef SOLEMECH_KIND
} // namespace solemech::tools::rigs
