// SPDX-License-Identifier: Apache-2.0
// By hand: a TOML parser stops at the first slip. A sheet from a bench has several of a kind that no parser
// mends (units outside of quotes, curly quotes, decimal commas), and all of them are to be said at once, with
// their cures.
#include "tools/language/sheet_scanner.h"

#include "tools/language/shown_text.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <cctype>

namespace solemech::materials
{
namespace
{
bool is_bare(char c)
{
  return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || c == '-';
}

/// Parts of a key beyond which the parser, which goes into each, is not asked.
constexpr int most_dots = 30;

/// The looking-through itself: walks over the text once, knows strings and comments, mends a copy.
class Scanner
{
public:
  Scanner(std::string_view text, const std::string &file, Problems &problems)
    : text_(text), file_(file), problems_(problems)
  {
    mended_.reserve(text.size() + 64);
  }

  /// Mended text; "" when the bytes are no text at all.
  std::string mended()
  {
    while (at_ < text_.size())
      if (!step())
        return {};
    return std::move(mended_);
  }

  bool broken_bytes() const { return broken_bytes_; }

private:
  void problem(const std::string &reason, const std::string &cure)
  {
    if (line_ != told_line_ && !problems_.has_line(file_, line_))
      problems_.add({file_, line_, column_, key_, reason, cure});
    told_line_ = line_;
  }

  void take(std::size_t bytes)
  {
    mended_.append(text_.substr(at_, bytes));
    at_ += bytes;
    ++column_;
  }

  void new_line()
  {
    take(1);
    ++line_;
    column_ = 1;
    key_.clear();
    word_.clear();
  }

  bool starts(std::string_view what) const { return text_.substr(at_, what.size()) == what; }

  /// Control characters and broken UTF-8 are refused wherever they are.
  bool sound()
  {
    const auto byte = static_cast<unsigned char>(text_[at_]);
    if (byte == 0 || ((byte < 0x20 || byte == 0x7f) && byte != '\t' && byte != '\n' && byte != '\r'))
    {
      problems_.add({file_, line_, column_, "", fmt::format("this is not a text file (byte 0x{:02X})", byte),
                     "Give a plain text file in UTF-8"});
      return false;
    }
    return true;
  }

  void mend_broken_byte()
  {
    problem(fmt::format("byte 0x{:02X} is not valid UTF-8", static_cast<unsigned char>(text_[at_])),
            "Save the file as UTF-8 (in the editor: encoding UTF-8)");
    broken_bytes_ = true;
    mended_ += '?';
    ++at_;
    ++column_;
  }

  bool step()
  {
    if (!sound())
      return false;
    const auto length = utf8_length(text_, at_);
    if (length == 0)
    {
      mend_broken_byte();
      return true;
    }
    const char c = text_[at_];
    if (c == '.' && ++n_dots_ > most_dots)
    {
      problem("this name has too many parts", "Write names of a few parts, such as layer.core.thickness");
      return false;
    }
    if (c != '.' && !is_bare(c) && c != ' ' && c != '\t' && c != '"' && c != '\'')
      n_dots_ = 0;
    if (c == '\n')
      new_line();
    else if (c == '#')
      return comment();
    else if (c == '"' || c == '\'')
      return string();
    else if (c == '=')
    {
      take(1);
      key_ = word_;
      word_.clear();
      while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\t'))
        take(1);
      value();
    }
    else if (length > 1)
      foreign(length);
    else
    {
      if (is_bare(c) || c == '.')
        word_ += c;
      else if (c != ' ' && c != '\t')
        word_.clear();
      take(1);
    }
    return true;
  }

  bool comment()
  {
    while (at_ < text_.size() && text_[at_] != '\n')
    {
      if (!sound())
        return false;
      const auto length = utf8_length(text_, at_);
      if (length == 0)
        mend_broken_byte();
      else
        take(length);
    }
    return true;
  }

  bool string()
  {
    const char        quote = text_[at_];
    const std::string three(3, quote);
    const bool        long_form = starts(three);
    for (int i = 0; i < (long_form ? 3 : 1); ++i)
      take(1);
    while (at_ < text_.size())
    {
      if (!sound())
        return false;
      if (text_[at_] == '\n')
      {
        if (!long_form)
          return close(quote);
        new_line();
      }
      else if (quote == '"' && text_[at_] == '\\' && at_ + 1 < text_.size() && text_[at_ + 1] != '\n')
      {
        take(1);
        const auto length = utf8_length(text_, at_);
        if (length == 0)
          mend_broken_byte();
        else
          take(length);
      }
      else if (long_form ? starts(three) : text_[at_] == quote)
      {
        for (int i = 0; i < (long_form ? 3 : 1); ++i)
          take(1);
        return true;
      }
      else
      {
        const auto length = utf8_length(text_, at_);
        if (length == 0)
          mend_broken_byte();
        else
          take(length);
      }
    }
    return long_form || close(quote);
  }

  /// The missing end of a text, as far as the line goes.
  bool close(char quote)
  {
    problem("a text is not closed", fmt::format("Put the closing quote {} on the same line", quote));
    if (!mended_.empty() && mended_.back() == '\r')
      mended_.back() = ' ';
    if (mended_.back() == '\\')
      mended_ += ' ';
    mended_ += quote;
    return true;
  }

  bool is_curly() const { return starts("“") || starts("”") || starts("„") || starts("‘") || starts("’"); }

