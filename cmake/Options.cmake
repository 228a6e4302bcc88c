# SPDX-License-Identifier: Apache-2.0
# Compiler options shared by every target of the project.
option(SOLEMECH_SANITIZE "Build with address and undefined-behaviour sanitizers" OFF)
option(SOLEMECH_ASSERTIONS "Keep assertions in a Release build" OFF)

add_library(solemech_options INTERFACE)
target_include_directories(solemech_options INTERFACE "${PROJECT_SOURCE_DIR}")
target_compile_options(solemech_options INTERFACE -Wall -Wextra)
target_compile_options(solemech_options INTERFACE $<$<CONFIG:Release>:-O3>)
if(SOLEMECH_ASSERTIONS)
  target_compile_options(solemech_options INTERFACE -UNDEBUG)
else()
  target_compile_definitions(solemech_options INTERFACE $<$<CONFIG:Release>:NDEBUG>)
endif()
if(SOLEMECH_SANITIZE)
  target_compile_options(solemech_options INTERFACE -fsanitize=address,undefined -fno-omit-frame-pointer)
  target_link_options(solemech_options INTERFACE -fsanitize=address,undefined)
endif()
