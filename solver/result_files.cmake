# SPDX-License-Identifier: Apache-2.0
# Files of results: the HDF5 record and the pictures in time for ParaView.
add_library(solemech_result_files STATIC
  ${CMAKE_CURRENT_LIST_DIR}/field_files.cc
  ${CMAKE_CURRENT_LIST_DIR}/hdf5_handle.cc
  ${CMAKE_CURRENT_LIST_DIR}/picture_record.cc
  ${CMAKE_CURRENT_LIST_DIR}/result_file.cc)
target_link_libraries(solemech_result_files
  PUBLIC solemech_options
  PRIVATE solemech_dealii PkgConfig::HDF5_MPI fmt::fmt)