  /// Bytes of the mark at a place that ends a text in curly quotes; 0: none.
  std::size_t closing_mark(std::size_t place) const
  {
    for (const std::string_view mark : {"”", "“", "’", "‘", "\""})
      if (text_.substr(place).starts_with(mark))
        return mark.size();
    return 0;
  }

  /// A character outside ASCII where TOML has no place for it.
  void foreign(std::size_t length)
  {
    const std::string shown(text_.substr(at_, length));
    if (is_curly())
    {
      problem("curly quotes", "Use straight quotes: \"...\"");
      mended_ += '"';
    }
    else if (shown == "\u00a0")
    {
      problem("a non-breaking space", "Type an ordinary space");
      mended_ += ' ';
    }
    else
    {
      problem(fmt::format("'{}' may only stand inside quotes or a comment", shown),
              "Put the text in straight quotes: \"...\"");
      mended_ += '_';
    }
    at_ += length;
    ++column_;
  }

  /// Right after '=': looks at the raw text of the value up to the end of line, comment, '=', ',' or '}'.
  void value()
  {
    if (at_ >= text_.size())
      return;
    if (is_curly())
      return curly_value();
    const char c = text_[at_];
    if (c == '"' || c == '\'' || c == '[' || c == '{' || c == '\n' || c == '\r' || c == '#')
      return;
    constexpr auto ends = "\n\r#=,}]\"'";
    auto           end = text_.find_first_of(ends, at_);
    end = end == std::string_view::npos ? text_.size() : end;
    if (end < text_.size() && text_[end] == ',' && end + 1 < text_.size() && end > at_ &&
        std::isdigit(static_cast<unsigned char>(text_[end - 1])) &&
        std::isdigit(static_cast<unsigned char>(text_[end + 1])))
      end = std::min(text_.find_first_of(ends, end + 1), text_.size());
    std::string raw(text_.substr(at_, end - at_));
    while (!raw.empty() && (raw.back() == ' ' || raw.back() == '\t'))
      raw.pop_back();
    if (raw.empty() || raw == "true" || raw == "false" || broken(raw))
      return;
    const bool numeric = std::isdigit(static_cast<unsigned char>(c)) || c == '+' || c == '-' || c == '.';
    if (numeric && is_toml_number(raw))
      return;
    if (raw.find(',') != std::string::npos)
    {
      auto dotted = raw;
      dotted[dotted.find(',')] = '.';
      const bool has_unit = !is_toml_number(dotted);
      problem(fmt::format("{} has a decimal comma", raw),
              fmt::format("Use a decimal point{}: {}", has_unit ? " and quotes" : "",
                          has_unit ? '"' + dotted + '"' : dotted));
      raw = dotted;
      end = at_ + raw.size();
    }
    else if (numeric)
      problem(fmt::format("{} is not in quotes", raw),
              fmt::format("Put values with units in quotes: \"{}\"", raw));
    else if (raw == "nan" || raw == "inf")
      problem(fmt::format("{} is not a finite number", raw), "Write a number");
    else
      problem(fmt::format("{} is not in quotes", raw), fmt::format("Put text in quotes: \"{}\"", raw));
    replace(raw.size(), raw);
  }

  bool broken(std::string_view raw) const
  {
    for (std::size_t i = 0; i < raw.size();)
    {
      const auto length = utf8_length(raw, i);
      if (length == 0 || static_cast<unsigned char>(raw[i]) < 0x20)
        return true;
      i += length;
    }
    return false;
  }

  static bool is_toml_number(const std::string &raw)
  {
    try
    {
      return !toml::parse("x = " + raw)["x"].is_string();
    }
    catch (const toml::parse_error &)
    {
      return false;
    }
  }

  /// `= “12 mm”`: mended to straight quotes as one piece.
  void curly_value()
  {
    problem("curly quotes", "Use straight quotes: \"...\"");
    const auto opening = utf8_length(text_, at_);
    const auto begin = at_ + opening;
    auto       end = begin;
    while (end < text_.size() && text_[end] != '\n' && text_[end] != '\r' && closing_mark(end) == 0)
      ++end;
    std::string body(text_.substr(begin, end - begin));
    at_ = end + closing_mark(end);
    ++column_;
    for (const char c : body)
      if (c == '"' || c == '\\' || static_cast<unsigned char>(c) < 0x20)
        body.clear();
    if (broken(body))
      body.clear();
    mended_ += '"' + body + '"';
    column_ += static_cast<int>(body.size()) + 1;
  }

  void replace(std::size_t bytes, const std::string &with)
  {
    std::string quoted;
    for (const char c : with)
      if (c != '"' && c != '\\')
        quoted += c;
    mended_ += '"' + quoted + '"';
    at_ += bytes;
    column_ += static_cast<int>(bytes);
  }

  std::string_view text_;
  std::string      file_;
  Problems        &problems_;
  std::string      mended_;
  std::string      word_, key_;
  std::size_t      at_ = 0;
  int              line_ = 1, column_ = 1;
  int              told_line_ = 0; ///< that the last problem was on
  int              n_dots_ = 0;    ///< of the key at hand
  bool             broken_bytes_ = false;
};
} // namespace

std::string mended_sheet(std::string_view text, const std::string &file, Problems &problems,
                         bool &broken_bytes)
{
  Scanner scanner(text, file, problems);
  auto    mended = scanner.mended();
  broken_bytes = scanner.broken_bytes();
  return mended;
}
} // namespace solemech::materials
