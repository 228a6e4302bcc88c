// SPDX-License-Identifier: Apache-2.0
// Any bytes as a case file: the reader answers with sound cases or with a CaseError that says something,
// never with anything else. Entry point of libFuzzer (LLVM documentation, "libFuzzer"); fuzz_driver.cc calls
// it without.
#include "tools/language/case_file.h"
#include "tools/language/case_text.h"
#include "tools/language/library.h"

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

using namespace solemech;

namespace
{
const tools::ReadOptions &options()
{
  static const auto library = materials::Library::load(std::string(SOLEMECH_SOURCE) + "/materials/library");
  static const auto made = [] {
    tools::ReadOptions made_options;
    made_options.library = library.source();
    made_options.case_roots = {std::string(SOLEMECH_SOURCE) + "/cases"};
    return made_options;
  }();
  return made;
}

void require(bool holds, const char *what)
{
  if (!holds)
  {
    std::fprintf(stderr, "broken promise: %s\n", what);
    std::abort();
  }
}
} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size)
{
  const std::string text(reinterpret_cast<const char *>(data), size);
  auto              here = options();
  // The first line of an input may carry a change from the command line behind this mark.
  if (text.starts_with("#set "))
    here.overrides = {text.substr(5, text.find('\n') - 5)};
  try
  {
    const auto file = tools::read_case_text(text, "fuzzed.toml", here);
    require(!file.cases.empty(), "a file that is read has a case");
    for (const auto &sound : file.cases)
    {
      const auto canonical = tools::canonical_text(sound);
      require(canonical.find("= nan") == std::string::npos, "no number of a case is NaN");
      require(sound.plug.radius > 0 && !sound.layers.empty(), "a case has a stack");
    }
  }
  catch (const materials::CaseError &error)
  {
    require(!error.problems().empty() && std::string(error.what()).size() > 10, "an error says something");
  }
  return 0;
}
