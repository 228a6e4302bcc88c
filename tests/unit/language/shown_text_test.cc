// SPDX-License-Identifier: Apache-2.0
// Characters of UTF-8 (RFC 3629, Unicode) and those that steer a terminal (ISO 6429, UAX 9).
#include "tests/support/catch.h"
#include "tools/language/shown_text.h"

using namespace solemech::materials;

TEST_CASE("well-formed sequences and the forms that RFC 3629 forbids")
{
  CHECK(utf8_length("a", 0) == 1);
  CHECK(utf8_length("ß", 0) == 2);
  CHECK(utf8_length("€", 0) == 3);
  CHECK(utf8_length("x\xF0\x9D\x84\x9E", 1) == 4); // U+1D11E
  CHECK(utf8_length("\xF4\x8F\xBF\xBF", 0) == 4);  // U+10FFFF
  for (const char *bad : {"\x80", "\xC3", "\xC3(", "\xC0\xAF", "\xE0\x80\xAF", "\xED\xA0\x80",
                          "\xF0\x82\x82\xAC", "\xF4\x90\x80\x80", "\xF8\x88\x80\x80\x80", "\xFF"})
    CHECK(utf8_length(bad, 0) == 0);
  CHECK(valid_utf8("12 µm") == 6);
  CHECK(valid_utf8("12 \xB5m") == 3);
}

TEST_CASE("characters are counted, a byte that is none as one")
{
  CHECK(characters("größer") == 6);
  CHECK(characters("a\xFF\xB5z") == 4);
  CHECK(characters("größer", 4) == 3);
}

TEST_CASE("what steers a terminal never reaches it")
{
  CHECK(shown_text("a\x1b[2Jb") == "a?[2Jb");
  CHECK(shown_text("\xC2\x9B"
                   "31m") == "?31m"); // U+009B
  CHECK(shown_text("\x9B"
                   "31m") == "?31m");                            // the same as a bare byte
  CHECK(shown_text("a\xE2\x80\xAEtxt\xE2\x81\xA9") == "a?txt?"); // U+202E, U+2069
  CHECK(shown_text("a\nb\tc") == "a?b?c");
  CHECK(shown_text("a\nb\tc", true) == "a\nb\tc");
  CHECK(shown_text("größer €") == "größer €");
  CHECK(first_steering("abc") == std::string_view::npos);
  CHECK(first_steering("ab\x7F") == 2);
}
