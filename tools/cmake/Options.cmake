# SPDX-License-Identifier: Apache-2.0
# Compiler options shared by every target of the project.
option(SOLEMECH_SANITIZE "Build with address and undefined-behaviour sanitizers" OFF)
option(SOLEMECH_ASSERTIONS "Keep assertions in a Release build" OFF)

add_library(solemech_options INTERFACE)
target_include_directories(solemech_options INTERFACE "${PROJECT_SOURCE_DIR}")
# g++ 12 warns wrongly of overlapping copies wherever C++20 code inserts into a std::string.
target_compile_options(solemech_options INTERFACE -Wall -Wextra $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>)
target_compile_definitions(solemech_options INTERFACE $<$<CONFIG:Debug>:EIGEN_INITIALIZE_MATRICES_BY_NAN>)
if(SOLEMECH_ASSERTIONS)
  # After CMAKE_CXX_FLAGS_RELEASE, which defines NDEBUG. deal.II's own checks stay off: they need its Debug library.
  target_compile_options(solemech_options INTERFACE -UNDEBUG)
  target_compile_definitions(solemech_options INTERFACE _GLIBCXX_ASSERTIONS)
endif()
if(SOLEMECH_SANITIZE)
  # The compiler warns wrongly of uninitialised values in code that it instruments itself.
  target_compile_options(solemech_options INTERFACE -fsanitize=address,undefined -fno-omit-frame-pointer
                                                    -Wno-maybe-uninitialized)
  target_link_options(solemech_options INTERFACE -fsanitize=address,undefined)
endif()

# A compiler cache, when there is one. The sloppiness is what it needs to accept precompiled headers; paths below the
# project are hashed relative to it, so that another checkout of the same sources finds them.
find_program(SOLEMECH_CCACHE ccache)
mark_as_advanced(SOLEMECH_CCACHE)
if(SOLEMECH_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${CMAKE_COMMAND} -E env
      CCACHE_SLOPPINESS=pch_defines,time_macros,include_file_mtime,include_file_ctime
      CCACHE_BASEDIR=${PROJECT_SOURCE_DIR} CCACHE_NOHASHDIR=1 ${SOLEMECH_CCACHE})
  add_compile_options($<$<COMPILE_LANG_AND_ID:CXX,GNU>:-fpch-preprocess>)
endif()
