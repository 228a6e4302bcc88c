# SPDX-License-Identifier: Apache-2.0
# One precompiled header of the deal.II headers that the solver and its tests use: a file costs some 15 s to
# compile without it and 6 s with it. Source files keep their own includes, so they compile without it too.
add_library(solemech_dealii_pch OBJECT EXCLUDE_FROM_ALL "${CMAKE_CURRENT_LIST_DIR}/dealii_pch.cc")
target_link_libraries(solemech_dealii_pch PUBLIC solemech_options solemech_dealii)
target_precompile_headers(solemech_dealii_pch PRIVATE
  <algorithm> <array> <cmath> <functional> <memory> <optional> <string> <variant> <vector>
  <deal.II/base/function.h>
  <deal.II/base/quadrature_lib.h>
  <deal.II/base/symmetric_tensor.h>
  <deal.II/base/tensor.h>
  <deal.II/dofs/dof_handler.h>
  <deal.II/dofs/dof_tools.h>
  <deal.II/fe/fe_dgp.h>
  <deal.II/fe/fe_q.h>
  <deal.II/fe/fe_system.h>
  <deal.II/fe/fe_values.h>
  <deal.II/fe/mapping_q.h>
  <deal.II/grid/grid_generator.h>
  <deal.II/grid/tria.h>
  <deal.II/lac/affine_constraints.h>
  <deal.II/lac/dynamic_sparsity_pattern.h>
  <deal.II/lac/sparse_matrix.h>
  <deal.II/lac/sparsity_pattern.h>
  <deal.II/lac/vector.h>
  <deal.II/numerics/data_out.h>)

# solemech_use_dealii_pch(<target>): compile <target> with the shared header. <target> must link
# solemech_options and solemech_dealii and may add definitions, but no code generation options.
function(solemech_use_dealii_pch target)
  target_precompile_headers(${target} REUSE_FROM solemech_dealii_pch)
  # The header is compiled as for a library; an executable must match.
  get_target_property(type ${target} TYPE)
  if(type STREQUAL "EXECUTABLE")
    target_compile_options(${target} PRIVATE -fPIC)
  endif()
endfunction()
