// SPDX-License-Identifier: Apache-2.0
#include "tools/calibrate/library_file.h"

#include <fmt/format.h>

#include <fstream>
#include <iterator>
#include <regex>
#include <stdexcept>

namespace solemech::tools
{
namespace
{
const std::string quoted = R"~(("[^"]*"))~";

std::string per_cent(double share, int n_decimals)
{
  return fmt::format("{:.{}f} %", 100 * share, n_decimals);
}
} // namespace

LibraryFile::LibraryFile(std::filesystem::path path, const std::string &material) : path_(std::move(path))
{
  std::ifstream in(path_, std::ios::binary);
  if (!in)
    throw std::runtime_error("cannot read " + path_.string());
  text_.assign(std::istreambuf_iterator<char>(in), {});

  const std::regex block(R"~((^|\n)\[\[material\]\])~"), name(R"~((^|\n)name = ")~" + material + "\"");
  const auto       n_blocks = std::distance(std::sregex_iterator(text_.begin(), text_.end(), block), {});
  if (n_blocks != 1 || !std::regex_search(text_, name))
    fail("must hold one material, '" + material + "'");
}

void LibraryFile::fail(const std::string &what) const
{
  throw std::runtime_error(path_.string() + ": " + what);
}

void LibraryFile::replace(const std::string &entry, const std::string &pattern, const std::string &value)
{
  std::smatch found;
  if (!std::regex_search(text_, found, std::regex("\n" + entry + " = " + pattern)))
    fail(fmt::format("has no line {} = {} to put the number in; add one", entry, value));
  text_.replace(found.position(1), found.length(1), value);
}

void LibraryFile::set_reading(const std::string &entry, double share)
{
  replace(entry, quoted, '"' + per_cent(share, 1) + '"');
}

void LibraryFile::set_points(const std::string &entry, double points)
{
  replace(entry, R"~(([-+.0-9]+))~", fmt::format("{:.1f}", points));
}

void LibraryFile::set_shear_modulus(double modulus)
{
  replace("shear_modulus", quoted, fmt::format("\"{:.3f} MPa\"", modulus / 1e6));
}

void LibraryFile::set_shares(const std::string &list, const std::vector<double> &shares)
{
  const auto begin = text_.find("\n" + list + " = [");
  const auto end = text_.find("\n]", begin == std::string::npos ? 0 : begin);
  if (begin == std::string::npos || end == std::string::npos)
    fail(fmt::format("has no list {} = [ ... ] with a line for each branch", list));

  const std::regex  share(R"~(share = "([^"]*)")~");
  const std::string old = text_.substr(begin, end - begin);
  std::string       fresh;
  std::size_t       copied = 0, n_found = 0;
  for (std::sregex_iterator it(old.begin(), old.end(), share), none; it != none; ++it, ++n_found)
  {
    if (n_found == shares.size())
      fail(fmt::format("lists more {} branches than the {} that were read", list, shares.size()));
    fresh += old.substr(copied, it->position(1) - copied) + per_cent(shares[n_found], 2);
    copied = it->position(1) + it->length(1);
  }
  if (n_found != shares.size())
    fail(fmt::format("lists {} {} branches, not the {} that were read", n_found, list, shares.size()));
  text_.replace(begin, end - begin, fresh + old.substr(copied));
}

void LibraryFile::write() const
{
  auto beside = path_;
  beside += ".new";
  std::ofstream out(beside, std::ios::binary);
  out << text_;
  out.close();
  if (!out)
    fail("cannot be written");
  std::filesystem::rename(beside, path_);
}
} // namespace solemech::tools
