// SPDX-License-Identifier: Apache-2.0
// What the readers of all kinds of readings share: values with their doubts, that of the instrument where
// none is written, the bench that a reading was taken on, the text of a sensor's file, and the list that
// readings go to.
#pragma once

#include "tools/answers/sheet/doubted.h"
#include "tools/answers/sheet/sheet.h"
#include "tools/language/fields.h"

#include <filesystem>
#include <string>
#include <vector>

namespace solemech::tools
{
/// Half band of what an instrument reads when nobody wrote one.
struct Instrument
{
  double      half_band = 0; ///< in the unit of the reading, or its share
  bool        relative = false;
  std::string name;      ///< "a height read by eye on a rule"
  std::string unit = {}; ///< may stand behind a plain number: "94 g"
};

struct Measured
{
  bool   usable = false;
  double value = 0, half_band = 0;
  int    n = 1;
};

/// One a sheet. Slips go to `problems`, readings and remarks into `sheet`.
struct ReadingDesk
{
  Sheet &sheet;
  bool   has_case; ///< sheet.setup can be used; otherwise only the form of the readings is checked
  materials::Problems             &problems;
  const materials::MaterialSource &library;

  /// Treads read so far: hours, what was lost, its half band [h, m, m].
  struct Tread
  {
    double hours = 0, lost = 0, half_band = 0;
  };
  std::vector<Tread> treads = {};

  /// `value` or the mean of `values` of a block.
  Measured measured(const materials::Fields &fields, materials::Dimension dimension,
                    const Instrument &instrument);
  /// An entry that must be above zero; 1 after a slip.
  double value_of(const materials::Fields &fields, const char *name, materials::Dimension dimension);
  /// Index of the bench of a drop: its own when the block gives height, weight or rest.
  std::size_t drop_bench(const materials::Fields &fields);
  /// Index of a new bench.
  std::size_t add_bench(Bench bench);
  /// The layer, or nullptr with a problem noted.
  const solver::Layer *find_layer(const std::string &name, const toml::node &node, const std::string &title);
  /// Text of the block's CSV file; empty with a problem noted.
  std::string file_text(const materials::Fields &fields, std::filesystem::path &path);
  void        add(Probe probe, double value, double half_band, bool held_out, const std::string &layer = "");
};
} // namespace solemech::tools
