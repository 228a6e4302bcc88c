// SPDX-License-Identifier: Apache-2.0
// A file of the material library as text, in which numbers are replaced and everything else, comments above
// all, stays to the letter.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace solemech::tools
{
class LibraryFile
{
public:
  /// @throws std::runtime_error when the file cannot be read or does not hold exactly one material of that
  /// name
  LibraryFile(std::filesystem::path path, const std::string &material);

  /// Replaces the quoted value of a top entry, e.g. ball_rebound = "61.0 %".
  /// @param share  [-], printed as per cent with one decimal
  /// @throws std::runtime_error when the file has no such line
  void set_reading(const std::string &entry, double share);

  /// The same for points of a gauge, printed with one decimal and without quotes.
  void set_points(const std::string &entry, double points);

  /// Replaces the quoted value of `shear_modulus` at the top or in the one term of a network.
  /// @param modulus  [Pa], printed as MPa to the kilopascal
  void set_shear_modulus(double modulus);

  /// Replaces the shares in a list of branches, one a branch, in order.
  /// @param list    "slipping" or "relaxing"
  /// @param shares  [-], printed as per cent with two decimals
  /// @throws std::runtime_error when the list has another length
  void set_shares(const std::string &list, const std::vector<double> &shares);

  /// Writes beside the file and renames, so that the library is never half written.
  /// @throws std::runtime_error
  void write() const;

  const std::string &text() const { return text_; }

private:
  std::filesystem::path path_;
  std::string           text_;

  [[noreturn]] void fail(const std::string &what) const;
  void              replace(const std::string &entry, const std::string &pattern, const std::string &value);
};
} // namespace solemech::tools
