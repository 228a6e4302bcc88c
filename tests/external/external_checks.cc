// SPDX-License-Identifier: Apache-2.0
// external_checks --clear | --write FILE | --compare FILE
// Forgets the rows of earlier runs, writes the table from the rows left by the tests, or compares it with
// them.
#include "tests/external/checks_table.h"

#include <exception>
#include <fstream>
#include <iostream>
#include <iterator>

using namespace solemech::tests;

int main(int argc, char **argv)
try
{
  const std::string action = argc > 1 ? argv[1] : "";
  if (action == "--clear" && argc == 2)
  {
    std::filesystem::remove_all(external_rows_folder());
    std::filesystem::create_directories(external_rows_folder());
    return 0;
  }
  if ((action != "--write" && action != "--compare") || argc != 3)
  {
    std::cerr << "usage: external_checks --clear | --write FILE | --compare FILE\n";
    return 2;
  }
  const auto rows = rows_left();
  if (rows.empty())
  {
    std::cerr << "no rows in " << external_rows_folder().string() << ": run the tests first\n";
    return 1;
  }
  if (action == "--write")
  {
    std::ofstream file(argv[2]);
    file << checks_table(rows);
    if (!file.flush())
    {
      std::cerr << "cannot write " << argv[2] << '\n';
      return 4;
    }
    std::cout << rows.size() << " checks written to " << argv[2] << '\n';
    return 0;
  }
  std::ifstream     file(argv[2]);
  const std::string committed{std::istreambuf_iterator<char>(file), {}};
  const auto        differences = table_differences(committed, rows);
  for (const auto &difference : differences)
    std::cout << difference << '\n';
  std::cout << rows.size() << " outside checks, " << differences.size() << " differences from " << argv[2]
            << '\n';
  if (!differences.empty())
    std::cout << "If every change is meant: external_checks --write " << argv[2] << '\n';
  return differences.empty() ? 0 : 1;
}
catch (const std::exception &error)
{
  std::cerr << "external_checks: " << error.what() << '\n';
  return 1;
}
