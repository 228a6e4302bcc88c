#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Compile every header of the project alone (syntax only), so that each one brings what it needs.

    headers_alone.py light|dealii ROOT COMPILER [OPTION...]

`light` takes the headers that never reach deal.II, `dealii` those that do (some 5 s each).
"""
import concurrent.futures
import os
import pathlib
import re
import subprocess
import sys

sys.path.insert(0, str(pathlib.Path(__file__).parent.parent / "tools"))
from source_files import source_paths

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*["<]([^">]+)[">]', re.MULTILINE)


def reaches_dealii(header, root, seen):
    if header in seen:
        return False
    seen.add(header)
    for included in INCLUDE.findall((root / header).read_text(encoding="utf-8")):
        if included.startswith("deal.II/"):
            return True
        if (root / included).is_file() and reaches_dealii(included, root, seen):
            return True
    return False


def compile_alone(header, root, command):
    text = f'#include "{header}"\n#include "{header}"\n'  # twice: the guard is checked too
    run = subprocess.run(command + ["-fsyntax-only", "-x", "c++", "-"], input=text, cwd=root,
                         capture_output=True, text=True, check=False)
    return header, run.returncode, run.stderr


def main():
    kind, root, command = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3:]
    headers = [path.relative_to(root).as_posix() for path in source_paths(root, endings=(".h",))]
    chosen = [name for name in headers if reaches_dealii(name, root, set()) == (kind == "dealii")]
    n_failures = 0
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        for header, code, messages in pool.map(lambda name: compile_alone(name, root, command), chosen):
            if code != 0:
                n_failures += 1
                print(f"{header}: does not compile alone\n{messages}")
    print(f"{len(chosen)} headers, {n_failures} do not compile alone")
    return 1 if n_failures else 0


if __name__ == "__main__":
    sys.exit(main())
