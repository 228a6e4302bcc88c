# SPDX-License-Identifier: Apache-2.0
"""The ParaView files of a run, read by VTK's own readers and held against the numbers of data/results.h5.

VTK reads what ParaView reads. The fields are written as 32-bit numbers, so a value may differ by half a step of those.
usage: field_files_test.py PROGRAM FOLDER
"""
import csv
import shutil
import subprocess
import sys
import unittest
from pathlib import Path
from types import ModuleType
from unittest.mock import MagicMock, patch
from xml.etree import ElementTree

import h5py
import numpy
from vtkmodules.util.numpy_support import vtk_to_numpy
from vtkmodules.vtkIOXML import vtkXMLUnstructuredGridReader

PROGRAM, FOLDER = sys.argv[1], Path(sys.argv[2])
CASE = "forefoot-drop"  # eight parts, one of them the film of a unit
FLOAT32 = 2.0**-23  # relative step of a 32-bit number
FIELDS = {"vertical_stress": "Pa", "mean_stress": "Pa", "shear_stress": "Pa", "vertical_stretch": "1",
          "energy_density": "J/m3", "dissipated_density": "J/m3"}


def bilinear(corners):
    """Corner values (cells x 4) at the nine nodes of each cell: 3 x 3, r fastest."""
    x, y = (numpy.arange(9) % 3) / 2, (numpy.arange(9) // 3) / 2
    weights = numpy.stack([(1 - x) * (1 - y), x * (1 - y), (1 - x) * y, x * y])
    return corners @ weights


class FieldFiles(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        shutil.rmtree(FOLDER, ignore_errors=True)
        subprocess.run([PROGRAM, "run", CASE, "-o", FOLDER, "--quiet"], check=True, stdout=subprocess.DEVNULL)
        cls.series = FOLDER / "paraview/stack.pvd"
        cls.listed = list(ElementTree.parse(cls.series).getroot().find("Collection"))
        cls.picture = h5py.File(FOLDER / "data/results.h5")["runs/0000/picture"]
        cls.shots = cls.picture["snapshots"]

    def read(self, number):
        reader = vtkXMLUnstructuredGridReader()
        reader.SetFileName(str(self.series.parent / self.listed[number].attrib["file"]))
        reader.Update()
        self.assertEqual(reader.GetErrorCode(), 0)
        return reader.GetOutput()

    def array(self, grid, name):
        array = grid.GetPointData().GetArray(name)
        self.assertIsNotNone(array, name)
        return vtk_to_numpy(array)

    def same(self, found, wanted, what):
        numpy.testing.assert_allclose(found, wanted, rtol=FLOAT32, atol=FLOAT32 * numpy.abs(wanted).max(),
                                      err_msg=what)

    def test_the_series_lists_every_picture_at_its_time(self):
        self.assertEqual(len(self.listed), len(self.shots["time"]))
        times = [float(entry.attrib["timestep"]) for entry in self.listed]
        numpy.testing.assert_allclose(times, self.shots["time"][:], rtol=1e-8)  # nine digits are written
        files = {entry.attrib["file"] for entry in self.listed}
        self.assertEqual(files, {path.name for path in self.series.parent.glob("*.vtu")})

    def test_values_are_those_of_the_results(self):
        nodes, parts = self.picture["cells"][:], self.picture["cell_part"][:]
        n = len(self.listed)
        for number in {0, n // 3, n // 2, n - 1}:
            grid = self.read(number)
            self.assertEqual(grid.GetNumberOfPoints(), 9 * len(nodes))
            self.assertEqual(grid.GetNumberOfCells(), 4 * len(nodes))
            stored = vtk_to_numpy(grid.GetFieldData().GetArray("TIME"))[0]
            self.assertAlmostEqual(stored, self.shots["time"][number], delta=1e-5 * self.shots["time"][n - 1])
            places = vtk_to_numpy(grid.GetPoints().GetData())
            self.same(places[:, :2], self.shots["position"][number][nodes].reshape(-1, 2), "position")
            self.assertTrue((places[:, 2] == 0).all())
            moved = self.array(grid, "displacement")
            self.same(moved[:, :2], self.shots["displacement"][number][nodes].reshape(-1, 2), "displacement")
            self.assertTrue((self.array(grid, "part") == numpy.repeat(parts, 9)).all())
            for name in FIELDS:
                self.same(self.array(grid, name), bilinear(self.shots[name][number]).ravel(), name)

    def test_arrays_and_units(self):
        grid = self.read(0).GetPointData()
        names = {grid.GetArrayName(i) for i in range(grid.GetNumberOfArrays())}
        self.assertEqual(names, {"part", "displacement", *FIELDS})
        self.assertEqual(grid.GetArray("displacement").GetNumberOfComponents(), 3)
        # Units are attributes of the arrays, which VTK's reader passes over.
        tree = ElementTree.parse(self.series.parent / self.listed[0].attrib["file"])
        units = {array.get("Name"): array.get("units") for array in tree.iter("DataArray")}
        for name, unit in {"displacement": "m", **FIELDS}.items():
            self.assertEqual(units[name], unit, name)
            self.assertEqual(self.shots[name].attrs["unit"], unit, name)

    def test_parts_have_the_names_of_the_sheet(self):
        with open(self.series.with_name("stack_parts.csv"), newline="") as table:
            rows = list(csv.DictReader(table))
        self.assertEqual([row["name"] for row in rows], [name.decode() for name in self.picture["part_names"][:]])
        self.assertEqual([int(row["part"]) for row in rows], list(range(len(rows))))
        self.assertIn("unit film", [row["name"] for row in rows])  # a name of two words
        self.assertEqual(set(self.array(self.read(0), "part")), set(range(len(rows))))

    def test_the_view_script_runs_and_colours_by_an_array_that_is_there(self):
        script = self.series.with_name("view.py")
        simple = MagicMock()
        simple.PVDReader.return_value.GetDataInformation.return_value.GetBounds.return_value = (0, 0.04, 0, 0.02, 0, 0)
        package = ModuleType("paraview")
        with patch.dict(sys.modules, {"paraview": package, "paraview.simple": simple}):
            exec(compile(script.read_text(), script, "exec"), {"__file__": str(script), "__name__": "__main__"})
        simple.PVDReader.assert_called_once_with(registrationName="stack.pvd", FileName=str(self.series.resolve()))
        shown = simple.Show.return_value
        kind, name = shown.ColorArrayName
        self.assertEqual(kind, "POINTS")
        self.array(self.read(0), name)
        notes = simple.GetColorTransferFunction.return_value.Annotations
        self.assertEqual(notes[1::2], [part.decode() for part in self.picture["part_names"][:]])


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
