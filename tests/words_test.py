#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Plain words: habits of speech that readers stumble over stay out of everything that a user reads.

usage: words_test.py SOURCE

Searched are the strings of the program (C++ and the report page), the cases, lessons and materials with their comments,
and the texts that are shipped. Comments of the sources are not: developers read those. Each habit stands in HABITS with
the words to use instead; a phrase that is right nevertheless stands in EXCEPTIONS with its reason, and one that is no
longer needed there is refused too.
"""
import re
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent / "tools"))
from source_files import PROGRAM, source_files

# Words of a bench, not of a translation: one idea a sentence, the verb early, numbers with units.
HABITS = {
    r"\btold\b|\btells (?:of|how|the|its|nothing)\b": "reported, shown, predicted",
    r"\bdoubt(?:s|ed|ful)?\b": "uncertainty, ±, uncertain",
    r"\bwish(?:ed)?\b": "target, chosen",
    r"\b(?:all|the) slips\b|\bslips (?:of a sheet|in a|are)\b": "mistakes",
    r"\bless (?:high|deep|far|long)\b": "lower, shallower, less, shorter",
    r"(?<!there)(?<!There) is no (?!longer\b|more\b|use\b)": "is not a",
    r"\bby itself (?:that|as|foam|the|a)\b": "default: same as",
    r"\b(?:least|greatest) it may be\b": "lower bound, upper bound",
    r"\bthe own\b|\ban own\b": "their, your own",
    r"\bnine (?:cases |times )?(?:of|in) ten\b": "± is a 90 % band",
    r"\bstays? open\b": "not pinned down",
    r"\b(?:goes|go|gone|went) along\b": "is dragged by",
    r"\bforefoots\b": "forefeet",
    r"\bendless block\b": "very thick block",
    r"\bend of travel\b": "can bottom out",
    r"\bran into its end\b": "clipped",
    r"\bless one\b": "minus one",
    r"\blayers parted\b": "layers separated",
    r"\bmeans? nothing\b": "has no meaning",
    r"\b(?:against|of|and) way\b|\b(?:greatest|the) way of (?:a|the)\b": "travel, distance",
    r"\btake (?:it|the line|this line) out\b": "remove",
    r"\bheadings all round\b": "in all directions",
    r"\bbeside the (?:sheet|case file)\b": "in the folder of the sheet",
    r"\bbelong into\b": "belong in",
    r"\bcannot be told\b(?! apart)": "not clear, cannot be determined",
    r"\bsettle on it\b|\bsettled on it\b": "fitted to it",
    r"\blast(?:s)? less\b": "lasts shorter",
    r"\bmost of all\b": "above all",
    r"(?<![\w:.\"-])[\d.]+(?:mm|ms|kPa|kN|MPa)\b": "a space before the unit",
}

# (file, phrase): why it stays.
EXCEPTIONS = {
    ("tools/output/results/cautions.cc", "take it out and ask"): "an insert is taken out of a shoe",
    ("cases/tread/dusty-map.toml", "is no safer than"): "a comparison, not a kind",
}

WORD = re.compile(r"[A-Za-z]{2,}[ ,;:.]+[A-Za-z({]")  # two words in a row: names and formats have none
CPP = re.compile(r'//[^\n]*|/\*.*?\*/|R"(\w*)\((.*?)\)\1"|"((?:[^"\\\n]|\\.)*)"|\'(?:[^\'\\\n]|\\.)\'', re.S)
SCRIPT = re.compile(r'//[^\n]*|/\*.*?\*/|"((?:[^"\\\n]|\\.)*)"|\'((?:[^\'\\\n]|\\.)*)\'|`((?:[^`\\]|\\.)*)`', re.S)
TEXTS = ("README.md", "CHANGELOG.md", "cases/README.md", "cases/REFERENCE.md", "materials/README.md", "solver/README.md",
         "geometry/README.md")


def strings(text, pattern):
    """Line and text of each string; strings that the compiler joins are one."""
    joined, end = [], None
    for match in pattern.finditer(text):
        said = next((group for group in match.groups()[::-1] if group is not None), None)
        if said is None or text[text.rfind("\n", 0, match.start()) + 1:match.start()].startswith("#include"):
            continue
        if joined and end is not None and not text[end:match.start()].strip():
            joined[-1][1] += said
        else:
            joined.append([text.count("\n", 0, match.start()) + 1, said])
        end = match.end()
    return [(line, said) for line, said in joined if WORD.search(said)]


def shown_to_people(source):
    """File, line and text of everything that is searched."""
    for name, text in source_files(source, PROGRAM, (".cc", ".h", ".ts")):
        for line, said in strings(text, SCRIPT if name.endswith(".ts") else CPP):
            yield source / name, line, said
    for name, text in source_files(source, ("cases", "materials"), (".toml",)):
        yield source / name, 1, text
    for name in TEXTS:
        yield source / name, 1, (source / name).read_text(encoding="utf-8")


def problems(source):
    found, used = [], set()
    for path, first, said in shown_to_people(source):
        name = str(path.relative_to(source))
        plain = re.sub(r"\{[^{}\n]*\}|`[^`\n]*`", lambda match: " " * len(match[0]), said)  # placeholders and code
        for habit, instead in HABITS.items():
            for match in re.finditer(habit.replace(" ", r"\s+"), plain):  # also over a line break
                around = " ".join(said[max(0, match.start() - 60):match.end() + 60].split())
                known = next((key for key in EXCEPTIONS if key[0] == name and key[1] in around), None)
                if known:
                    used.add(known)
                    continue
                line = first + said.count("\n", 0, match.start())
                around = " ".join(said[max(0, match.start() - 40):match.end() + 20].split())
                found.append(f"{name}:{line}: \"{match[0]}\": write: {instead} (... {around} ...)")
    found += [f"{name}: \"{phrase}\" is gone; take it out of EXCEPTIONS" for name, phrase in set(EXCEPTIONS) - used]
    return found


if __name__ == "__main__":
    answer = problems(Path(sys.argv[1]))
    print("\n".join(answer) or f"{len(HABITS)} habits, none of them in what people read")
    sys.exit(1 if answer else 0)
