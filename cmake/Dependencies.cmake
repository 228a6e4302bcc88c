# SPDX-License-Identifier: Apache-2.0
# Third-party libraries, each wrapped once in a target of our own.
find_package(PkgConfig REQUIRED)
find_package(Threads REQUIRED)
find_package(fmt REQUIRED)
find_package(CLI11 REQUIRED)
find_package(nlohmann_json REQUIRED)
find_package(OpenSSL REQUIRED COMPONENTS Crypto)
find_package(Eigen3 REQUIRED NO_MODULE)
pkg_check_modules(TOMLPLUSPLUS REQUIRED IMPORTED_TARGET tomlplusplus)
# Debian's deal.II uses the MPI flavour of HDF5; the serial one must never be mixed in.
pkg_check_modules(HDF5_MPI REQUIRED IMPORTED_TARGET hdf5-openmpi)

find_package(deal.II 9.4 REQUIRED HINTS "${DEAL_II_DIR}" "$ENV{DEAL_II_DIR}")
add_library(solemech_dealii INTERFACE)
target_include_directories(solemech_dealii SYSTEM INTERFACE ${DEAL_II_INCLUDE_DIRS})
target_compile_definitions(solemech_dealii INTERFACE $<$<CONFIG:Debug>:DEBUG>)
target_compile_options(solemech_dealii INTERFACE -Wno-deprecated-declarations)
target_link_libraries(solemech_dealii INTERFACE
  $<IF:$<CONFIG:Debug>,${DEAL_II_TARGET_DEBUG},${DEAL_II_TARGET_RELEASE}>)
