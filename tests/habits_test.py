#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Habits of the sources: every file as clang-format writes it, and no function longer than a screen.

usage: habits_test.py SOURCE CLANG_FORMAT

Functions that are longer stand in TOLERATED, each with its reason; a name that is no longer needed there is refused too.
"""
import re
import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent / "tools"))
from source_files import source_paths

source, clang_format = Path(sys.argv[1]), sys.argv[2]
LONGEST = 60  # lines of a function's body

TABLE = "a table"
COURSE = "the course of one run or step, read from top to bottom"
READER = "every problem of one block is told, in the order of its entries"
CHART = "one picture or text, part by part"
ASSEMBLY = "one loop over elements, points or fronts"
CHECKS = "comparisons in a row"
TOLERATED = {
    ("solver/rigs/blow.cc", "Blow::run"): COURSE,
    ("solver/rigs/drop.cc", "run_rig"): COURSE,
    ("solver/rigs/durometer.cc", "set_on"): COURSE,
    ("solver/rigs/press.cc", "run_rig"): COURSE,
    ("solver/slide_process.cc", "slide"): COURSE,
    ("solver/wear_process.cc", "wear_down"): COURSE,
    ("tests/support/column_reference.cc", "contact"): COURSE,
    ("tests/verification/dynamic_gas_column_test.cc", "dropped"): COURSE,
    ("tools/study/quadratic_model.cc", "quadratic_model"): COURSE,
    ("tools/study/settle.cc", "settle"): COURSE,
    ("tools/answers/sheet/abrasion_readings.cc", "read_abrasion"): READER,
    ("tools/answers/sheet/material_readings.cc", "take_hardness"): READER,
    ("tools/answers/sheet/reading_desk.cc", "ReadingDesk::measured"): READER,
    ("tools/language/records/impact_record.cc", "read_impact"): READER,
    ("tools/language/records/press_loop.cc", "read_loop"): READER,
    ("tools/answers/book/book_csv.cc", "book_csv"): CHART,
    ("tools/output/picture/curve_charts.cc", "series_chart"): CHART,
    ("tools/output/picture/section_chart.cc", "section_chart"): CHART,
    ("geometry/lug_mesh.cc", "make_lug_mesh"): ASSEMBLY,
    ("solver/linear/front_layout.cc", "make_front_layout"): ASSEMBLY,
    ("tests/benchmark/yardstick.cc", "Blow::assemble"): ASSEMBLY,
    ("solver/results/result_check.h", "require_writable"): CHECKS,
    ("tests/unit/output/results/result_file_test.cc", "check_same"): CHECKS,
    ("tests/unit/study/linear_test.cc", "linear readings settle where weighted least squares with a prior does, with its covariance"): CHECKS,
    ("tools/language/quantity.cc", "units"): TABLE,
}


def functions(path):
    """Name and length of each function that starts in the first column."""
    lines = path.read_text(encoding="utf-8").split("\n")
    start = None
    for number, line in enumerate(lines):
        if line == "{":
            start = number
        elif start is not None and line.startswith("}"):
            head = start
            while head > 0 and lines[head - 1] and not lines[head - 1].startswith(("}", "//", "#")) and lines[head - 1][-1] not in ";}":
                head -= 1
            signature = " ".join(lines[head:start])
            name = re.search(r"([\w:~]+|TEST_CASE)\s*\(\s*(\"[^\"]*\")?", signature)
            if name and line != "};" and not re.match(r"(template\s*<.*>\s*)?(struct|class|enum|union|namespace)\b", signature):
                yield name[2].strip('"') if name[2] else name[1], number - start - 1
            start = None


problems = []
paths = list(source_paths(source))
for at in range(0, len(paths), 100):
    done = subprocess.run([clang_format, "--dry-run", "-Werror", *map(str, paths[at:at + 100])], capture_output=True, text=True, cwd=source)
    told = {line.split(":")[0] for line in done.stderr.splitlines() if "error: code should be clang-formatted" in line}
    problems += [f"{Path(name).relative_to(source)}: is not as clang-format writes it; run {clang_format} -i on it" for name in sorted(told)]

long = {(str(path.relative_to(source)), name): n for path in paths for name, n in functions(path) if n > LONGEST}
for (name, function), n in sorted(long.items()):
    if (name, function) not in TOLERATED:
        problems.append(f"{name}: {function} has {n} lines, more than {LONGEST}; split it")
problems += [f"{name}: {function} is short enough or gone; take it out of TOLERATED" for name, function in TOLERATED if (name, function) not in long]
if __name__ == "__main__":
    print("\n".join(problems) or f"{len(paths)} files, {len(TOLERATED)} long functions with a reason")
    sys.exit(1 if problems else 0)
