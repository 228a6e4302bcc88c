#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Count the places outside the registries that ask which kind of rig they hold.

A new kind of rig must not cost a line in files that belong to others: what is asked of a rig in particular stands with
its kind (solver/rigs, tools/rigs), and everybody else asks the kind. Counted are `get`, `get_if` and
`holds_alternative` on a struct of the variant `Rig` of solver/rig.h, its index, visits of it, and comparisons
with a RigKind. Prints each place; exit code 1 when there are more than allowed.

    tools/check_rigs.py [ROOT]
"""
import re
import sys

from source_files import root_of_arguments, source_files

ALLOWED = 10
REGISTRIES = ("solver/rigs/", "solver/rig.h", "tools/rigs/")


def pattern(root):
    """What is counted, for the structs that the variant holds today."""
    variant = re.search(r"using Rig = std::variant<([^>]*)>", (root / "solver/rig.h").read_text(encoding="utf-8"))
    if not variant:
        sys.exit("solver/rig.h: `using Rig = std::variant<...>` is not there.")
    structs = "|".join(name.strip() for name in variant[1].split(","))
    return re.compile(rf"\b(?:get|get_if|holds_alternative|numbers_of)<(?:solver::)?(?:{structs})>|\brig\.index\(\)"
                      r"|\bvisit\([^;]*\brig\b|[=!]= *(?:solver::)?RigKind::")


def places(root):
    wanted = pattern(root)
    for name, text in source_files(root, ("solver", "tools")):
        if name.startswith(REGISTRIES):
            continue
        for match in wanted.finditer(text):
            yield f"{name}:{text.count(chr(10), 0, match.start()) + 1}: {match[0].splitlines()[0]}"


def main():
    found = list(places(root_of_arguments()))
    for place in found:
        print(place)
    print(f"{len(found)} places ask which kind of rig they hold; allowed are {ALLOWED}")
    return 1 if len(found) > ALLOWED else 0


if __name__ == "__main__":
    sys.exit(main())
