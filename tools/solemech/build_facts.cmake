# SPDX-License-Identifier: Apache-2.0
# Writes build_facts.cc; run at every build so that the revision is that of the sources compiled.
execute_process(COMMAND git -C "${SOURCE}" describe --always --dirty --tags
                OUTPUT_VARIABLE REVISION OUTPUT_STRIP_TRAILING_WHITESPACE ERROR_QUIET RESULT_VARIABLE FAILED)
if(FAILED)
  set(REVISION "unknown")
endif()
configure_file("${SOURCE}/tools/solemech/build_facts.cc.in" "${OUTPUT}" @ONLY)
