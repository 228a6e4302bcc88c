// SPDX-License-Identifier: Apache-2.0
// The canonical text of a resolved case and of its pieces, and the fingerprint of a case. Spelling, units and
// comments of the file do not matter; every number that a run sees does, to the last digit. An answer shows
// more than a run sees (titles, sources, what is invented), so it has a text of its own. Loops over the
// descriptions.
#pragma once

#include "solver/case.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// One `name = value` per line, SI, 17 significant digits.
std::string canonical_text(const solver::Case &data);

/// The same with what answers show or follow besides: two cases of one text get the same answer.
std::string answer_text(const solver::Case &data);

/// One of these texts of each case, under its label.
std::string labelled_text(const std::vector<solver::Case> &cases, std::string (*text)(const solver::Case &));

/// The canonical text of a piece of a case.
std::string canonical_text(const solver::Layer &layer);
std::string canonical_text(const solver::Plug &plug);
std::string canonical_text(const solver::Rig &rig);
std::string canonical_text(const materials::Material &material);

/// Whether a run cannot tell two pieces of a case apart.
template <typename Piece>
bool same_to_a_run(const Piece &a, const Piece &b)
{
  return canonical_text(a) == canonical_text(b);
}

/// SHA-256 (FIPS 180-4) of the canonical text and of `result_version`, in 64 hexadecimal digits. The version
/// is to change whenever the program's numbers change.
std::string case_hash(const solver::Case &data, const std::string &result_version);
} // namespace solemech::tools
