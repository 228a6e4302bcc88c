# SPDX-License-Identifier: Apache-2.0
# solemech_add_test(<name> LABEL <label> SOURCES <file>... [LIBRARIES <target>...] [DEALII] [TIMEOUT <s>]
#                   [ARGUMENTS <argument>...])
# One Catch2 program, run by ctest as a whole: a program that loads deal.II takes a fifth of a second to start.
# Labels: unit, verification, case, command-line; with them sanitizer-slow, or nightly for minutes of work that
# only `tools/test --nightly` runs: LABEL "verification;nightly". DEALII compiles it with the shared precompiled
# header; a test that skips itself must print "SKIPPED:", which ctest then shows as skipped.
function(solemech_add_test name)
  cmake_parse_arguments(PARSE_ARGV 1 test "DEALII" "LABEL;TIMEOUT" "SOURCES;LIBRARIES;ARGUMENTS")
  if(NOT test_LABEL OR NOT test_SOURCES OR test_UNPARSED_ARGUMENTS)
    message(FATAL_ERROR "solemech_add_test(${name}): needs LABEL and SOURCES; not understood: "
                        "'${test_UNPARSED_ARGUMENTS}'")
  endif()
  if(NOT test_TIMEOUT)
    set(test_TIMEOUT 300)
  endif()
  add_executable(${name} ${test_SOURCES})
  target_link_libraries(${name} PRIVATE catch_main solemech_options ${test_LIBRARIES})
  if(test_DEALII)
    target_link_libraries(${name} PRIVATE solemech_dealii)
    solemech_use_dealii_pch(${name})
  endif()
  add_test(NAME ${name} COMMAND ${name} ${test_ARGUMENTS})
  set_tests_properties(${name} PROPERTIES LABELS "${test_LABEL}" TIMEOUT ${test_TIMEOUT}
                       SKIP_REGULAR_EXPRESSION "SKIPPED:")
endfunction()
