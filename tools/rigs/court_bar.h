// SPDX-License-Identifier: Apache-2.0
// What a bar of a tread on a court has in common, slid once, worn down or as part of a sole.
#pragma once

#include "tools/rigs/kind.h"

#include <string>
#include <vector>

namespace solemech::tools::rigs
{
class CourtBar : public Kind
{
public:
  const char *family() const final { return "slide"; }
  std::string striker(const solver::Case &) const final { return "court"; }
  bool        presses_a_stack() const final { return false; }
  bool        layers_are_a_bar() const final { return true; }
  void        follow_layers(solver::Case &setup) const final;

  std::string                text(const solver::Case &setup, Lengths lengths) const override;
  std::vector<std::string>   cautions(const solver::Case &) const override;
  std::optional<InputRange>  input_range(const Run &run, const std::string &reading) const override;
  Captions                   captions(const Run &run) const final;
  std::vector<RigDifference> differences(const solver::Case &a, const solver::Case &b) const final;

protected:
  /// Words below the drawing of the moment.
  virtual std::string moment(const Run &run) const = 0;
};
} // namespace solemech::tools::rigs
