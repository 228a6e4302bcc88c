// SPDX-License-Identifier: Apache-2.0
#include "tools/program/book_request.h"

namespace solemech::tools
{
CommandText text_of(const BookRequest &)
{
  return {"book", "Write an index of a folder of sheets: readings, results, points", R"(Examples:
  solemech book my-bench
  solemech book my-bench --yardstick my-bench/courts.toml

Writes book.html and book.csv into the folder. They list its sheets with their readings, and the newest result of each
from its folder `results`. A file yardstick.toml in the folder turns readings into points, by your own categories:
  format = 1
  [[category]]
  name = "springy"
  reading = "rebound"
  anchors = [["200 mm", 1], ["320 mm", 10]]
)"};
}

void describe(Options &options, BookRequest &request)
{
  options.name(request.folder, "DIR", "Folder with your sheets",
               "`book` needs the folder with your sheets, for example `solemech book my-bench`.");
  options.text("--yardstick", request.yardstick, "FILE",
               "File with your own categories (default DIR/yardstick.toml)");
}
} // namespace solemech::tools
