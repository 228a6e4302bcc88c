// SPDX-License-Identifier: Apache-2.0
// The only include of the test framework (Catch2, version 2). A move to version 3 changes this file and
// catch_main.cc alone. State the tolerance of every Approx: its default is 1.2e-5 relative.
#pragma once

#include <catch2/catch.hpp>
