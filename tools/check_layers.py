#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Check that includes point one way: tools -> solver -> {materials, geometry} -> numerics.

Reads every `#include "folder/..."` under the root and reports includes that the table below forbids and
cycles between files. Prints one line per problem; exit code 1 if there is any, 0 otherwise.

    tools/check_layers.py [ROOT]
"""
import re
import sys

from source_files import PROGRAM, report, root_of_arguments, source_files

# Files under the first path may not include anything under the second.
ROOMS = PROGRAM

# What each room may include, besides itself; a room not listed here may include every room of its folder.
# Folder by folder: tools -> solver -> {materials, geometry}.
MAY_INCLUDE = {
    "numerics": set(),
    "materials": {"numerics"},
    "geometry": {"numerics"},
    # Inside the solver: rigs -> results -> models -> {time -> linear, contributions -> mesh} -> kernels. Files of no room
    # of their own (solver/) are values that every room names, and processes that several rigs share.
    "solver/kernels": {"materials"},
    "solver/mesh": {"materials", "geometry", "solver", "solver/kernels"},
    "solver/linear": {"solver", "solver/kernels"},
    "solver/contributions": {"materials", "geometry", "solver", "solver/kernels", "solver/mesh"},
    "solver/time": {"solver", "solver/linear"},
    "solver/models": {"geometry", "solver", "solver/contributions", "solver/kernels", "solver/mesh", "solver/time"},
    "solver/results": {"solver", "solver/contributions", "solver/mesh", "solver/models", "solver/time"},
    "solver/rigs": {"numerics", "materials", "geometry", "solver", "solver/contributions", "solver/mesh", "solver/models",
                    "solver/results", "solver/time"},
    # Inside the tools: program -> answers -> study -> output -> rigs -> language. Values of the solver may be named by
    # every room.
    "tools/language": {"numerics", "materials", "geometry", "solver", "solver/results"},
    "tools/rigs": {"geometry", "materials", "solver", "solver/results", "tools/language"},
    "tools/output": {"geometry", "solver", "solver/results", "tools/language", "tools/rigs"},
    "tools/study": {"materials", "solver", "solver/results", "tools/language", "tools/rigs", "tools/output"},
    "tools/answers": {"materials", "solver", "solver/results", "solver/mesh", "tools/language", "tools/rigs", "tools/study",
                      "tools/output"},
    "tools/calibrate": {"materials", "solver", "solver/results", "tools/language"},
}
# A material law knows no mesh library, an element loop is plain arrays, the program sees only Case and Result.
WITHOUT_MESH_LIBRARY = ("materials/", "solver/kernels/", "tools/")

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*["<]([^">]+)[">]', re.MULTILINE)


def includes_by_file(root):
    """Every source file below the root's folders -> the include paths it names, both relative to the root."""
    return {name: INCLUDE.findall(text) for name, text in source_files(root)}


def room_of(name):
    """The room a path lies in: its first two folders where those are a room, else its first."""
    parts = name.split("/")
    two = "/".join(parts[:2])
    return two if len(parts) > 2 and (two in MAY_INCLUDE or parts[0] == "tools") else parts[0]


def forbidden_edges(files):
    for name, includes in files.items():
        room = room_of(name)
        for included in includes:
            if included.startswith("deal.II/") and name.startswith(WITHOUT_MESH_LIBRARY):
                yield f"{name}: includes {included}; files in {room}/ must not know deal.II/"
            target = room_of(included)
            if "/" not in included or target == room or name.startswith("tests/"):
                continue
            if included.startswith("tests/"):
                yield f"{name}: includes {included}; files in {room}/ must not know tests/"
            elif room.split("/")[0] not in ROOMS or target.split("/")[0] not in ROOMS:
                continue
            elif room in MAY_INCLUDE:
                if target not in MAY_INCLUDE[room]:
                    yield f"{name}: includes {included}; files in {room}/ must not know {target}/"
            elif room == "solver" and target.startswith("tools"):
                yield f"{name}: includes {included}; files in {room}/ must not know tools/"


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
    root = root_of_arguments()
    files = includes_by_file(root)
    if not files:
        sys.exit(f"{root}: holds no source files of the project. Give the root of the source tree.")
    print(f"{len(files)} files")
    return report(list(forbidden_edges(files)) + list(cycles(files)))


if __name__ == "__main__":
    sys.exit(main())
