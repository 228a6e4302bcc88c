// SPDX-License-Identifier: Apache-2.0
// Thin ownership over the HDF5 C interface: a handle that closes itself, and typed helpers for the few
// shapes a result needs (numbers, number tables, texts, attributes). Every failed call throws ResultsError.
#pragma once

#include "solver/results/result_check.h"

#include <hdf5.h>

#include <string>
#include <utility>
#include <vector>

namespace solemech::solver::hdf5
{
/// Owns one HDF5 identifier.
class Handle
{
public:
  using Closer = herr_t (*)(hid_t);

  /// @throws ResultsError when `id` says that the call that made it failed
  Handle(hid_t id, Closer closer, const std::string &what) : id_(id), closer_(closer)
  {
    if (id < 0)
      throw ResultsError("HDF5: cannot " + what);
  }
  Handle(Handle &&other) noexcept : id_(std::exchange(other.id_, -1)), closer_(other.closer_) {}
  Handle(const Handle &) = delete;
  Handle &operator=(const Handle &) = delete;
  Handle &operator=(Handle &&) = delete;
  ~Handle()
  {
    if (id_ >= 0)
      closer_(id_);
  }

  operator hid_t() const { return id_; }

private:
  hid_t  id_;
  Closer closer_;
};

using Texts = std::vector<std::string>;
using Numbers = std::vector<double>;
using Shape = std::vector<hsize_t>;

/// Throws ResultsError: the file opens but does not hold together.
[[noreturn]] void damaged(const std::string &what);

/// A file in memory. A disk that fills up under an open file leaves the library in a state in which it
/// crashes when the program ends; a file in memory can be written by ordinary means once it is complete.
Handle create_memory_file();

/// The bytes of a file in memory, as they are to lie on the disk.
std::string bytes_of(hid_t file);

Handle open_file(const std::string &path);
Handle create_group(hid_t parent, const std::string &name);
Handle open_group(hid_t parent, const std::string &name);

/// Names of the links of a group, in the order in which they were created.
Texts children(hid_t group);

bool has_child(hid_t group, const char *name);

/// Names of the attributes of an object, sorted.
Texts attributes(hid_t object);

void write_numbers(hid_t group, const std::string &name, const Numbers &values, const Shape &shape,
                   const std::string &unit, const std::string &meaning = "");
void write_integers(hid_t group, const std::string &name, const std::vector<long long> &values,
                    const Shape &shape);
void write_texts(hid_t group, const std::string &name, const Texts &values);

/// All values of a data set, last index fastest; `shape` is filled when given.
Numbers                read_numbers(hid_t group, const std::string &name, Shape *shape = nullptr);
std::vector<long long> read_integers(hid_t group, const std::string &name);
Texts                  read_texts(hid_t group, const std::string &name);

void        write_attribute(hid_t object, const std::string &name, const std::string &value);
void        write_attribute(hid_t object, const std::string &name, double value);
std::string read_text_attribute(hid_t object, const std::string &name);
double      read_number_attribute(hid_t object, const std::string &name);
/// Text attribute of a data set inside `group`.
std::string read_text_attribute_of(hid_t group, const std::string &dataset, const std::string &name);
} // namespace solemech::solver::hdf5
