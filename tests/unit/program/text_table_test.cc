// SPDX-License-Identifier: Apache-2.0
#include "tests/support/catch.h"
#include "tools/program/text_table.h"

using namespace solemech::tools;

TEST_CASE("columns are as wide as their widest cell, counted in characters")
{
  TextTable table({Align::left, Align::right, Align::left});
  table.add_row({"a", "23 °C", "x"});
  table.add_row({"bcd", "7 mm", ""});
  CHECK(table.text() == "a    23 °C  x\nbcd   7 mm\n");
  CHECK(table.text(1) == " a    23 °C  x\n bcd   7 mm\n");
}

TEST_CASE("the last column is broken to fit the page")
{
  TextTable table({Align::left, Align::left});
  table.add_row({"source", "from memory, one word after the other"});
  CHECK(table.text(0, 34) == "source  from memory, one word\n        after the other\n");
  CHECK(table.text(0, 200) == "source  from memory, one word after the other\n");
  CHECK(table.text() == "source  from memory, one word after the other\n");
}
