// SPDX-License-Identifier: Apache-2.0
// Asks the dynamic loader, so that the answer is what the solver gets: several packages may offer BLAS and
// the system's choice can change after the build.
#include "tools/program/build_facts.h"

#include <dlfcn.h>
#include <link.h>

#include <filesystem>

namespace solemech::tools
{
std::string blas_in_use()
{
  void *library = dlopen("libblas.so.3", RTLD_LAZY | RTLD_LOCAL);
  if (library == nullptr)
    return "not found";
  link_map   *map = nullptr;
  std::string path = "unknown";
  if (dlinfo(library, RTLD_DI_LINKMAP, &map) == 0)
  {
    std::error_code error;
    const auto      file = std::filesystem::canonical(map->l_name, error);
    path = error ? map->l_name : file.string();
  }
  dlclose(library);
  return path;
}
} // namespace solemech::tools
