// SPDX-License-Identifier: Apache-2.0
// By hand: the library's own C++ interface throws types of its own, and its high-level one hides why a call
// failed; a full disk has to come out as a ResultsError with the reason of the system.
#include "solver/results/hdf5_handle.h"

#include <algorithm>
#include <functional>
#include <numeric>

namespace solemech::solver::hdf5
{
namespace
{
void check(herr_t status, const std::string &what)
{
  if (status < 0)
    throw ResultsError("HDF5: cannot " + what);
}

Handle text_type()
{
  Handle type(H5Tcopy(H5T_C_S1), H5Tclose, "make a text type");
  check(H5Tset_size(type, H5T_VARIABLE), "make a text type");
  check(H5Tset_cset(type, H5T_CSET_UTF8), "make a text type");
  return type;
}

Handle space_of(const Shape &shape)
{
  return Handle(H5Screate_simple(static_cast<int>(shape.size()), shape.data(), nullptr), H5Sclose,
                "make a data space");
}

hsize_t count(const Shape &shape)
{
  return std::accumulate(shape.begin(), shape.end(), hsize_t{1}, std::multiplies<>());
}

/// Creation properties: large tables are compressed, small ones stored plainly.
Handle storage_of(const Shape &shape)
{
  Handle properties(H5Pcreate(H5P_DATASET_CREATE), H5Pclose, "make storage properties");
  // Without times two runs of the same case give the same file, byte for byte.
  check(H5Pset_obj_track_times(properties, false), "set storage properties");
  if (count(shape) > 1024)
  {
    Shape chunk = shape;
    for (hsize_t &extent : chunk)
      extent = std::max<hsize_t>(extent, 1);
    for (std::size_t i = 0; i + 1 < chunk.size() && count(chunk) > 65536; ++i)
      chunk[i] = 1;
    if (count(chunk) > 65536)
      chunk.back() = 65536;
    check(H5Pset_chunk(properties, static_cast<int>(chunk.size()), chunk.data()), "set chunks");
    check(H5Pset_shuffle(properties), "set compression");
    check(H5Pset_deflate(properties, 1), "set compression");
  }
  return properties;
}

void write_set(hid_t group, const std::string &name, hid_t file_type, hid_t memory_type, const void *data,
               const Shape &shape, const std::string &unit, const std::string &meaning)
{
  const Handle space = space_of(shape);
  const Handle storage = storage_of(shape);
  const Handle set(H5Dcreate2(group, name.c_str(), file_type, space, H5P_DEFAULT, storage, H5P_DEFAULT),
                   H5Dclose, "create '" + name + "'");
  if (count(shape) > 0)
    check(H5Dwrite(set, memory_type, H5S_ALL, H5S_ALL, H5P_DEFAULT, data), "write '" + name + "'");
  if (!unit.empty())
    write_attribute(set, "unit", unit);
  if (!meaning.empty())
    write_attribute(set, "meaning", meaning);
}

Handle open_set(hid_t group, const std::string &name)
{
  return Handle(H5Dopen2(group, name.c_str(), H5P_DEFAULT), H5Dclose, "find '" + name + "'");
}

Shape shape_of(hid_t set)
{
  const Handle space(H5Dget_space(set), H5Sclose, "read a data space");
  const int    rank = H5Sget_simple_extent_ndims(space);
  Shape        shape(static_cast<std::size_t>(std::max(rank, 0)));
  check(H5Sget_simple_extent_dims(space, shape.data(), nullptr), "read a data space");
  return shape;
}

Handle group_properties()
{
  Handle properties(H5Pcreate(H5P_GROUP_CREATE), H5Pclose, "make group properties");
  check(H5Pset_link_creation_order(properties, H5P_CRT_ORDER_TRACKED | H5P_CRT_ORDER_INDEXED),
        "set group properties");
  check(H5Pset_obj_track_times(properties, false), "set group properties");
  return properties;
}
} // namespace

void damaged(const std::string &what)
{
  throw ResultsError("the result file is damaged: " + what);
}

Handle create_memory_file()
{
  // The library prints its call stack by default; people get our one line instead.
  H5Eset_auto2(H5E_DEFAULT, nullptr, nullptr);
  constexpr std::size_t growth = 1 << 20; // bytes
  const Handle          access(H5Pcreate(H5P_FILE_ACCESS), H5Pclose, "make access properties");
  check(H5Pset_fapl_core(access, growth, false), "keep a file in memory");
  // The name never reaches the disk.
  return Handle(H5Fcreate("results", H5F_ACC_TRUNC, H5P_DEFAULT, access), H5Fclose, "make a file in memory");
}

std::string bytes_of(hid_t file)
{
  check(H5Fflush(file, H5F_SCOPE_GLOBAL), "complete the file");
  const ssize_t size = H5Fget_file_image(file, nullptr, 0);
  std::string   bytes(static_cast<std::size_t>(std::max<ssize_t>(size, 0)), '\0');
  if (size <= 0 || H5Fget_file_image(file, bytes.data(), bytes.size()) != size)
    throw ResultsError("HDF5: cannot complete the file");
  return bytes;
}

Handle open_file(const std::string &path)
{
  H5Eset_auto2(H5E_DEFAULT, nullptr, nullptr);
  return Handle(H5Fopen(path.c_str(), H5F_ACC_RDONLY, H5P_DEFAULT), H5Fclose,
                "open " + path + " as a result file");
}

Handle create_group(hid_t parent, const std::string &name)
{
  const Handle properties = group_properties();
  return Handle(H5Gcreate2(parent, name.c_str(), H5P_DEFAULT, properties, H5P_DEFAULT), H5Gclose,
                "create group '" + name + "'");
}

Handle open_group(hid_t parent, const std::string &name)
{
  return Handle(H5Gopen2(parent, name.c_str(), H5P_DEFAULT), H5Gclose, "find group '" + name + "'");
}

bool has_child(hid_t group, const char *name)
{
  return H5Lexists(group, name, H5P_DEFAULT) > 0;
}

Texts children(hid_t group)
{
  H5G_info_t info;
  check(H5Gget_info(group, &info), "list a group");
  Texts names;
  for (hsize_t i = 0; i < info.nlinks; ++i)
  {
    char          buffer[1024];
    const ssize_t length =
      H5Lget_name_by_idx(group, ".", H5_INDEX_CRT_ORDER, H5_ITER_INC, i, buffer, sizeof buffer, H5P_DEFAULT);
    if (length < 0 || static_cast<std::size_t>(length) >= sizeof buffer)
      throw ResultsError("HDF5: cannot list a group");
    names.emplace_back(buffer);
  }
  return names;
}

Texts attributes(hid_t object)
{
  const auto collect = [](hid_t, const char *name, const H5A_info_t *, void *names) -> herr_t {
    static_cast<Texts *>(names)->emplace_back(name);
    return 0;
  };
  Texts   names;
  hsize_t index = 0;
  check(H5Aiterate2(object, H5_INDEX_NAME, H5_ITER_INC, &index, collect, &names), "list the attributes");
  return names;
}

void write_numbers(hid_t group, const std::string &name, const Numbers &values, const Shape &shape,
                   const std::string &unit, const std::string &meaning)
{
  write_set(group, name, H5T_IEEE_F64LE, H5T_NATIVE_DOUBLE, values.data(), shape, unit, meaning);
}

void write_integers(hid_t group, const std::string &name, const std::vector<long long> &values,
                    const Shape &shape)
{
  write_set(group, name, H5T_STD_I64LE, H5T_NATIVE_LLONG, values.data(), shape, "", "");
}

void write_texts(hid_t group, const std::string &name, const Texts &values)
{
  std::vector<const char *> pointers;
  for (const auto &value : values)
    pointers.push_back(value.c_str());
  const Handle type = text_type();
  const Shape  shape = {values.size()};
  const Handle space = space_of(shape);
  Handle       properties(H5Pcreate(H5P_DATASET_CREATE), H5Pclose, "make storage properties");
  check(H5Pset_obj_track_times(properties, false), "set storage properties");
  const Handle set(H5Dcreate2(group, name.c_str(), type, space, H5P_DEFAULT, properties, H5P_DEFAULT),
                   H5Dclose, "create '" + name + "'");
  if (!values.empty())
    check(H5Dwrite(set, type, H5S_ALL, H5S_ALL, H5P_DEFAULT, pointers.data()), "write '" + name + "'");
}

Numbers read_numbers(hid_t group, const std::string &name, Shape *shape)
{
  const Handle set = open_set(group, name);
  const Shape  extent = shape_of(set);
  Numbers      values(count(extent));
  if (!values.empty())
    check(H5Dread(set, H5T_NATIVE_DOUBLE, H5S_ALL, H5S_ALL, H5P_DEFAULT, values.data()),
          "read '" + name + "'");
  if (shape)
    *shape = extent;
  return values;
}

std::vector<long long> read_integers(hid_t group, const std::string &name)
{
  const Handle           set = open_set(group, name);
  std::vector<long long> values(count(shape_of(set)));
  if (!values.empty())
    check(H5Dread(set, H5T_NATIVE_LLONG, H5S_ALL, H5S_ALL, H5P_DEFAULT, values.data()),
          "read '" + name + "'");
  return values;
}

Texts read_texts(hid_t group, const std::string &name)
{
  const Handle        set = open_set(group, name);
  std::vector<char *> pointers(count(shape_of(set)));
  if (pointers.empty())
    return {};
  const Handle type = text_type();
  check(H5Dread(set, type, H5S_ALL, H5S_ALL, H5P_DEFAULT, pointers.data()), "read '" + name + "'");
  Texts values;
  for (const char *pointer : pointers)
    values.emplace_back(pointer ? pointer : "");
  const Handle space(H5Dget_space(set), H5Sclose, "read a data space");
  check(H5Dvlen_reclaim(type, space, H5P_DEFAULT, pointers.data()), "free the text of '" + name + "'");
  return values;
}

void write_attribute(hid_t object, const std::string &name, const std::string &value)
{
  const Handle type = text_type();
  const Handle space(H5Screate(H5S_SCALAR), H5Sclose, "make a data space");
  const Handle attribute(H5Acreate2(object, name.c_str(), type, space, H5P_DEFAULT, H5P_DEFAULT), H5Aclose,
                         "create attribute '" + name + "'");
  const char  *pointer = value.c_str();
  check(H5Awrite(attribute, type, &pointer), "write attribute '" + name + "'");
}

void write_attribute(hid_t object, const std::string &name, double value)
{
  const Handle space(H5Screate(H5S_SCALAR), H5Sclose, "make a data space");
  const Handle attribute(H5Acreate2(object, name.c_str(), H5T_IEEE_F64LE, space, H5P_DEFAULT, H5P_DEFAULT),
                         H5Aclose, "create attribute '" + name + "'");
  check(H5Awrite(attribute, H5T_NATIVE_DOUBLE, &value), "write attribute '" + name + "'");
}

std::string read_text_attribute(hid_t object, const std::string &name)
{
  const Handle attribute(H5Aopen(object, name.c_str(), H5P_DEFAULT), H5Aclose,
                         "find attribute '" + name + "'");
  const Handle type = text_type();
  char        *pointer = nullptr;
  check(H5Aread(attribute, type, &pointer), "read attribute '" + name + "'");
  std::string value = pointer ? pointer : "";
  H5free_memory(pointer);
  return value;
}

double read_number_attribute(hid_t object, const std::string &name)
{
  const Handle attribute(H5Aopen(object, name.c_str(), H5P_DEFAULT), H5Aclose,
                         "find attribute '" + name + "'");
  double       value = 0;
  check(H5Aread(attribute, H5T_NATIVE_DOUBLE, &value), "read attribute '" + name + "'");
  return value;
}

std::string read_text_attribute_of(hid_t group, const std::string &dataset, const std::string &name)
{
  return read_text_attribute(open_set(group, dataset), name);
}
} // namespace solemech::solver::hdf5
