// SPDX-License-Identifier: Apache-2.0
// A bench sheet: a case file in which values may carry a doubt, foams and rubbers may be unknown, and
// readings stand. What is read from it is the case at its middle values, the numbers that are not known, and
// the readings together with how the model predicts each of them.
#pragma once

#include "solver/results/reading_kind.h"
#include "tools/answers/sheet/unknowns.h"
#include "tools/language/case_file.h"
#include "tools/study/settle.h"

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// Turns the middle case into the one that a reading was taken on: another height, a gauge, a press.
using Bench = std::function<void(solver::Case &)>;

/// Where a predicted number comes from: a reading of the run on a bench, or the case alone.
struct Probe
{
  std::string                                 name;                                     ///< for people
  materials::Dimension                        dimension = materials::Dimension::number; ///< to print it
  std::string                                 unit;      ///< to print it; empty: the usual one
  std::size_t                                 bench = 0; ///< index into Sheet::benches
  std::string                                 reading;   ///< name of the result's reading
  std::string                                 part;      ///< not empty: what this layer gives back
  std::function<double(const solver::Case &)> direct;    ///< instead of a run
};

/// A reading of a run on a bench of the sheet, under the words of bench sheets unless others are given.
Probe probe_of(const solver::ReadingKind &kind, std::size_t bench = 0, const std::string &name = {});

struct SheetReading
{
  Probe               probe;
  settle::Observation observation;
  std::string         layer; ///< of a hardness or density
};

/// A foam or rubber that the sheet does not know.
struct UnknownMaterial
{
  std::string         name;   ///< in the case
  std::string         layer;  ///< layer that shows it to people
  std::string         family; ///< "foam" or "rubber"
  materials::Material start;  ///< where it starts from
};

struct Sheet
{
  std::filesystem::path    path;
  std::string              text;       ///< as the person wrote it
  std::string              case_text;  ///< the same as a plain case, at the middle values
  std::string              bench_text; ///< its rig as blocks, with what a rig file and the command line say
  std::string              stack_text; ///< the same of its stack, where its own layers do not say it
  std::vector<std::string> taken;      ///< entries that are not written, as after --set
  CaseFile                 file;       ///< read from case_text
  solver::Case             setup;      ///< its one case
  std::string              pair, part;
  std::string              cut;   ///< what has been cut so far, as written
  std::vector<std::string> tools; ///< that the person has; empty: not said
  std::vector<Unknown>     unknowns;
  std::vector<UnknownMaterial> materials;
  std::vector<Bench>           benches; ///< the first one changes nothing
  std::vector<SheetReading>    readings;
  std::vector<std::string>     assumptions; ///< sentences: what was taken where nothing was written
  std::vector<std::string>     asked;       ///< questions: numbers that a bench hardly ever shows
  std::vector<std::string>     kept;        ///< readings that the model of this rig does not use
  std::string                  data;        ///< texts of the data files read, for the fingerprint
};

/// True when a text is a bench sheet rather than a plain case: it has readings, a pair, an unknown material
/// or a value with +-.
bool is_sheet(const std::string &text);

/// @throws materials::CaseError with every slip of sheet, case and data files; so it does when the file holds
/// both parts of a pair
Sheet read_sheet(const std::filesystem::path &path, const ReadOptions &options);

/// The sheet of one part of a file with both (pair_file.h).
Sheet read_part(const std::filesystem::path &path, const std::string &part, const ReadOptions &options);
} // namespace solemech::tools
