// SPDX-License-Identifier: Apache-2.0
// Every kind of rig run once, coarsely: each reading has a row of the catalogue that knows the rig, in the
// unit of the row, and each row is given by some run.
#include "solver/results/catalogue.h"
#include "solver/rig.h"
#include "solver/run.h"
#include "tests/support/catch.h"
#include "tools/language/case_file.h"
#include "tools/language/library.h"

#include <filesystem>
#include <map>
#include <set>

using namespace solemech;

namespace
{
const std::string source = SOLEMECH_SOURCE;

struct Asked
{
  std::string              file; ///< below cases/
  std::vector<std::string> changes;
};

/// The first case of a file, as coarse as it may be.
solver::Case first_case(const Asked &asked)
{
  static const auto  library = materials::Library::load(source + "/materials/library");
  tools::ReadOptions options;
  options.case_roots = {source + "/cases"};
  options.library = library.source();
  options.overrides = asked.changes;
  options.overrides.emplace_back("accuracy=10 %");
  return tools::read_case_file(source + "/cases/" + asked.file, options).cases.front();
}

/// The first prepared case of each kind that is not asked for.
void add_kinds_left_out(std::vector<Asked> &asked)
{
  std::set<solver::RigKind> kinds;
  for (const auto &each : asked)
    kinds.insert(solver::rig_kind(first_case(each).rig));
  std::set<std::string> files;
  for (const char *folder : {"bench", "tread"})
    for (const auto &entry : std::filesystem::directory_iterator(source + "/cases/" + folder))
      files.insert(folder + ("/" + entry.path().filename().string()));
  for (const auto &file : files)
    if (kinds.insert(solver::rig_kind(first_case({file, {}}).rig)).second)
      asked.push_back({file, {}});
}

solver::Result run_coarsely(const solver::Case &input)
{
  solver::RunOptions options;
  options.pictures = false;
  options.estimate_error = false;
  options.level = -1;
  return solver::run(input, options);
}
} // namespace

TEST_CASE("every reading of every rig has a row, and every row is given by some rig")
{
  std::vector<Asked> all = {
    {"bench/heel-drop.toml", {"drop.hits=2"}},
    {"bench/press-loop.toml", {}},
    {"bench/compression-set.toml", {}},
    {"bench/compression-set.toml", {"hold.load=100 N"}},
    {"tread/durometer.toml", {"durometer.wanted=60 ShoreA"}},
    {"tread/herringbone-hardwood.toml", {}},
    {"tread/two-zone-tread.toml", {}},
    {"tread/worn-lug.toml", {"wear.known_hours=40 h", "wear.known_depth=1 mm", "wear.steps_per_minute=20"}},
    {"tread/abrasion-bench.toml", {"abrasion.found_depth=1.5 mm"}},
    {"tread/abrasion-bench.toml", {"tread.thickness=1 mm"}}, // worn through
    {"tread/abrasion-drum.toml", {}}};
  add_kinds_left_out(all);
  std::map<std::string_view, std::size_t> n_given;
  n_given[solver::catalogue.wall_contact.name] = 1; // only of a lug whose wall comes down on the court
  for (const auto &asked : all)
  {
    INFO(asked.file);
    const auto input = first_case(asked);
    const auto rig = solver::rig_kind(input.rig);
    const auto result = run_coarsely(input);
    REQUIRE(result.complete);
    for (const auto &reading : result.readings)
    {
      INFO(reading.name);
      const auto &kind = solver::kind_of(reading);
      CHECK(kind.unit == reading.unit);
      CHECK(kind.given_by.has(rig));
      ++n_given[kind.name];
    }
    for (const auto &warning : result.warnings)
      CHECK((warning.reading.empty() || solver::find_reading(warning.reading)));
  }
  for (const auto &kind : solver::all_readings())
  {
    INFO(kind.name);
    CHECK(n_given[kind.name] > 0);
  }
}
