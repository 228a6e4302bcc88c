# SPDX-License-Identifier: Apache-2.0
# Writes build_facts.cc; run at every build so that the revision is that of the sources compiled.
execute_process(COMMAND git -C "${SOURCE}" describe --always --dirty --tags
                OUTPUT_VARIABLE REVISION OUTPUT_STRIP_TRAILING_WHITESPACE ERROR_QUIET RESULT_VARIABLE FAILED)
if(FAILED)
  set(REVISION "unknown")
endif()
# Changed sources get a fingerprint of their changes: a finished run of other sources must not answer for them.
if(REVISION MATCHES "-dirty$")
  execute_process(COMMAND git -C "${SOURCE}" diff HEAD
                  COMMAND git hash-object --stdin
                  OUTPUT_VARIABLE CHANGES OUTPUT_STRIP_TRAILING_WHITESPACE ERROR_QUIET)
  string(SUBSTRING "${CHANGES}" 0 7 CHANGES)
  string(APPEND REVISION "-${CHANGES}")
endif()
configure_file("${SOURCE}/tools/program/build_facts.cc.in" "${OUTPUT}" @ONLY)
