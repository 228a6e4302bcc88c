#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Check that includes point one way: tools -> solver -> {materials, geometry}.

Reads every `#include "folder/..."` under the root and reports includes that the table below forbids and
cycles between files. Prints one line per problem; exit code 1 if there is any, 0 otherwise.

    tools/check_layers.py [ROOT]
"""
import pathlib
import re
import sys

FOLDERS = ("materials", "geometry", "solver", "tools", "tests")

# Files under the first path may not include anything under the second.
FORBIDDEN = [
    ("materials/", "geometry/"), ("materials/", "solver/"), ("materials/", "tools/"),
    ("geometry/", "materials/"), ("geometry/", "solver/"), ("geometry/", "tools/"),
    ("solver/", "tools/"),
    ("materials/", "tests/"), ("geometry/", "tests/"), ("solver/", "tests/"), ("tools/", "tests/"),
    # Inside the solver: rigs stand on contributions, contributions on kernels.
    ("solver/contributions/", "solver/rigs/"),
    ("solver/kernels/", "solver/rigs/"), ("solver/kernels/", "solver/contributions/"),
    # A material law knows no mesh, an element loop is plain arrays, the program sees only Case and Result.
    ("materials/", "deal.II/"), ("solver/kernels/", "deal.II/"), ("tools/", "deal.II/"),
]

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*["<]([^">]+)[">]', re.MULTILINE)


def includes_by_file(root):
    """Every source file below the root's folders -> the include paths it names, both relative to the root."""
    files = {}
    for folder in FOLDERS:
        for path in sorted((root / folder).rglob("*")):
            if path.suffix in (".h", ".cc") and path.is_file():
                name = path.relative_to(root).as_posix()
                files[name] = INCLUDE.findall(path.read_text(encoding="utf-8", errors="replace"))
    return files


def forbidden_edges(files):
    for name, includes in files.items():
        for included in includes:
            for source, target in FORBIDDEN:
                if name.startswith(source) and included.startswith(target):
                    yield f"{name}: includes {included}; files in {source} must not know {target}"


def cycles(files):
    """Each closed chain of includes, found by a depth-first walk, once."""
    finished, chain = set(), []

    def walk(name):
        if name in chain:
            yield "cycle: " + " -> ".join(chain[chain.index(name):] + [name])
            return
        if name in finished or name not in files:
            return
        chain.append(name)
        for included in files[name]:
            yield from walk(included)
        chain.pop()
        finished.add(name)

    for name in files:
        yield from walk(name)


def main():
    root = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else pathlib.Path(__file__).parent.parent).resolve()
    files = includes_by_file(root)
    if not files:
        sys.exit(f"{root}: holds no source files of the project. Give the root of the source tree.")
    problems = list(forbidden_edges(files)) + list(cycles(files))
    for problem in problems:
        print(problem)
    print(f"{len(files)} files, {len(problems)} problems")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
