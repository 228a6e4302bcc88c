// SPDX-License-Identifier: Apache-2.0
// solemech book: the index of a folder of sheets, written into that folder and nowhere else.
#include "tools/answers/book/book_pages.h"
#include "tools/language/file_text.h"
#include "tools/language/sheet.h"
#include "tools/program/commands.h"
#include "tools/program/write_ours.h"

#include <fmt/format.h>

#include <filesystem>

namespace solemech::tools
{
namespace
{
namespace fs = std::filesystem;

std::optional<book::Yardstick> yardstick_of(const BookRequest &request)
{
  // The one that a person names may lie anywhere; the one of the folder must lie in it.
  constexpr const char *usual_name = "yardstick.toml";
  const bool            is_named = !request.yardstick.empty();
  const fs::path        path = is_named ? fs::path(request.yardstick) : fs::path(request.folder) / usual_name;
  const auto            read = is_named
                                 ? materials::file_text(path, materials::largest_sheet)
                                 : materials::file_text_below(request.folder, usual_name, materials::largest_sheet);
  if (!is_named && read.state == materials::FileText::State::missing)
    return std::nullopt;
  materials::Problems problems;
  if (read.state != materials::FileText::State::read)
    problems.add({path.string(), 0, 0, "", read.reason, read.cure});
  problems.throw_if_any();
  auto yardstick = book::read_yardstick(read.text, path.string(), problems);
  problems.throw_if_any();
  return yardstick;
}
} // namespace

Exit write_book(const BookRequest &request)
{
  const fs::path folder = request.folder;
  if (!fs::is_directory(folder))
    throw UsageError(
      fmt::format("there is no folder '{}'. Give the folder with your sheets.", folder.string()));
  const auto yardstick = yardstick_of(request);
  const auto book = book::read_book(folder);
  if (book.sheets.empty())
    throw UsageError(fmt::format(
      "'{}' holds no sheets (*.toml with a [[reading]], a pair, or a stack and a rig).", folder.string()));
  const auto  now = std::chrono::system_clock::now();
  const auto  name = fs::weakly_canonical(folder).filename().string();
  const auto *points = yardstick ? &*yardstick : nullptr;
  write_ours(folder / "book.html", book::book_html(book, points, name, now), book::html_mark, "book");
  write_ours(folder / "book.csv", book::book_csv(book, points, now), book::csv_mark, "book");

  std::size_t n_readings = 0, n_results = 0, n_bad = 0;
  for (const auto &sheet : book.sheets)
  {
    n_readings += sheet.readings.size();
    n_results += sheet.result.has_value();
    n_bad += !sheet.problem.empty();
  }
  fmt::print("{} sheets, {} readings, {} results: {} and book.csv\n", book.sheets.size(), n_readings,
             n_results, (folder / "book.html").string());
  for (const auto &sheet : book.sheets)
    if (!sheet.problem.empty())
      fmt::print(stderr, "{}\n", sheet.problem);
  if (n_bad > 0)
    fmt::print(stderr, "{} of the sheets could not be read completely; the book shows what could be read\n",
               n_bad);
  return Exit::ok;
}
} // namespace solemech::tools
