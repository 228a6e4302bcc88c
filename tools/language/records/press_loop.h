// SPDX-License-Identifier: Apache-2.0
// Readings of a press loop: force over compression, up and down again (loop areas by the trapezoid rule, ISO
// 3386 curves in practice). With several cycles the last whole one counts: foam softens over the first ones.
#pragma once

#include "tools/language/records/impact_record.h"

namespace solemech::records
{
struct LoopReadings
{
  Reading                  loop_return; ///< work given back over work put in [-]
  Reading                  stiffness;   ///< greatest force over the compression there [N/m]
  Reading                  peak_force;  ///< [N]
  Reading                  compression; ///< greatest [m]
  int                      n_cycles = 0;
  std::vector<std::string> notes;
};

struct LoopSetup
{
  double force_gain_doubt = 0.01;   ///< share; common practice for load cells, no source
  double compression_doubt = 20e-6; ///< play of the frame [m]; common practice, no source
};

/// @param record  with compression and force; time is not needed
/// Problems: a column missing, a record that never turns back, fewer than 10 rows each way.
LoopReadings read_loop(const Record &record, const LoopSetup &setup, const std::string &file,
                       materials::Problems &problems);
} // namespace solemech::records
