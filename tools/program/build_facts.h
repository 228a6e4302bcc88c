// SPDX-License-Identifier: Apache-2.0
// How this program was built, and which linear-algebra library the system offers it now.
#pragma once

#include <string>

namespace solemech::tools
{
struct BuildFacts
{
  const char *version;  ///< of the program
  const char *revision; ///< of the source, as git describes it; "unknown" outside a clone
  const char *compiler;
  const char *build_type;
  const char *deal_ii; ///< version of the finite-element library
  const char *hdf5;    ///< version of the file library
};

/// Facts fixed at build time (build_facts.cc is written by build_facts.cmake).
extern const BuildFacts build_facts;

/// File that the system loads for BLAS, links resolved; "not found" when there is none.
std::string blas_in_use();
} // namespace solemech::tools
