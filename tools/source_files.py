# SPDX-License-Identifier: Apache-2.0
"""The sources of the project, for the scripts that check them."""
import pathlib
import sys

FOLDERS = ("numerics", "materials", "geometry", "solver", "tools", "tests")
PROGRAM = FOLDERS[:-1]


def root_of_arguments():
    """The root that the command line names, else that of this file."""
    return pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else pathlib.Path(__file__).parent.parent).resolve()


def source_paths(root, folders=FOLDERS, endings=(".h", ".cc")):
    """Each file of such an ending below some of the folders of the root."""
    for folder in folders:
        for path in sorted((root / folder).rglob("*")):
            if path.suffix in endings and path.is_file() and "node_modules" not in path.parts:
                yield path


def source_files(root, folders=FOLDERS, endings=(".h", ".cc")):
    """Path relative to the root, with slashes, and text of each of these files."""
    for path in source_paths(root, folders, endings):
        yield path.relative_to(root).as_posix(), path.read_text(encoding="utf-8", errors="replace")


def report(problems):
    """Print each problem and their number. Returns the exit code."""
    problems = list(problems)
    for problem in problems:
        print(problem)
    print(f"{len(problems)} problems")
    return 1 if problems else 0
