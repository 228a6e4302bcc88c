// SPDX-License-Identifier: Apache-2.0
// Options of one command as values: what they are called, what they set, what is said about them. Hides the
// command-line library, which takes seconds to compile.
#pragma once

#include "tools/output/answer_wish.h"

#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace solemech::tools
{
/// The command line cannot be understood; says what is wrong and names the nearest command or option.
struct UsageError : std::runtime_error
{
  using std::runtime_error::runtime_error;
};

/// What `solemech help` says of a command.
struct CommandText
{
  std::string name, about;
  std::string notes; ///< examples first, then what has to be known
};

/// Everything one command takes. Variables that are handed in are set by parse() and must outlive it.
class Options
{
public:
  explicit Options(const CommandText &text);
  ~Options();

  /// Words without a dash in front. `needs`: the message when there is none; empty: may be left out.
  void names(std::vector<std::string> &value, const std::string &what, const std::string &about,
             const std::string &needs = "");
  void name(std::string &value, const std::string &what, const std::string &about,
            const std::string &needs = "");

  /// Options with a value: "-o,--output", the value's name in help, a sentence.
  void text(const std::string &option, std::string &value, const std::string &type, const std::string &about);
  void text(const std::string &option, std::optional<std::string> &value, const std::string &type,
            const std::string &about);
  void repeated(const std::string &option, std::vector<std::string> &value, const std::string &type,
                const std::string &about);
  void choice(const std::string &option, std::string &value, const std::vector<std::string> &choices,
              const std::string &type, const std::string &about);
  void number(const std::string &option, std::optional<int> &value, const std::string &type,
              const std::string &about);
  void flag(const std::string &option, bool &value, const std::string &about);

  /// -o, --output; `usual`: the folder without it.
  void output(AnswerWish &wish, const std::string &usual);
  /// --lengths
  void lengths(AnswerWish &wish);
  /// --set ENTRY=VALUE
  void settings(std::vector<std::string> &value);

  /// True when the person gave this option.
  bool given(const std::string &option) const;

  const CommandText &command() const { return text_; }
  std::string        help() const;

  /// Reads the words after the command's name.
  /// @returns false when they ask for help
  /// @throws UsageError
  bool parse(std::vector<std::string> words);

private:
  struct Parser;
  CommandText             text_;
  std::unique_ptr<Parser> parser_;
};

/// " Did you mean 'mm'?", or nothing when no word is near.
std::string hint(const std::string &word, const std::vector<std::string> &known);
} // namespace solemech::tools
