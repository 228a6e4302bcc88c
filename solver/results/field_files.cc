// SPDX-License-Identifier: Apache-2.0
#include "solver/results/field_files.h"

#include "solver/results/csv_text.h"
#include "solver/results/write_file.h"

#include <deal.II/base/data_out_base.h>
#include <deal.II/grid/reference_cell.h>
#include <fmt/format.h>

#include <functional>
#include <map>
#include <sstream>

namespace solemech::solver
{
namespace
{
using Patch = dealii::DataOutBase::Patch<2, 2>;

struct Field
{
  const char         *name;
  std::vector<double> Snapshot::*values;
  const char                    *unit;
};
const Field fields[] = {{"vertical_stress", &Snapshot::vertical_stress, "Pa"},
                        {"mean_stress", &Snapshot::mean_stress, "Pa"},
                        {"shear_stress", &Snapshot::shear_stress, "Pa"},
                        {"vertical_stretch", &Snapshot::vertical_stretch, "1"},
                        {"energy_density", &Snapshot::energy_density, "J/m3"},
                        {"dissipated_density", &Snapshot::dissipated_density, "J/m3"}};

constexpr unsigned int n_fields = std::size(fields);
constexpr unsigned int row_part = 0, row_displacement = 1, row_fields = 3, row_points = row_fields + n_fields;

/// One patch a cell: rows of the table are the fields and, last, the coordinates of its nine nodes.
Patch patch_of(const Picture &picture, const Snapshot &shot, std::size_t cell)
{
  const auto &nodes = picture.cells[cell];
  Patch       patch;
  patch.patch_index = static_cast<unsigned int>(cell);
  patch.reference_cell = dealii::ReferenceCells::Quadrilateral;
  patch.n_subdivisions = 2;
  patch.points_are_available = true;
  patch.data.reinit(row_points + 2, 9);
  constexpr unsigned int corners[] = {0, 2, 6, 8};
  for (unsigned int i = 0; i < 4; ++i)
    patch.vertices[i] = {shot.position[nodes[corners[i]]][0], shot.position[nodes[corners[i]]][1]};
  for (unsigned int i = 0; i < 9; ++i)
  {
    patch.data(row_part, i) = static_cast<float>(picture.cell_part[cell]);
    for (unsigned int d = 0; d < 2; ++d)
    {
      patch.data(row_displacement + d, i) = static_cast<float>(shot.displacement[nodes[i]][d]);
      patch.data(row_points + d, i) = static_cast<float>(shot.position[nodes[i]][d]);
    }
    // The corner values are bilinear inside the cell.
    const double x = (i % 3) / 2., y = (i / 3) / 2.;
    const double weights[] = {(1 - x) * (1 - y), x * (1 - y), (1 - x) * y, x * y};
    for (unsigned int f = 0; f < n_fields; ++f)
    {
      const double *values = (shot.*fields[f].values).data() + 4 * cell;
      patch.data(row_fields + f, i) = static_cast<float>(weights[0] * values[0] + weights[1] * values[1] +
                                                         weights[2] * values[2] + weights[3] * values[3]);
    }
  }
  return patch;
}

/// Made in memory first: the library that writes the format knows a full disk only as a fault of the program.
void write_made(const std::filesystem::path &path, const std::function<void(std::ostream &)> &make)
{
  std::ostringstream text;
  make(text);
  write_file(path, std::move(text).str());
}

constexpr const char *view_script =
  R"(# Opens every time series lying beside this file in ParaView:  paraview --script=view.py
# Needs nothing but ParaView's own Python; all paths are relative to this file.
import csv
import glob
import os

from paraview.simple import (GetActiveViewOrCreate, GetColorTransferFunction,
                             PVDReader, Render, ResetCamera, Show)

here = os.path.dirname(os.path.abspath(__file__))
view = GetActiveViewOrCreate("RenderView")
view.UseColorPaletteForBackground = 0
view.Background = [0.98, 0.97, 0.94]
view.OrientationAxesVisibility = 0

# Paper-like tones that stay apart without colour vision; one a part.
tones = [(0.85, 0.75, 0.58), (0.95, 0.87, 0.70), (0.62, 0.72, 0.82), (0.80, 0.86, 0.90),
         (0.45, 0.50, 0.58), (0.75, 0.60, 0.50), (0.55, 0.65, 0.52), (0.88, 0.82, 0.86)]

offset = 0.0
for path in sorted(glob.glob(os.path.join(here, "*.pvd"))):
    series = PVDReader(registrationName=os.path.basename(path), FileName=path)
    series.UpdatePipeline()
    with open(path[:-4] + "_parts.csv", newline="") as table:
        names = [row["name"] for row in csv.DictReader(table)]
    shown = Show(series, view)
    shown.Representation = "Surface"
    shown.Position = [offset, 0.0, 0.0]
    bounds = series.GetDataInformation().GetBounds()
    offset += 1.25 * (bounds[1] - bounds[0])
    shown.ColorArrayName = ["POINTS", "part"]
    colours = GetColorTransferFunction("part", shown, separate=True)
    shown.UseSeparateColorMap = 1
    colours.InterpretValuesAsCategories = 1
    colours.Annotations = [text for i, name in enumerate(names) for text in (str(i), name)]
    colours.IndexedColors = [c for i in range(len(names)) for c in tones[i % len(tones)]]
    shown.LookupTable = colours
    shown.SetScalarBarVisibility(view, True)

view.InteractionMode = "2D"
ResetCamera(view)
Render(view)
)";
} // namespace

