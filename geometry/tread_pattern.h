// SPDX-License-Identifier: Apache-2.0
// Patterns of a tread that are not straight bars, brought to what a section across a bar can carry.
#pragma once

namespace solemech::geometry
{
/// Angle at which a straight bar is sheared across as much as a wavy one [rad]. A wave of sine form heads
/// everywhere along it; the mean of the cosine of its heading, over its own length, is wave length over
/// length along the wave (complete elliptic integral of the second kind).
/// @param swing        from middle line to crest [m], not negative
/// @param wave_length  along the middle line [m], positive
double wavy_bar_angle(double swing, double wave_length);

/// Stiffness of a pad with free ends over that of a long bar of the same section, 3/4..1, for rubber. Long
/// bars are held from bulging along themselves (factor 4/3 over Young's modulus), pads bulge to their ends as
/// well: P. B. Lindley, J. Strain Analysis 14 (1979) 11, factor of a rectangular block between bonded faces
/// (from memory).
/// @param width, length, height  [m], positive; `length` along the bar
double pad_stiffness_share(double width, double length, double height);
} // namespace solemech::geometry
