// SPDX-License-Identifier: Apache-2.0
#include "tests/external/external_check.h"

#include "tests/external/checks_table.h"
#include "tests/support/at_end.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno> // program_invocation_short_name
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <stdexcept>

namespace solemech::tests
{
namespace
{
const std::filesystem::path table_file = SOLEMECH_CHECKS_TABLE;

ChecksTable committed_table()
{
  std::ifstream file(table_file);
  return ChecksTable({std::istreambuf_iterator<char>(file), {}});
}

/// Other test programs may write at the same time: one after the other, and nobody reads half a table.
void write_rows(const std::string &program, const std::vector<ExternalCheck> &rows, bool complete)
{
  const int folder = ::open(table_file.parent_path().c_str(), O_RDONLY | O_DIRECTORY);
  ::flock(folder, LOCK_EX);
  auto table = committed_table();
  table.replace(program, rows, complete);
  const auto draft = table_file.string() + ".draft";
  std::ofstream(draft) << table.text();
  std::filesystem::rename(draft, table_file);
  ::close(folder);
}

struct KeptRows
{
  std::vector<ExternalCheck> rows;

  KeptRows()
  {
    end_checks().push_back([this](bool complete) { return agree(complete); });
  }

  bool agree(bool complete) const
  {
    const std::string program = program_invocation_short_name;
    if (std::getenv("SOLEMECH_WRITE_CHECKS"))
      write_rows(program, rows, complete);
    const auto differences = committed_table().differences(program, rows, complete);
    for (const auto &difference : differences)
      std::cout << difference << '\n';
    if (!differences.empty())
      std::cout << "If every change is meant: SOLEMECH_WRITE_CHECKS=1 " << program << '\n';
    return differences.empty();
  }
} kept;
} // namespace

double ExternalCheck::deviation() const
{
  return std::abs(obtained - expected) / std::abs(expected);
}

bool ExternalCheck::holds() const
{
  return deviation() <= relative_tolerance;
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

void keep_row(const ExternalCheck &check)
{
  validate(check);
  kept.rows.push_back(check);
}
} // namespace solemech::tests
