// SPDX-License-Identifier: Apache-2.0
#include "tools/solemech/inputs.h"

#include "materials/case_errors.h"
#include "materials/library.h"
#include "tools/solemech/places.h"

namespace solemech::tools
{
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
