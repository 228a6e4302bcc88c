// SPDX-License-Identifier: Apache-2.0
// What runs are called beside each other.
#include "tests/support/catch.h"
#include "tests/unit/output/results/synthetic.h"
#include "tools/rigs/facts.h"

using namespace solemech;

namespace
{
std::vector<std::string> apart(const std::vector<std::string> &titles)
{
  std::vector<tools::Run> runs;
  for (const auto &title : titles)
    runs.emplace_back(tests::synthetic_heel()).setup.title = title;
  std::vector<const tools::Run *> places;
  for (const auto &run : runs)
    places.push_back(&run);
  return tools::rigs::titles_apart(places);
}
} // namespace

TEST_CASE("titles leave out the words that all of them end with")
{
  using Titles = std::vector<std::string>;
  CHECK(apart({"foam heel under the rod", "forefoot under the rod"}) == Titles{"foam heel", "forefoot"});
  CHECK(apart({"heel", "firm heel"}) == Titles{"heel", "firm heel"}); // no title is left without a word
  CHECK(apart({"a b c", "d b c", "e c"}) == Titles{"a b", "d b", "e"});
}

TEST_CASE("titles that do not tell runs apart are not used")
{
  CHECK(apart({"heel", "heel"}).empty());
  CHECK(apart({"heel", ""}).empty());
  CHECK(apart({"heel"}).empty());
  CHECK(apart({}).empty());
}
