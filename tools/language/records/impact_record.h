// SPDX-License-Identifier: Apache-2.0
// Readings of a drop from the record of a force plate or of a sensor on the drop weight, each with its doubt.
//
// Force: as recorded, less its level before first touch. Acceleration of the drop weight: a sensor reads
// force over mass; F = m (a - level before touch), whichever way it was zeroed: zeroed at rest it shows -1 g
// in free fall, zeroed in free fall 0. What it shows is said, and held against what the person states. No
// filter: the peak is that of a quartic over 15 % of the contact time each way (as for computed runs), areas
// and the double integration need none. Touch and end: the force line through two thresholds (2 % and 6 % of
// the peak) taken to zero, so that noise before and after does not count. Compression: m x'' = m g - F,
// integrated twice from the speed at touch (trapezoid); it needs that speed. Doubt: each input is moved by
// its doubt in turn, the changes of a reading are added as squares.
#pragma once

#include "tools/language/records/record_file.h"

#include <string>
#include <vector>

namespace solemech::records
{
enum class Zero { inferred, free_fall, at_rest };

struct Amount
{
  double value = 0, doubt = 0; ///< doubt: one standard deviation; 0: taken as exact
};

struct ImpactSetup
{
  Amount mass;                  ///< of the drop weight [kg]
  Amount speed;                 ///< at first touch [m/s]
  double gain_doubt = 0.02;     ///< of the sensor, share; common practice for piezo sensors, no source
  double gravity = 9.80665;     ///< [m/s2]
  Zero   zero = Zero::inferred; ///< of an acceleration record, as the person states it
};

/// One reading; `at_least` when the sensor clipped. Not known: nothing could be read, `why` says so.
struct Reading
{
  bool        known = false, at_least = false;
  double      value = 0, doubt = 0;
  std::string why;
};

struct ImpactReadings
{
  Reading                  peak_force;    ///< [N]
  Reading                  deceleration;  ///< F / (m g) - 1 [g]
  Reading                  contact_time;  ///< [s]
  Reading                  compression;   ///< greatest [m]
  Reading                  energy_return; ///< speed when the force is gone over speed at touch, squared [-]
  std::vector<double>      time, force, travel; ///< of the contact, from first touch [s, N, m]
  std::vector<std::string> notes;               ///< zero, polarity, saturation, gaps, uneven sampling
};

/// @param record  with time and either force or acceleration
/// @param file    for messages
/// Problems: no time or value column, mass or speed missing where needed, no quiet stretch before the pulse,
/// no pulse above the noise, a gap in the contact, fewer than 20 samples in the contact, a stated zero that
/// the record contradicts.
ImpactReadings read_impact(const Record &record, const ImpactSetup &setup, const std::string &file,
                           materials::Problems &problems);
} // namespace solemech::records
