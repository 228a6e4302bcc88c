// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/book/book_entries.h"

#include "tools/answers/book/newest_result.h"
#include "tools/answers/sheet/pair_file.h"
#include "tools/language/sheet.h"
#include "tools/output/results/run_folder.h"

#include <algorithm>

namespace solemech::book
{
namespace fs = std::filesystem;

namespace
{
/// The sheet in a file, or in its lines of one part of a pair. Nothing when the file is something else.
/// @param text       of the sheet
/// @param file_text  as the file holds it
/// @param problems   of reading the file
std::optional<Sheet> read_entry(const fs::path &root, const fs::path &file, const std::string &text,
                                const std::string &file_text, const std::string &part,
                                materials::Problems problems)
{
  const auto table = materials::parse_sheet(text, file.string(), problems);
  auto       sheet = sheet_entry(table, file);
  // A file that is no sane TOML may be meant as a sheet; one without our first line is another program's.
  const bool broken = std::any_of(problems.list().begin(), problems.list().end(),
                                  [](const auto &problem) { return problem.entry != "format"; });
  if (!sheet && broken)
  {
    sheet = Sheet{};
    sheet->file = file;
  }
  if (!sheet)
    return std::nullopt;
  if (!part.empty())
    sheet->part = part;
  if (!problems.empty())
    sheet->problem = materials::problem_text(problems.list().front());
  sheet->result = newest_result(root, file, file_text, part);
  return sheet;
}

/// *.toml files below the folder, without results wherever they lie, hidden folders and links.
std::vector<fs::path> toml_files(const fs::path &root)
{
  std::vector<fs::path> files;
  for (auto entry = fs::recursive_directory_iterator(root, fs::directory_options::skip_permission_denied);
       entry != fs::recursive_directory_iterator(); ++entry)
  {
    const auto name = entry->path().filename().string();
    if (entry->is_directory() && (name.starts_with('.') || name == tools::results_root ||
                                  entry->is_symlink() || fs::exists(entry->path() / "manifest.json")))
      entry.disable_recursion_pending();
    else if (entry->is_regular_file() && !entry->is_symlink() && !name.starts_with('.') &&
             entry->path().extension() == ".toml")
      files.push_back(entry->path());
  }
  std::sort(files.begin(), files.end());
  return files;
}
} // namespace

Book read_book(const fs::path &folder)
{
  Book book;
  for (const auto &file : toml_files(folder))
  {
    materials::Problems problems; // an unreadable file has no text
    const auto          text = materials::read_sheet_text(file, problems);
    const auto          relative = fs::relative(file, folder);
    const auto          add = [&](const std::string &of_part, const std::string &part) {
      if (auto sheet = read_entry(folder, relative, of_part, text, part, problems))
        book.sheets.push_back(std::move(*sheet));
    };
    if (tools::is_pair_file(text))
      for (const char *part : tools::parts_of_pair)
        add(tools::sheet_of_part(text, part), part);
    else
      add(text, "");
  }
  return book;
}
} // namespace solemech::book
