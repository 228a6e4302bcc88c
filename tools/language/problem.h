// SPDX-License-Identifier: Apache-2.0
// What is wrong with a file that a person wrote, where, and what to write instead. The problems of a file are
// collected and thrown together, in the order in which the file shows them; beyond the first few hundred they
// are only counted.
#pragma once

#include <map>
#include <stdexcept>
#include <string>
#include <vector>

namespace solemech::materials
{
/// One thing to mend. `line` 0 means that there is no line to show (a missing file, a command-line change).
struct Problem
{
  std::string file;
  int         line = 0;   ///< from 1
  int         column = 0; ///< from 1, in characters
  std::string entry;      ///< e.g. "core.thickness"; may be empty
  std::string reason;     ///< what is wrong, no full stop
  std::string cure;       ///< what to do, no full stop
};

/// The problems of a file at once; `what()` is the full text for people.
class CaseError : public std::runtime_error
{
public:
  CaseError(std::vector<Problem> problems, const std::string &text)
    : std::runtime_error(text), problems_(std::move(problems))
  {
  }
  const std::vector<Problem> &problems() const { return problems_; }

private:
  std::vector<Problem> problems_;
};

/// Collects problems of one or several files, and keeps their texts to show the lines in question.
class Problems
{
public:
  void add_source(const std::string &file, const std::string &text) { sources_[file] = text; }
  void add(Problem problem);
  bool empty() const { return list_.empty(); }

  /// True when a problem was already noted on this line: one message per slip is enough.
  bool has_line(const std::string &file, int line) const;

  /// `file:line:column: entry: reason. cure`, then the line and a caret, for each problem.
  std::string text() const;

  /// Throws CaseError when there is anything to report.
  void throw_if_any() const;

  const std::vector<Problem> &list() const { return list_; }

  /// How many there are, those that are no longer listed included: has anything been added?
  std::size_t n_noted() const { return n_noted_; }

private:
  std::vector<Problem>               list_;
  std::size_t                        n_noted_ = 0;
  std::map<std::string, std::string> sources_;
};

/// One problem without its source line: `file:line:column: entry: reason. cure`.
std::string problem_text(const Problem &problem);
} // namespace solemech::materials
