// SPDX-License-Identifier: Apache-2.0
#include "tools/program/inputs.h"

#include "tools/language/case_errors.h"
#include "tools/language/library.h"
#include "tools/program/command_line.h"
#include "tools/program/places.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace
{
/// The same file twice is read once. Two files of one name could not be told apart in summaries and folders.
bool is_named_before(const std::vector<Input> &inputs, const std::filesystem::path &path)
{
  for (const Input &input : inputs)
  {
    if (input.path == path)
      return true;
    if (input.path.stem() == path.stem())
      throw UsageError(
        fmt::format("'{}' and '{}' have the same name. Rename one of them, or run them one by one.",
                    input.path.string(), path.string()));
  }
  return false;
}
} // namespace

std::vector<Input> read_inputs(const std::vector<std::string> &names,
                               const std::vector<std::string> &settings)
{
  const auto        library = materials::Library::load(library_folder());
  const ReadOptions options{settings, {case_folder()}, library.source()};

  std::vector<Input>    inputs;
  materials::CaseErrors errors;
  for (const std::string &name : names)
  {
    try
    {
      const auto path = find_case(name, options.case_roots);
      if (is_named_before(inputs, path))
        continue;
      inputs.push_back({path, read_case_file(path, options)});
    }
    catch (const materials::CaseError &error)
    {
      errors.add(error);
    }
  }
  errors.throw_if_any();
  return inputs;
}
} // namespace solemech::tools
