# SPDX-License-Identifier: Apache-2.0
# Installs the build into a fresh prefix, moves the prefix, and works from there: a list, a check, a run.
#   cmake -DBUILD=<build folder> -DWORK=<scratch folder> -P install_test.cmake
file(REMOVE_RECURSE "${WORK}")
file(MAKE_DIRECTORY "${WORK}/elsewhere")

function(run_or_fail what)
  execute_process(COMMAND ${ARGN} WORKING_DIRECTORY "${WORK}/elsewhere"
                  RESULT_VARIABLE code OUTPUT_VARIABLE output ERROR_VARIABLE messages)
  if(NOT code EQUAL 0)
    message(FATAL_ERROR "${what} ended with ${code}\n${output}\n${messages}")
  endif()
  set(output "${output}" PARENT_SCOPE)
endfunction()

run_or_fail("install" ${CMAKE_COMMAND} --install "${BUILD}" --prefix "${WORK}/first")
file(RENAME "${WORK}/first" "${WORK}/moved")

foreach(path IN ITEMS bin/solemech libexec/solemech/solemech-solve share/solemech/cases share/solemech/materials/library)
  if(NOT EXISTS "${WORK}/moved/${path}")
    message(FATAL_ERROR "the installed tree lacks ${path}")
  endif()
endforeach()

set(program "${WORK}/moved/bin/solemech")
run_or_fail("list of cases" "${program}" cases)
if(NOT output MATCHES "heel-drop")
  message(FATAL_ERROR "the installed program does not list its cases:\n${output}")
endif()
run_or_fail("list of materials" "${program}" materials)
run_or_fail("run" "${program}" run heel-drop --quiet -o "${WORK}/elsewhere/readings")
file(GLOB_RECURSE summary "${WORK}/elsewhere/readings/summary.txt")
if(NOT summary)
  message(FATAL_ERROR "the installed program left no summary.txt in the folder asked for")
endif()
file(REMOVE_RECURSE "${WORK}")
