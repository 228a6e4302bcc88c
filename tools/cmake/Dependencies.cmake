# SPDX-License-Identifier: Apache-2.0
# Third-party libraries, each wrapped once in a target of our own.
find_package(PkgConfig REQUIRED)
find_package(Threads REQUIRED)
find_package(fmt REQUIRED)
find_package(CLI11 REQUIRED)
find_package(nlohmann_json REQUIRED)
find_package(OpenSSL REQUIRED COMPONENTS Crypto)
find_package(ZLIB REQUIRED)
find_package(utf8cpp REQUIRED)
find_path(SOLEMECH_MUSTACHE kainjow/mustache.hpp REQUIRED)
mark_as_advanced(SOLEMECH_MUSTACHE)
find_package(TBB REQUIRED)
find_package(Eigen3 REQUIRED NO_MODULE)
# Debian's Ceres brings ATLAS along; OpenBLAS is among the packages so that it stays the BLAS in use.
find_package(Ceres REQUIRED)
add_library(solemech_ceres INTERFACE)
target_link_libraries(solemech_ceres INTERFACE Ceres::ceres)
pkg_check_modules(TOMLPLUSPLUS REQUIRED IMPORTED_TARGET tomlplusplus)
# Debian's deal.II uses the MPI flavour of HDF5; the serial one must never be mixed in.
pkg_check_modules(HDF5_MPI REQUIRED IMPORTED_TARGET hdf5-openmpi)

# deal.II is wrapped by hand: its own set-up macro would append -O2 after our -O3, ask for C++17, and put
# 150 libraries on the link line. Its headers still refer inline to libraries that libdeal.ii itself needs
# (TBB, parts of Trilinos, MPI); the linker picks just those from its list of needed libraries.
set(deal.II_FIND_QUIETLY TRUE)
find_package(deal.II 9.4 REQUIRED HINTS "${DEAL_II_DIR}" "$ENV{DEAL_II_DIR}")
find_library(SOLEMECH_DEALII_RELEASE deal.ii REQUIRED HINTS "${DEAL_II_PATH}/${DEAL_II_LIBRARY_RELDIR}")
find_library(SOLEMECH_DEALII_DEBUG deal.ii.g REQUIRED HINTS "${DEAL_II_PATH}/${DEAL_II_LIBRARY_RELDIR}")
mark_as_advanced(SOLEMECH_DEALII_RELEASE SOLEMECH_DEALII_DEBUG)
add_library(solemech_dealii INTERFACE)
target_include_directories(solemech_dealii SYSTEM INTERFACE ${DEAL_II_INCLUDE_DIRS})
target_compile_definitions(solemech_dealii INTERFACE ${DEAL_II_USER_DEFINITIONS} OMPI_SKIP_MPICXX $<$<CONFIG:Debug>:DEBUG>)
target_compile_options(solemech_dealii INTERFACE -Wno-deprecated-declarations)
target_link_options(solemech_dealii INTERFACE LINKER:--as-needed,--copy-dt-needed-entries)
target_link_libraries(solemech_dealii INTERFACE
  $<IF:$<CONFIG:Debug>,${SOLEMECH_DEALII_DEBUG},${SOLEMECH_DEALII_RELEASE}>)

include(DealiiPch)
