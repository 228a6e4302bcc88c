// SPDX-License-Identifier: Apache-2.0
// A case changed by words: whoever writes them, the same words make the same case and a slip in them is told
// and cured alike.
#include "tests/support/catch.h"
#include "tools/language/case_file.h"
#include "tools/language/case_text.h"
#include "tools/language/library.h"

#include <functional>
#include <map>

using namespace solemech;
using Catch::Matchers::Contains;

namespace
{
const std::string sheet = R"(format = 1
[[layer]]
name = "core"
material = "eva-soft"
thickness = "16 mm"
[drop]
mass = "1.2 kg"
height = "400 mm"
diameter = "40 mm"
)";

tools::ReadOptions whole_library()
{
  static const auto  library = materials::Library::load(std::string(SOLEMECH_SOURCE) + "/materials/library");
  tools::ReadOptions options;
  options.library = library.source();
  return options;
}

tools::CaseFile read_with(const std::string &text, const std::function<void(tools::ReadOptions &)> &words)
{
  auto options = whole_library();
  words(options);
  return tools::read_case_text(text, "bench.toml", options);
}

/// The last case of the sheet with an entry of another value, by every way to say so.
std::map<std::string, std::function<solver::Case()>> all_ways(const std::string &address)
{
  const auto last = [](const std::string &text, const std::function<void(tools::ReadOptions &)> &words) {
    return read_with(text, words).cases.back();
  };
  const auto nothing = [](tools::ReadOptions &) {};
  return {
    {"--set", [=] { return last(sheet, [&](auto &o) { o.overrides = {address + "=\"18 mm\""}; }); }},
    {"--set, spaced", [=] { return last(sheet, [&](auto &o) { o.overrides = {address + " = 18 mm"}; }); }},
    {"--swap", [=] { return last(sheet, [&](auto &o) { o.swaps = {address + " = 18 mm"}; }); }},
    {"--range", [=] { return last(sheet, [&](auto &o) { o.range = address + "=17..18 mm by 1 mm"; }); }},
    {"[change]", [=] { return last(sheet + "[change]\n" + address + " = \"18 mm\"\n", nothing); }},
    {"[[series]]",
     [=] {
       return last(sheet + "[[series]]\nvary = \"" + address + "\"\nvalues = [\"17 mm\", \"18 mm\"]\n",
                   nothing);
     }},
  };
}
} // namespace

TEST_CASE("the same words make the same case, whoever writes them")
{
  auto text = sheet;
  text.replace(text.find("16 mm"), 5, "18 mm");
  const auto written = tools::canonical_text(read_with(text, [](auto &) {}).cases.front());
  for (const auto &[way, changed] : all_ways("core.thickness"))
  {
    INFO(way);
    CHECK(tools::canonical_text(changed()) == written);
  }
}

TEST_CASE("a slip is told and cured alike, whoever writes it")
{
  for (const auto &[way, changed] : all_ways("core.thicknes"))
  {
    INFO(way);
    CHECK_THROWS_WITH(changed(),
                      Contains("core.thicknes: there is no such entry. Did you mean \"core.thickness\"?"));
  }
}

TEST_CASE("blanks round the = do not keep a series from being fixed")
{
  const auto series = sheet + "[[series]]\nvary = \"core.thickness\"\nvalues = [\"17 mm\", \"18 mm\"]\n";
  for (const char *set : {"core.thickness=20 mm", "core.thickness = 20 mm", " core.thickness = \"20 mm\""})
  {
    INFO(set);
    const auto file = read_with(series, [&](auto &options) { options.overrides = {set}; });
    CHECK(file.series.empty());
    REQUIRE(file.cases.size() == 1);
    CHECK(file.cases.front().layers.front().thickness == Approx(0.020));
  }
}

TEST_CASE("what nobody wrote is told, and what a change or a series wrote is not")
{
  const auto assumed = [](const tools::CaseFile &file) {
    std::string text;
    for (const auto &entry : file.assumed)
      text += entry + "; ";
    return text;
  };
  CHECK_THAT(assumed(read_with(sheet, [](auto &) {})), Contains("surroundings.temperature"));
  CHECK_THAT(assumed(read_with(sheet, [](auto &o) { o.overrides = {"surroundings.temperature=10 °C"}; })),
             !Contains("surroundings.temperature"));
  CHECK_THAT(assumed(read_with(
               sheet + "[[series]]\nvary = \"surroundings.temperature\"\nvalues = [\"10 °C\", \"20 °C\"]\n",
               [](auto &) {})),
             !Contains("surroundings.temperature"));
}
