// SPDX-License-Identifier: Apache-2.0
// The readings of a bench sheet: [[reading]] blocks, and the hardness and density noted at a layer. Each
// becomes an observation with its doubt and a probe that tells how the model predicts it. Doubts that are not
// written are those of the instrument (common practice, no source), and are said.
#pragma once

#include "tools/answers/sheet/reading_desk.h"

namespace solemech::tools
{
class ReadingReader
{
public:
  /// @param has_case  sheet.setup can be used; otherwise only the form of the readings is checked
  ReadingReader(Sheet &sheet, bool has_case, materials::Problems &problems,
                const materials::MaterialSource &library)
    : desk_{sheet, has_case, problems, library}
  {
  }

  /// "hardness" or "density" written at a layer.
  void layer_note(const std::string &layer, const std::string &entry, const toml::node &node);

  /// All [[reading]] blocks.
  void readings(const toml::table &tree);

private:
  void reading(const toml::table &table);

  ReadingDesk desk_;
};
} // namespace solemech::tools
