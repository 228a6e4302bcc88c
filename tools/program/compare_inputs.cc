// SPDX-License-Identifier: Apache-2.0
#include "tools/program/compare_inputs.h"

#include "tools/answers/compare/finished_case.h"
#include "tools/language/case_errors.h"
#include "tools/language/case_text.h"
#include "tools/language/checksum.h"
#include "tools/language/library.h"
#include "tools/program/command_line.h"
#include "tools/program/places.h"
#include "tools/program/record.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
constexpr std::size_t most_cases = 12; // each is set against the first: more would be a table nobody reads

CaseFile read_one(const std::string &name, const ReadOptions &options)
{
  if (is_run_folder(name))
    return finished_case(name, options);
  std::error_code ignored;
  if (std::filesystem::is_directory(name, ignored))
    throw UsageError(
      fmt::format("'{}' is a folder, but not the folder of a finished run: it has no manifest.json.", name));
  return read_case_file(find_case(name, options.case_roots), options);
}

/// A case, what it is called, and where it came from.
struct Named
{
  std::string  label, origin;
  solver::Case setup;
};

/// Cases of one label are told apart by the folder or file they came from, else by a number.
std::vector<ComparedCase> labelled(std::vector<Named> named)
{
  const auto is_shared = [&](const Named &one) {
    return std::count_if(named.begin(), named.end(),
                         [&](const Named &other) { return other.label == one.label; }) > 1;
  };
  std::vector<ComparedCase> cases;
  for (const Named &one : named)
  {
    const std::string wish = is_shared(one) ? one.origin : one.label;
    std::string       label = wish;
    for (int number = 2; std::any_of(cases.begin(), cases.end(),
                                     [&](const ComparedCase &other) { return other.label == label; });
         ++number)
      label = fmt::format("{} ({})", wish, number);
    cases.push_back({label, one.setup});
    cases.back().setup.label = label;
  }
  return cases;
}

/// Labels joined: "heel-drop-forefoot-drop".
std::string joined_label(const std::vector<ComparedCase> &cases)
{
  std::string text = "compare";
  for (const auto &compared : cases)
    text += "-" + compared.label;
  return text;
}
} // namespace

CompareInputs read_compare_inputs(const CompareRequest &request)
{
  const auto            library = materials::Library::load(library_folder());
  const ReadOptions     options{{}, {case_folder()}, library.source()};
  CompareInputs         inputs;
  std::vector<Named>    named;
  materials::CaseErrors errors;
  for (const std::string &name : request.cases)
    try
    {
      const CaseFile file = read_one(name, options);
      inputs.record.case_text +=
        fmt::format("# {}\n{}{}", name, file.text, file.text.ends_with('\n') ? "" : "\n");
      for (const auto &change : file.changes)
        inputs.record.case_text += "# changed: " + change + "\n";
      std::string origin = name;
      while (origin.size() > 1 && origin.back() == '/')
        origin.pop_back();
      const auto sheet = request.labels.find(name);
      for (const auto &setup : file.cases)
        named.push_back({sheet != request.labels.end() ? sheet->second : setup.label, origin, setup});
    }
    catch (const materials::CaseError &error)
    {
      errors.add(error);
    }
  errors.throw_if_any();
  inputs.cases = labelled(std::move(named));
  if (inputs.cases.size() < 2)
    throw UsageError(fmt::format("`compare` needs two cases, and {} holds one. Add another case, a case file "
                                 "or the folder of a finished run.",
                                 request.cases.front()));
  if (inputs.cases.size() > most_cases)
    throw UsageError(
      fmt::format("{} cases were given; at most {} can be compared at once, each with the first.",
                  inputs.cases.size(), most_cases));

  RunRecord &record = inputs.record;
  record.label = record.folder = joined_label(inputs.cases);
  record.versions = program_versions();
  std::vector<solver::Case> setups;
  for (const auto &compared : inputs.cases)
    setups.push_back(compared.setup);
  record.canonical_text = labelled_text(setups, canonical_text);
  record.hash = sha256_of_text("comparison\n" + labelled_text(setups, answer_text));
  return inputs;
}
} // namespace solemech::tools
