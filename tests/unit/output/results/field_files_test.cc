// SPDX-License-Identifier: Apache-2.0
#include "solver/results/field_files.h"
#include "tests/unit/output/results/synthetic.h"
#include "tests/unit/output/results/temporary_folder.h"

#include <catch2/catch.hpp>

using namespace solemech;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

TEST_CASE("one VTU a snapshot, a PVD that lists them, the names of the parts")
{
  const tests::TemporaryFolder folder;
  const auto                   picture = tests::synthetic_forefoot().result.picture;
  solver::write_field_files(folder.path, "stack", picture);
  const auto list = tests::text_of(folder.path / "stack.pvd");
  for (std::size_t i = 0; i < picture.snapshots.size(); ++i)
  {
    const auto name = "stack_000" + std::to_string(i) + ".vtu";
    CHECK_THAT(list, Contains("file=\"" + name + "\""));
    const auto vtu = tests::text_of(folder.path / name);
    // Plain booleans: the files are long and would flood the report of a failure.
    const auto holds = [&](const std::string &text) { return vtu.find(text) != std::string::npos; };
    for (const char *field : {"part", "displacement", "vertical_stress", "mean_stress", "shear_stress",
                              "vertical_stretch", "energy_density", "dissipated_density"})
      CHECK(holds("Name=\"" + std::string(field) + "\""));
    // Nine points and four linear cells for each nine-node cell.
    CHECK(holds("NumberOfPoints=\"" + std::to_string(9 * picture.cells.size()) + "\""));
    CHECK(holds("NumberOfCells=\"" + std::to_string(4 * picture.cells.size()) + "\""));
    CHECK_FALSE(holds("Date"));
    CHECK_FALSE(holds(folder.path.string()));
  }
  CHECK(tests::text_of(folder.path / "stack_parts.csv").substr(0, 31) ==
        "part,name\n0,\"board\"\n1,\"topper\"\n");
}

TEST_CASE("the same picture twice gives the same bytes")
{
  const tests::TemporaryFolder folder;
  const auto                   picture = tests::synthetic_heel().result.picture;
  solver::write_field_files(folder.path, "a", picture);
  solver::write_field_files(folder.path, "b", picture);
  CHECK(tests::text_of(folder.path / "a_0003.vtu") == tests::text_of(folder.path / "b_0003.vtu"));
}

TEST_CASE("no snapshots, no files; no folder, a message")
{
  const tests::TemporaryFolder folder;
  solver::write_field_files(folder.path, "stack", {});
  CHECK(fs::is_empty(folder.path));
  CHECK_THROWS_AS(
    solver::write_field_files(folder.path / "none", "stack", tests::synthetic_heel().result.picture),
    solver::ResultsError);
  solver::write_view_script(folder.path);
  CHECK_THAT(tests::text_of(folder.path / "view.py"), Contains("__file__"));
}
