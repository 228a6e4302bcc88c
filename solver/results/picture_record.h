// SPDX-License-Identifier: Apache-2.0
// The pictures in time as a group of the record: mesh, part names, and per snapshot positions, displacements
// and fields as tables (snapshot x node x 2, snapshot x cell x 4 corners).
#pragma once

#include "solver/results/result.h"

#include <hdf5.h>

namespace solemech::solver
{
/// Writes the group "picture" below `run`.
/// @throws ResultsError
void write_picture(hid_t run, const Picture &picture);

/// Reads it back.
/// @throws ResultsError when tables are missing or do not match
Picture read_picture(hid_t run);
} // namespace solemech::solver
