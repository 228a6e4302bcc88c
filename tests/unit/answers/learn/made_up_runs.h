// SPDX-License-Identifier: Apache-2.0
// Lessons with made-up readings: a fake solver whose numbers a test sets one by one.
#pragma once

#include "tools/language/case_file.h"
#include "tools/language/library.h"
#include "tools/output/results/run_record.h"

#include <string>
#include <vector>

namespace solemech::tests
{
inline tools::ReadOptions committed_options()
{
  static const auto  library = materials::Library::load(std::string(SOLEMECH_SOURCE) + "/materials/library");
  tools::ReadOptions options;
  options.case_roots = {std::string(SOLEMECH_SOURCE) + "/cases"};
  options.library = library.source();
  return options;
}

/// All lessons that come with the program.
inline std::vector<tools::CaseFile> committed_lessons()
{
  const auto                   options = committed_options();
  std::vector<tools::CaseFile> files;
  for (const auto &heading : tools::case_headings(options.case_roots))
    if (heading.lesson > 0)
      files.push_back(tools::read_case_file(heading.path, options));
  return files;
}

/// Every reading that a lesson may name is `value` in every run.
inline std::vector<tools::Run> made_up_runs(const tools::CaseFile &file, double value = 0.5)
{
  std::vector<tools::Run> runs;
  for (const auto &setup : file.cases)
  {
    tools::Run run{setup.label, setup, {}};
    for (const auto &name : tools::measured_readings())
      if (tools::rig_gives(name, solver::rig_kind(setup.rig)))
        run.result.readings.push_back({name, value, "1", "made up", -1});
    run.result.chambers.push_back({"unit", value, value, value, value, value, value});
    runs.push_back(std::move(run));
  }
  return runs;
}

inline void set_reading(std::vector<tools::Run> &runs, const tools::ReadingOf &which, double value)
{
  for (auto &reading : runs[which.run].result.readings)
    if (reading.name == which.name)
      reading.value = value;
}

/// Sets the first reading of a measure so that the measure takes this value; its second reading is 0.5.
inline void set_measure(std::vector<tools::Run> &runs, const tools::ReadingMeasure &measure, double value)
{
  using Kind = tools::MeasureKind;
  constexpr double second = 0.5;
  if (measure.kind != Kind::single)
    set_reading(runs, measure.second, second);
  set_reading(runs, measure.first,
              measure.kind == Kind::single       ? value
              : measure.kind == Kind::difference ? second + value
              : measure.kind == Kind::ratio      ? second * value
                                                 : second * (1 + value));
}
} // namespace solemech::tests
