// SPDX-License-Identifier: Apache-2.0
#include "tests/external/external_check.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <fstream>
#include <stdexcept>
#include <tuple>

namespace solemech::tests
{
namespace
{
/// A file name that is the same for the same row in every run (FNV-1a).
std::string row_name(const ExternalCheck &check)
{
  std::uint64_t hash = 14695981039346656037ull;
  for (const unsigned char c : check.source + '\n' + check.what)
    hash = (hash ^ c) * 1099511628211ull;
  return fmt::format("{:016x}.row", hash);
}

void validate(const ExternalCheck &check)
{
  const auto unfit = [](const std::string &text) { return text.find_first_of("|\n\r") != std::string::npos; };
  if (check.source.empty() || check.what.empty() || unfit(check.source + check.what + check.unit))
    throw std::logic_error("external check: source and quantity must be one line of text without '|'");
  if (!(std::abs(check.expected) > 0) || !std::isfinite(check.expected) || !(check.relative_tolerance > 0))
    throw std::logic_error("external check '" + check.what +
                           "': needs an expected value and a tolerance above 0");
}
} // namespace

double ExternalCheck::deviation() const
{
  return std::abs(obtained - expected) / std::abs(expected);
}

bool ExternalCheck::holds() const
{
  return deviation() <= relative_tolerance;
}

std::filesystem::path external_rows_folder()
{
  return SOLEMECH_EXTERNAL_ROWS;
}

void leave_row(const ExternalCheck &check, const std::filesystem::path &folder)
{
  validate(check);
  std::filesystem::create_directories(folder);
  const auto name = folder / row_name(check),
             draft = folder / fmt::format("{}.{}", row_name(check), ::getpid());
  {
    std::ofstream file(draft);
    file << fmt::format("{}\n{}\n{}\n{:.17g}\n{:.17g}\n{:.17g}\n", check.source, check.what, check.unit,
                        check.expected, check.obtained, check.relative_tolerance);
    if (!file.flush())
      throw std::runtime_error("cannot write " + draft.string());
  }
  std::filesystem::rename(draft, name);
}

std::vector<ExternalCheck> rows_left(const std::filesystem::path &folder)
{
  std::vector<ExternalCheck> rows;
  if (!std::filesystem::exists(folder))
    return rows;
  for (const auto &entry : std::filesystem::directory_iterator(folder))
  {
    if (entry.path().extension() != ".row")
      continue;
    std::ifstream file(entry.path());
    ExternalCheck check;
    std::string   expected, obtained, tolerance;
    for (std::string *line : {&check.source, &check.what, &check.unit, &expected, &obtained, &tolerance})
      if (!std::getline(file, *line))
        throw std::runtime_error("broken row " + entry.path().string() +
                                 "; delete it and run the tests again");
    check.expected = std::stod(expected);
    check.obtained = std::stod(obtained);
    check.relative_tolerance = std::stod(tolerance);
    rows.push_back(check);
  }
  std::sort(rows.begin(), rows.end(), [](const ExternalCheck &a, const ExternalCheck &b) {
    return std::tie(a.source, a.what) < std::tie(b.source, b.what);
  });
  return rows;
}
} // namespace solemech::tests
