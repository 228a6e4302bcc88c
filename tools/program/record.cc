// SPDX-License-Identifier: Apache-2.0
#include "tools/program/record.h"

#include "tools/language/case_text.h"
#include "tools/language/checksum.h"
#include "tools/output/results/run_folder.h"
#include "tools/program/build_facts.h"
#include "tools/program/places.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace solemech::tools
{
namespace fs = std::filesystem;

namespace
{
struct NumberAndUnit
{
  double      number;
  std::string unit;
};

std::optional<NumberAndUnit> number_and_unit(const std::string &text)
{
  double      number = 0;
  const auto *end = text.data() + text.size();
  const auto [rest, error] = std::from_chars(text.data(), end, number);
  if (error != std::errc())
    return std::nullopt;
  std::string unit(rest, end);
  unit.erase(0, unit.find_first_not_of(' '));
  return NumberAndUnit{number, unit};
}

/// Values of one entry when all are numbers of one unit.
std::optional<std::pair<std::vector<double>, std::string>> numbers_of(const std::vector<std::string> &values)
{
  std::vector<double> numbers;
  std::string         unit;
  for (const std::string &value : values)
  {
    const auto read = number_and_unit(value);
    if (!read || (!numbers.empty() && read->unit != unit))
      return std::nullopt;
    numbers.push_back(read->number);
    unit = read->unit;
  }
  return std::pair{numbers, unit};
}

/// "drop.energy" -> "drop energy", as people say it.
std::string spoken(std::string address)
{
  std::replace_if(
    address.begin(), address.end(), [](char c) { return c == '.' || c == '_'; }, ' ');
  return address;
}
} // namespace

std::string answering_version()
{
  return fmt::format("{} ({})", build_facts.version, build_facts.revision);
}

std::map<std::string, std::string> program_versions()
{
  return {{"solemech", answering_version()},
          {"deal.II", build_facts.deal_ii},
          {"HDF5", build_facts.hdf5},
          {"compiler", build_facts.compiler}};
}

std::optional<Series> varied_series(const CaseFile &file)
{
  for (std::size_t axis = file.series.size(); axis-- > 0;)
  {
    const auto numbers = numbers_of(file.series[axis].values);
    if (!numbers)
      continue;
    Series series{spoken(file.series[axis].address), numbers->second, {}, {}};
    for (std::size_t i = 0; i < file.cases.size(); ++i)
    {
      // Which value of each series this case has: the last series varies fastest.
      std::string group;
      std::size_t rest = i;
      for (std::size_t s = file.series.size(); s-- > 0; rest /= file.series[s].values.size())
      {
        const std::size_t chosen = rest % file.series[s].values.size();
        if (s == axis)
          series.values.push_back(numbers->first[chosen]);
        else
          group = file.series[s].values[chosen] + (group.empty() ? "" : ", ") + group;
      }
      series.groups.push_back(group);
    }
    return series;
  }
  return std::nullopt;
}

ResultsName results_name(const fs::path &path, const std::string &label)
{
  if (path.empty())
    return {"", label};
  const fs::path  parent = path.has_parent_path() ? path.parent_path() : fs::path(".");
  std::error_code ignored; // a name that cannot be followed is taken as it stands
  const fs::path  folder = fs::weakly_canonical(parent, ignored);
  const auto      from = [&](const fs::path &base) {
    return (folder / path.filename())
      .lexically_relative(fs::weakly_canonical(base, ignored))
      .generic_string();
  };
  if (const auto name = from(case_folder()); !name.empty() && !name.starts_with(".."))
    return {"", label};
  const auto sheet = from(fs::current_path(ignored));
  return {sheet, sheet_folder_name(sheet)};
}

RunRecord planned_record(const Input &input, const std::string &canonical, const std::string &answered)
{
  RunRecord  record;
  const auto name = results_name(input.path, input.file.label);
  record.label = input.file.label;
  record.sheet = name.sheet;
  record.folder = name.folder;
  record.case_text = input.file.text;
  for (const std::string &change : input.file.changes)
    record.case_text +=
      fmt::format("{}# changed: {}\n", record.case_text.ends_with('\n') ? "" : "\n", change);
  record.series = varied_series(input.file);
  record.sheets = input.file.sheets;
  record.versions = program_versions();
  for (const solver::Case &setup : input.file.cases)
    record.runs.push_back({setup.label, setup, {}, input.file.changes});
  record.canonical_text = canonical;
  record.hash = sha256_of_text(answered);
  return record;
}

RunRecord planned_record(const Input &input)
{
  return planned_record(input, labelled_text(input.file.cases, canonical_text),
                        labelled_text(input.file.cases, answer_text));
}
} // namespace solemech::tools
