// SPDX-License-Identifier: Apache-2.0
// Fields as RFC 4180 has them, out and in again; what spreadsheets and instruments write besides.
#include "solver/results/csv_text.h"
#include "tests/support/catch.h"
#include "tools/language/csv_rows.h"

using namespace solemech;
using solver::csv_text;
using tools::csv_fields;

namespace
{
std::vector<std::string> texts(std::string_view row, char separator = ',')
{
  std::vector<std::string> list;
  for (const auto &field : csv_fields(row, separator))
    list.push_back(field.text);
  return list;
}

using Texts = std::vector<std::string>;
} // namespace

TEST_CASE("fields with separators and quotes inside, as in the rules of RFC 4180, section 2")
{
  CHECK(texts("aaa,bbb,ccc") == Texts{"aaa", "bbb", "ccc"});
  CHECK(texts("\"aaa\",\"bbb\",\"ccc\"") == Texts{"aaa", "bbb", "ccc"});
  CHECK(texts("\"aaa\",\"b\"\"bb\",\"ccc\"") == Texts{"aaa", "b\"bb", "ccc"});
  CHECK(texts("\"a,b\",c") == Texts{"a,b", "c"});
  CHECK(texts("\"\",\"\"\"\"") == Texts{"", "\""});
  CHECK(texts("a,,") == Texts{"a", "", ""});
}

TEST_CASE("blanks round fields go, other separators are taken, a stray quote costs no other field")
{
  CHECK(texts(" 1.5 ; \"2;5\";3", ';') == Texts{"1.5", "2;5", "3"});
  CHECK(texts("a\tb", '\t') == Texts{"a", "b"});
  CHECK(texts("travel 5\",next") == Texts{"travel 5\"", "next"});
  CHECK(texts("\"open,next") == Texts{"open", "next"});
  const auto fields = csv_fields("ab,  cd, \"ef\"");
  CHECK(fields[1].column == 6);
  CHECK(fields[2].column == 10);
}

TEST_CASE("rows with their lines, past remarks, empty lines and the mark of UTF-8")
{
  tools::CsvRows rows("\xEF\xBB\xBF# bench\r\n\r\na,b\r\n \n1,2");
  const auto     head = rows.next(), body = rows.next();
  REQUIRE(head);
  REQUIRE(body);
  CHECK(head->text == "a,b");
  CHECK(head->line == 3);
  CHECK(body->text == "1,2");
  CHECK(body->line == 5);
  CHECK_FALSE(rows.next());
}

TEST_CASE("a text that is written is read again; a formula is made a text")
{
  for (const std::string text : {"core, soft", "12\" plate", "\"\"", "plain", ""})
    CHECK(texts(csv_text(text) + "," + csv_text("next")) == Texts{text, "next"});
  for (const std::string text : {"=1+1", "+1", "-1", "@sum"})
    CHECK(texts(csv_text(text)) == Texts{"'" + text});
}

TEST_CASE("numbers with a point, with a comma where it is asked for, and nothing else")
{
  CHECK(tools::number_in("-1.5e-3") == -1.5e-3);
  CHECK(tools::number_in("+2") == 2.0);
  for (const char *text : {"", "1,5", "1 5", "nan", "inf", "1.5 N", "0x10"})
    CHECK_FALSE(tools::number_in(text));
  CHECK(tools::number_with_comma("1,5") == 1.5);
  CHECK_FALSE(tools::number_with_comma("1.5"));
  CHECK_FALSE(tools::number_with_comma("1,234.5"));
}
