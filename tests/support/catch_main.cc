// SPDX-License-Identifier: Apache-2.0
// The main function of every test program, compiled once.
#define CATCH_CONFIG_RUNNER
#include "tests/support/at_end.h"
#include "tests/support/catch.h"

int main(int argc, char **argv)
{
  Catch::Session session;
  int            status = session.run(argc, argv);
  for (const auto &holds : solemech::tests::end_checks())
    if (!holds(!session.config().hasTestFilters()) && status == 0)
      status = 1;
  return status;
}
