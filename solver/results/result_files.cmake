# SPDX-License-Identifier: Apache-2.0
# Files of results: how each is written, the HDF5 record and the pictures in time for ParaView.
add_library(solemech_write_file STATIC ${CMAKE_CURRENT_LIST_DIR}/write_file.cc)
target_link_libraries(solemech_write_file PUBLIC solemech_options PRIVATE fmt::fmt)

add_library(solemech_result_files STATIC
  ${CMAKE_CURRENT_LIST_DIR}/field_files.cc
  ${CMAKE_CURRENT_LIST_DIR}/hdf5_handle.cc
  ${CMAKE_CURRENT_LIST_DIR}/picture_record.cc
  ${CMAKE_CURRENT_LIST_DIR}/result_file.cc)
target_link_libraries(solemech_result_files
  PUBLIC solemech_options solemech_write_file
  PRIVATE solemech_dealii PkgConfig::HDF5_MPI fmt::fmt)
