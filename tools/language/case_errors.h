// SPDX-License-Identifier: Apache-2.0
// Gathers the problems of several files, so that a person sees all of them in one go.
#pragma once

#include "tools/language/problem.h"

#include <string>
#include <utility>
#include <vector>

namespace solemech::materials
{
class CaseErrors
{
public:
  void add(const CaseError &error)
  {
    problems_.insert(problems_.end(), error.problems().begin(), error.problems().end());
    text_ += (text_.empty() || text_.ends_with('\n') ? "" : "\n") + std::string(error.what());
  }

  /// Throws one CaseError with everything gathered so far.
  void throw_if_any() const
  {
    if (!problems_.empty())
      throw CaseError(problems_, text_);
  }

private:
  std::vector<Problem> problems_;
  std::string          text_;
};
} // namespace solemech::materials
