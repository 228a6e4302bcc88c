// SPDX-License-Identifier: Apache-2.0
// Ends a run whose free faces have gone through each other.
#pragma once

#include "solver/contributions/self_contact.h"
#include "solver/model.h"

namespace solemech::solver
{
class FoldWatch : public Observer
{
public:
  explicit FoldWatch(const SelfContact &folds) : folds_(folds) {}

  std::optional<Objection> look(const AcceptedStep &) override
  {
    if (folds_.lost().empty())
      return {};
    return Objection{folds_.lost(), "Try less load or energy, a rounder striker or one of another width, "
                                    "firmer layers, or a wrapped side"};
  }

private:
  const SelfContact &folds_;
};
} // namespace solemech::solver
