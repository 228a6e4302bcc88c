#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Check that readings are named in the catalogue (solver/results/catalogue.h) and nowhere else in the program.

Looks for string literals in solver/ and tools/ that are the name of a reading. Some words are something else as
well: an entry of a case file, a kind of reading on a bench sheet, a curve. Those are listed below with their files.
Prints one line per problem; exit code 1 if there is any, 0 otherwise.

    tools/check_readings.py [ROOT]
"""
import re
import sys

from source_files import report, root_of_arguments, source_files

CATALOGUE = "solver/results/catalogue.h"
ROW = re.compile(r'ReadingKind (\w+)\{\s*\.name = "([^"]+)"')

# Words that are no reading in these files (a folder ends in /), and what they are there.
OTHER_MEANINGS = {
    "hardness": ("tools/language/", "tools/answers/sheet/", "tools/program/materials_command.cc",  # entry, kind
                 "tools/rigs/gauge.cc", "tools/output/report/together.cc"),  # label
    "youngs_modulus": ("tools/language/",),  # entry of a material
    "peak_force": ("tools/language/", "tools/answers/trial/trial_json.cc"),  # entry of a press; key
    "peak_displacement": ("tools/language/",),  # entry of a press
    "peak_pressure": ("solver/results/stack_recorder.cc", "solver/rigs/"),  # curve
    "contact_share": ("solver/rigs/",),  # curve
    "edge_pressure": ("solver/rigs/",),  # curve
    "deflection": ("solver/rigs/",),  # curve
    "temperature_rise": ("solver/rigs/",),  # curve
    "time_of_peak": ("solver/results/result_file.cc",),  # number of the record
}


def without_comments(text):
    return re.sub(r"//[^\n]*", "", text)


def problems_of(root):
    rows = ROW.findall((root / CATALOGUE).read_text(encoding="utf-8"))
    names = {name for _, name in rows}
    for member, name in rows:
        if name[-1] not in "._" and member != name:
            yield f"{CATALOGUE}: the row {member} is called \"{name}\""
    literal = re.compile('"(' + "|".join(re.escape(name) for name in names) + ')"')
    for file, text in source_files(root, ("solver", "tools")):
        if file == CATALOGUE:
            continue
        for number, line in enumerate(text.splitlines(), 1):
            for name in literal.findall(without_comments(line)):
                if not file.startswith(OTHER_MEANINGS.get(name, ("?",))):
                    yield f"{file}:{number}: \"{name}\" is a reading: take it from {CATALOGUE}"


if __name__ == "__main__":
    sys.exit(report(problems_of(root_of_arguments())))
