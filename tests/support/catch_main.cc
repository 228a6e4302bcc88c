// SPDX-License-Identifier: Apache-2.0
// The main function of every test program, compiled once.
#define CATCH_CONFIG_MAIN
#include "tests/support/catch.h"