void write_field_files(const std::filesystem::path &folder, const std::string &name, const Picture &picture)
{
  if (picture.snapshots.empty() || picture.cells.empty())
    return;

  std::vector<std::string>           names = {"part", "displacement", "displacement"};
  std::map<std::string, std::string> units = {{"displacement", "m"}};
  for (const auto &field : fields)
  {
    names.emplace_back(field.name);
    units[field.name] = field.unit;
  }
  using dealii::DataComponentInterpretation::component_is_part_of_vector;
  const std::vector<std::tuple<unsigned int, unsigned int, std::string,
                               dealii::DataComponentInterpretation::DataComponentInterpretation>>
    vectors = {{row_displacement, row_displacement + 1, "displacement", component_is_part_of_vector}};

  std::string list;
  for (std::size_t i = 0; i < picture.snapshots.size(); ++i)
  {
    const Snapshot    &shot = picture.snapshots[i];
    const std::string  file = fmt::format("{}_{:04}.vtu", name, i);
    std::vector<Patch> patches;
    patches.reserve(picture.cells.size());
    for (std::size_t cell = 0; cell < picture.cells.size(); ++cell)
      patches.push_back(patch_of(picture, shot, cell));

    dealii::DataOutBase::VtkFlags flags;
    flags.time = shot.time;
    flags.print_date_and_time = false;
    flags.physical_units = units;
    flags.compression_level = dealii::DataOutBase::VtkFlags::best_speed;
    write_made(folder / file, [&](std::ostream &stream) {
      dealii::DataOutBase::write_vtu(patches, names, vectors, flags, stream);
    });
    list += fmt::format("    <DataSet timestep=\"{:.9g}\" part=\"0\" file=\"{}\"/>\n", shot.time, file);
  }

  write_made(folder / (name + ".pvd"), [&](std::ostream &stream) {
    stream << "<?xml version=\"1.0\"?>\n<VTKFile type=\"Collection\" version=\"0.1\" "
              "byte_order=\"LittleEndian\">\n"
           << "  <Collection>\n"
           << list << "  </Collection>\n</VTKFile>\n";
  });
  write_made(folder / (name + "_parts.csv"), [&](std::ostream &stream) {
    stream << "part,name\n";
    for (std::size_t i = 0; i < picture.part_names.size(); ++i)
      stream << i << ',' << csv_text(picture.part_names[i]) << '\n';
  });
}

void write_view_script(const std::filesystem::path &folder)
{
  write_file(folder / "view.py", view_script);
}
} // namespace solemech::solver
