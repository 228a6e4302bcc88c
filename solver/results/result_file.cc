// SPDX-License-Identifier: Apache-2.0
#include "solver/results/result_file.h"

#include "solver/results/hdf5_handle.h"
#include "solver/results/picture_record.h"
#include "solver/results/write_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <mutex>

namespace solemech::solver
{
namespace
{
using namespace hdf5;

constexpr double      schema = 1;
constexpr const char *file_kind = "solemech results";

/// One number of Result, SolverFacts or ChamberFacts kept as an attribute or a column.
template <typename Owner>
struct Number
{
  const char *name;
  double Owner::*value;
};
const Number<Result>      result_numbers[] = {{"input_energy", &Result::input_energy},
                                              {"time_of_peak", &Result::time_of_peak},
                                              {"time_of_loss", &Result::time_of_loss}};
const Number<SolverFacts> fact_numbers[] = {{"seconds", &SolverFacts::seconds},
                                            {"ledger_residual", &SolverFacts::ledger_residual},
                                            {"ledger_numerical", &SolverFacts::ledger_numerical}};
const std::pair<const char *, std::size_t SolverFacts::*> fact_counts[] = {
  {"unknowns", &SolverFacts::unknowns},     {"cells", &SolverFacts::cells},
  {"steps", &SolverFacts::steps},           {"repeated_steps", &SolverFacts::repeated_steps},
  {"iterations", &SolverFacts::iterations}, {"descents", &SolverFacts::descents},
  {"given_up", &SolverFacts::given_up}};
const Number<ChamberFacts> chamber_numbers[] = {{"gauge_pressure", &ChamberFacts::gauge_pressure},
                                                {"fibre_tension", &ChamberFacts::fibre_tension},
                                                {"bulge", &ChamberFacts::bulge},
                                                {"threshold_load", &ChamberFacts::threshold_load},
                                                {"heat_time", &ChamberFacts::heat_time},
                                                {"volume", &ChamberFacts::volume}};

const char *const energy_kinds[] = {"stored", "kinetic", "dissipated", "exchanged", "numerical"};

template <typename Items, typename Value>
Texts texts_of(const Items &items, Value value)
{
  Texts texts;
  for (const auto &item : items)
    texts.push_back(value(item));
  return texts;
}

void write_ledger(hid_t run, const Result &result)
{
  const Handle ledger = create_group(run, "ledger");
  Numbers      energies;
  for (const auto &row : result.ledger)
    energies.insert(energies.end(), row.values.begin(), row.values.end());
  write_numbers(ledger, "energy", energies, {result.ledger.size(), result.time.size()}, "J",
                "energy since first touch, one row per part and kind, one column per time");
  write_texts(ledger, "part", texts_of(result.ledger, [](const auto &row) { return row.part; }));
  write_texts(ledger, "kind", texts_of(result.ledger, [](const auto &row) { return row.kind; }));
  write_texts(ledger, "type", texts_of(result.ledger, [](const auto &row) {
                return std::string(energy_kinds[static_cast<int>(row.type)]);
              }));
}

void read_ledger(hid_t run, Result &result)
{
  const Handle  ledger = open_group(run, "ledger");
  const Numbers energies = read_numbers(ledger, "energy");
  const Texts   parts = read_texts(ledger, "part"), kinds = read_texts(ledger, "kind"),
              types = read_texts(ledger, "type");
  const std::size_t n = result.time.size();
  if (kinds.size() != parts.size() || types.size() != parts.size() || energies.size() != parts.size() * n)
    damaged("ledger rows do not match");
  for (std::size_t i = 0; i < parts.size(); ++i)
  {
    const auto *type = std::find(std::begin(energy_kinds), std::end(energy_kinds), types[i]);
    if (type == std::end(energy_kinds))
      damaged("ledger row of unknown type '" + types[i] + "'");
    result.ledger.push_back({parts[i], kinds[i], static_cast<EnergyKind>(type - std::begin(energy_kinds)),
                             Numbers(energies.begin() + static_cast<long>(i * n),
                                     energies.begin() + static_cast<long>((i + 1) * n))});
  }
}

void write_readings(hid_t run, const Result &result)
{
  const Handle group = create_group(run, "readings");
  Numbers      values, errors, shifts;
  for (const auto &reading : result.readings)
  {
    values.push_back(reading.value);
    errors.push_back(reading.error);
    shifts.insert(shifts.end(), reading.shifts.begin(), reading.shifts.end());
  }
  write_texts(group, "name", texts_of(result.readings, [](const auto &reading) { return reading.name; }));
  write_numbers(group, "value", values, {values.size()}, "", "in SI, unit in the data set of that name");
  write_texts(group, "unit", texts_of(result.readings, [](const auto &reading) { return reading.unit; }));
  write_texts(group, "meaning",
              texts_of(result.readings, [](const auto &reading) { return reading.meaning; }));
  write_texts(group, "part", texts_of(result.readings, [](const auto &reading) { return reading.part; }));
  write_numbers(group, "error", errors, {errors.size()}, "",
                "estimated numerical error; below 0: not estimated");
  const std::size_t n_doubts = values.empty() ? 0 : shifts.size() / values.size();
  write_numbers(group, "shift", shifts, {values.size(), n_doubts}, "",
                "effect of half a band of each independent uncertainty on the value; one row per reading");

  const Handle warnings = create_group(run, "warnings");
  write_texts(warnings, "reading",
              texts_of(result.warnings, [](const auto &warning) { return warning.reading; }));
  write_texts(warnings, "text", texts_of(result.warnings, [](const auto &warning) { return warning.text; }));
}

void read_readings(hid_t run, Result &result)
{
  const Handle group = open_group(run, "readings");
  const Texts  names = read_texts(group, "name"), units = read_texts(group, "unit"),
              meanings = read_texts(group, "meaning");
  const bool    has_parts = has_child(group, "part"); // of a program older than the parts: none are known
  const Texts   parts = has_parts ? read_texts(group, "part") : Texts(names.size());
  const Numbers values = read_numbers(group, "value"), errors = read_numbers(group, "error"),
                shifts = read_numbers(group, "shift");
  const std::size_t n_doubts = names.empty() ? 0 : shifts.size() / names.size();
  if (shifts.size() != n_doubts * names.size() || units.size() != names.size() ||
      meanings.size() != names.size() || parts.size() != names.size() || values.size() != names.size() ||
      errors.size() != names.size())
    damaged("readings do not match");
  for (std::size_t i = 0; i < names.size(); ++i)
    result.readings.push_back({names[i], values[i], units[i], meanings[i], errors[i],
                               Numbers(shifts.begin() + static_cast<long>(i * n_doubts),
                                       shifts.begin() + static_cast<long>((i + 1) * n_doubts)),
                               parts[i]});

  const Handle warnings = open_group(run, "warnings");
  const Texts  touched = read_texts(warnings, "reading"), texts = read_texts(warnings, "text");
  if (touched.size() != texts.size())
    damaged("warnings do not match");
  for (std::size_t i = 0; i < texts.size(); ++i)
    result.warnings.push_back({touched[i], texts[i]});
}

void write_chambers(hid_t run, const std::vector<ChamberFacts> &chambers)
{
  const Handle group = create_group(run, "chambers");
  for (const auto &chamber : chambers)
  {
    const Handle one = create_group(group, std::to_string(&chamber - chambers.data()));
    write_attribute(one, "layer", chamber.layer);
    for (const auto &number : chamber_numbers)
      write_attribute(one, number.name, chamber.*number.value);
  }
}

std::vector<ChamberFacts> read_chambers(hid_t run)
{
  const Handle              group = open_group(run, "chambers");
  std::vector<ChamberFacts> chambers;
  for (const auto &name : children(group))
  {
    const Handle one = open_group(group, name);
    auto        &facts = chambers.emplace_back();
    facts.layer = read_text_attribute(one, "layer");
    for (const auto &number : chamber_numbers)
      facts.*number.value = read_number_attribute(one, number.name);
  }
  return chambers;
}

void write_faces(hid_t run, const std::vector<FaceLine> &faces)
{
  if (faces.empty())
    return;
  const Handle group = create_group(run, "faces");
  for (const auto &face : faces)
  {
    const Handle one = create_group(group, fmt::format("{:02}", &face - faces.data()));
    write_attribute(one, "way", face.way);
    write_numbers(one, "place", face.place, {face.place.size()}, "m", "across the bar");
    write_numbers(one, "height", face.height, {face.height.size()}, "m", "above the bonded plane, unloaded");
    write_numbers(one, "pressure", face.pressure, {face.pressure.size()}, "Pa", "nominal, while sliding");
  }
}

std::vector<FaceLine> read_faces(hid_t run)
{
  std::vector<FaceLine> faces;
  if (!has_child(run, "faces"))
    return faces;
  const Handle group = open_group(run, "faces");
  for (const auto &name : children(group))
  {
    const Handle one = open_group(group, name);
    faces.push_back({read_number_attribute(one, "way"), read_numbers(one, "place"),
                     read_numbers(one, "height"), read_numbers(one, "pressure")});
  }
  return faces;
}

void write_run(hid_t runs, const std::string &name, const StoredRun &run)
{
  const Result &result = run.result;
  const Handle  group = create_group(runs, name);
  write_attribute(group, "label", run.label);
  write_attribute(group, "stop_reason", result.stop_reason);
  write_attribute(group, "complete", result.complete ? 1. : 0.);
  for (const auto &number : result_numbers)
    write_attribute(group, number.name, result.*number.value);
  for (const auto &number : fact_numbers)
    write_attribute(group, number.name, result.facts.*number.value);
  for (const auto &[fact, count] : fact_counts)
    write_attribute(group, fact, static_cast<double>(result.facts.*count));

  write_numbers(group, "time", result.time, {result.time.size()}, "s", "recorded times from first touch");
  const Handle curves = create_group(group, "curves");
  for (const auto &curve : result.curves)
    write_numbers(curves, curve.name, curve.values, {curve.values.size()},
                  curve.unit.empty() ? "1" : curve.unit, curve.meaning.empty() ? curve.name : curve.meaning);
  write_ledger(group, result);
  write_readings(group, result);
  write_chambers(group, result.chambers);
  write_faces(group, result.faces);
  write_picture(group, result.picture);
}

StoredRun read_run(hid_t runs, const std::string &name)
{
  const Handle group = open_group(runs, name);
  StoredRun    run;
  Result      &result = run.result;
  run.label = read_text_attribute(group, "label");
  result.stop_reason = read_text_attribute(group, "stop_reason");
  result.complete = read_number_attribute(group, "complete") != 0;
  for (const auto &number : result_numbers)
    result.*number.value = read_number_attribute(group, number.name);
  for (const auto &number : fact_numbers)
    result.facts.*number.value = read_number_attribute(group, number.name);
  for (const auto &[fact, count] : fact_counts)
    result.facts.*count = static_cast<std::size_t>(read_number_attribute(group, fact));

  result.time = read_numbers(group, "time");
  const Handle curves = open_group(group, "curves");
  for (const auto &curve : children(curves))
  {
    result.curves.push_back({curve, read_text_attribute_of(curves, curve, "unit"),
                             read_text_attribute_of(curves, curve, "meaning"), read_numbers(curves, curve)});
    if (result.curves.back().values.size() != result.time.size())
      damaged("curve '" + curve + "' and time do not match");
  }
  read_ledger(group, result);
  read_readings(group, result);
  result.chambers = read_chambers(group);
  result.faces = read_faces(group);
  result.picture = read_picture(group);
  return run;
}
// Debian's HDF5 is built without thread safety: one call at a time in the whole process.
std::mutex hdf5_in_use;
/// The record as the bytes of an HDF5 file.
std::string image_of(const ResultRecord &record)
{
  const std::lock_guard alone(hdf5_in_use);
  const Handle          file = create_memory_file();
  {
    const Handle root = open_group(file, "/");
    write_attribute(root, "format", file_kind);
    write_attribute(root, "schema", schema);
    write_attribute(root, "label", record.label);
    write_attribute(root, "case_hash", record.case_hash);
    const Handle versions = create_group(root, "versions");
    for (const auto &[name, version] : record.versions)
      write_attribute(versions, name, version);
    write_texts(root, "case_text", {record.case_text});
    write_texts(root, "resolved_text", {record.resolved_text});
    const Handle runs = create_group(root, "runs");
    for (std::size_t i = 0; i < record.runs.size(); ++i)
      write_run(runs, fmt::format("{:04}", i), record.runs[i]);
  }
  return bytes_of(file);
}
} // namespace

void write_result_file(const std::filesystem::path &path, const ResultRecord &record)
{
  for (const auto &run : record.runs)
    require_writable(run.label, run.result);

  const std::filesystem::path temporary = path.string() + "." + chance_name();
  write_file(temporary, image_of(record));
  std::error_code error;
  std::filesystem::rename(temporary, path, error);
  if (error)
  {
    std::error_code ignored;
    std::filesystem::remove(temporary, ignored);
    throw ResultsError(cannot_write(path, error.value()));
  }
}

ResultRecord read_result_file(const std::filesystem::path &path)
{
  const std::lock_guard alone(hdf5_in_use);
  try
  {
    const Handle file = open_file(path.string());
    const Handle root = open_group(file, "/");
    if (read_text_attribute(root, "format") != file_kind)
      throw ResultsError("it is not a solemech result file");
    if (read_number_attribute(root, "schema") > schema)
      throw ResultsError("it was written by a newer solemech; use that version to read it");
    ResultRecord record;
    record.label = read_text_attribute(root, "label");
    record.case_hash = read_text_attribute(root, "case_hash");
    const Handle versions = open_group(root, "versions");
    for (const auto &name : attributes(versions))
      record.versions[name] = read_text_attribute(versions, name);
    record.case_text = read_texts(root, "case_text").at(0);
    record.resolved_text = read_texts(root, "resolved_text").at(0);
    const Handle runs = open_group(root, "runs");
    for (const auto &name : children(runs))
      record.runs.push_back(read_run(runs, name));
    return record;
  }
  catch (const std::exception &error)
  {
    throw ResultsError("cannot read " + path.string() + ": " + error.what());
  }
}
} // namespace solemech::solver
