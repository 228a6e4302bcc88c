// SPDX-License-Identifier: Apache-2.0
// The readings of a bench sheet: [[reading]] blocks, and the hardness and density noted at a layer. Each
// becomes an observation with its doubt and a probe that tells how the model predicts it. Doubts that are not
// written are those of the instrument (common practice, no source), and are said.
#pragma once

#include "materials/fields.h"
#include "tools/sheet/doubted.h"
#include "tools/sheet/sheet.h"

#include <span>

namespace solemech::tools
{
/// Schema of the blocks "pair" and "reading".
std::span<const materials::Entry> reading_entries();

class ReadingReader
{
public:
  /// @param has_case  sheet.setup can be used; otherwise only the form of the readings is checked
  ReadingReader(Sheet &sheet, bool has_case, materials::Problems &problems)
    : sheet_(sheet), has_case_(has_case), problems_(problems)
  {
  }

  /// "hardness" or "density" written at a layer.
  void layer_note(const std::string &layer, const std::string &entry, const toml::node &node);

  /// All [[reading]] blocks.
  void readings(const toml::table &tree);

private:
  struct Measured
  {
    bool   usable = false;
    double value = 0, half_band = 0;
    int    n = 1;
  };

  void reading(const toml::table &table);
  void drop_reading(const materials::Fields &fields, const std::string &kind);
  void impact(const materials::Fields &fields);
  void press_loop(const materials::Fields &fields);
  void hardness(const std::string &text, const std::string &layer, const std::string &where, bool held_out,
                const toml::node &node, const std::string &title);
  void density(const std::string &text, const std::string &layer, bool held_out, const toml::node &node,
               const std::string &title);
  Measured    measured(const materials::Fields &fields, materials::Dimension dimension, double instrument,
                       bool instrument_is_relative, const std::string &instrument_name);
  std::size_t drop_bench(const materials::Fields &fields);
  const solver::Layer *find_layer(const std::string &name, const toml::node &node, const std::string &title);
  std::string          file_text(const materials::Fields &fields, std::filesystem::path &path);
  void   add(Probe probe, double value, double half_band, bool held_out, const std::string &layer = "");
  double value_of(const materials::Fields &fields, const char *name, materials::Dimension dimension);

  Sheet               &sheet_;
  bool                 has_case_;
  materials::Problems &problems_;
};
} // namespace solemech::tools
