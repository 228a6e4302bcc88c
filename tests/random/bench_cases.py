# SPDX-License-Identifier: Apache-2.0
"""Cases of benches from a seed and a number: drops, presses, gauges and slides on the stacks of stacks.py. A
plausible case is one that a bench could do; an extreme one only has to be readable.

By hand: bench_cases.py SEED NUMBER [--extreme] prints the case."""
import re
import sys

from draw import Draw
from stacks import Sheet, foam, mm, per_cent, plug, rubber, sole

QUANTITY = r'"(\d+\.?\d*) '  # a number with its unit behind
STRIP = 0.05  # depth for which a load on a plug stands when the plug is a strip, per metre [m]


def striker(draw, entries, smallest):
    """Adds a striker to the entries of a drop or a press."""
    shape = draw.weighted("striker", {"flat": 6, "spherical-ended": 2, "sphere": 2})
    diameter = draw.between("striker diameter", smallest, 60)
    entries["shape"] = f'"{shape}"'
    if shape == "sphere":
        diameter = draw.between("striker diameter", 40, 80)
    elif shape == "spherical-ended":
        entries["end_radius"] = mm(diameter * draw.between("end radius", 0.7, 2))
    if shape != "sphere":
        entries["edge_radius"] = mm(draw.spread("edge", 0.6, 5))
    entries["diameter"] = mm(diameter)
    if draw.chance("rough striker", 0.3):
        entries["friction"] = f'{draw.between("friction", 0.1, 0.7):.2f}'


def drop(draw, sheet, strip):
    entries = {"mass": draw.spread("mass", 0.8, 10)}
    # Per height of the stack: 1 J to 5 J on 25 mm.
    energy = 1e-3 * sheet.height * draw.between("energy", 40, 200)
    if strip:
        entries["mass"], energy = entries["mass"] / STRIP, energy / STRIP
    entries["mass"] = f'"{entries["mass"]:.3f} kg"'
    entries["energy"] = f'"{energy:.3f} J"'
    striker(draw, entries, 30)
    if draw.chance("guided", 0.4):
        entries["guide_loss"] = per_cent(draw.between("guide loss", 0, 0.08))
    if draw.chance("several hits", 0.15):
        entries["hits"] = int(draw.between("hits", 2, 5))
        entries["rest"] = f'"{draw.spread("rest", 0.5, 60):.2f} s"'
    if draw.chance("block", 0.15):
        entries.update(base_mass=f'"{draw.spread("block mass", 5, 200):.1f} kg"',
                       base_stiffness=f'"{draw.spread("block stiffness", 200, 20000):.0f} N/mm"',
                       base_damping=f'"{draw.spread("block damping", 10, 2000):.0f} N s/m"')
    sheet.block("drop", **entries)


def press(draw, sheet, strip):
    entries = {}
    if draw.chance("by travel", 0.5):
        entries["peak_displacement"] = mm(sheet.height * draw.between("travel", 0.1, 0.4))
    else:
        force = draw.between("force", 200, 2600)
        entries["peak_force"] = f'"{force / STRIP if strip else force:.0f} N"'
    entries["wave"] = draw.one_of("wave", ['"triangle"', '"half-sine"'])
    entries["duration"] = f'"{draw.spread("duration", 0.1, 20):.3f} s"'
    entries["cycles"] = draw.one_of("cycles", [1, 1, 2, 3])
    if draw.chance("rests", 0.3):
        entries["rest"] = f'"{draw.spread("rest", 0.1, 30):.2f} s"'
    striker(draw, entries, 40)
    sheet.block("press", **entries)


def ball(draw, sheet):
    sheet.layer("block", foam(draw, sheet, "block"), draw.between("block height", 30, 60))
    sheet.block("plug", radius=mm(draw.between("block radius", 40, 60)))
    sheet.block("ball", hits=draw.one_of("ball hits", [1, 1, 3]))


def gauge(draw, sheet, with_unit):
    kind = "sole" if with_unit else draw.weighted("under the gauge", {"foam": 3, "rubber": 2, "rubber on foam": 2,
                                                                         "sole": 3})
    scales = {"foam": ["AskerC", "ShoreOO"], "rubber": ["ShoreA", "ShoreA", "ShoreD"], "rubber on foam": ["ShoreA", "AskerC"]}
    if kind == "sole":
        radius, _ = plug(draw, sheet, upside_down=True)
        upside_down = draw.chance("on the outsole", 0.6)
        sole(draw, sheet, radius, with_unit, upside_down)
        first = sheet.layers[0]
        stiff = "-plate" in first or "lasting-board" in first
        scale = "ShoreD" if stiff else "ShoreA" if "outsole" in first else "AskerC"
    else:
        if kind != "foam":
            thickness = draw.between("sheet", 6, 12) if kind == "rubber" else draw.between("sheet", 1.5, 4)
            sheet.layer("sheet", rubber(draw, sheet, "sheet"), thickness)
        if kind != "rubber":
            sheet.layer("foam", foam(draw, sheet, "upper"), draw.between("upper height", 8, 25))
        base = draw.one_of("base", ["bonded", "resting"])
        sheet.block("plug", radius=mm(draw.between("plug radius", 15, 40)), base=f'"{base}"')
        scale = draw.one_of("scale", scales[kind])
    entries = {"scale": f'"{scale}"'}
    if draw.chance("read late", 0.3):
        entries["read_after"] = '"15 s"'
    sheet.block("durometer", **entries)


def slide(draw, sheet):
    width, height = draw.between("bar width", 2, 8), draw.between("bar height", 1.2, 5)
    height = min(height, 1.4 * width)
    lug = {"hardness": f'"{draw.between("hardness", 50, 75):.0f} ShoreA"', "width": mm(width), "height": mm(height),
           "spacing": mm(width + draw.between("groove", 1.2, 2.5) * height), "skin": mm(draw.between("skin", 1, 3)),
           "draft": f'"{draw.between("draft", 0, 10):.1f} deg"', "edge_radius": mm(draw.spread("edge", 0.1, 0.5)),
           "neighbours": draw.one_of("neighbours", ['"alike"', '"none"'])}
    if draw.chance("library rubber", 0.4):
        del lug["hardness"]
        lug["rubber"] = f'"{draw.one_of("rubber", ["rubber-60a", "rubber-64a", "rubber-67a"])}"'
    sheet.block("lug", **lug)
    entries = {"court": draw.one_of("court", ['"hardwood"', '"cushioned-synthetic"', '"asphalt"', '"concrete"']),
               "pressure": f'"{draw.spread("pressure", 100, 600):.0f} kPa"',
               "speed": f'"{draw.spread("speed", 0.01, 2):.3f} m/s"'}
    if draw.chance("slanted", 0.4):
        entries["heading"] = f'"{draw.between("heading", 0, 80):.0f} deg"'
    sheet.block("slide", **entries)


def plausible(seed, number):
    """Text of a case that a bench could do."""
    draw = Draw(seed, number)
    rig = draw.weighted("rig", {"drop": 40, "press": 30, "gauge": 14, "slide": 10, "ball": 6})
    sheet = Sheet(f"random {rig} {number}, invented")
    with_unit = draw.chance("unit", 0.35)
    if rig in ("drop", "press"):
        radius, strip = plug(draw, sheet)
        sole(draw, sheet, radius, with_unit)
        (drop if rig == "drop" else press)(draw, sheet, strip)
    elif rig == "gauge":
        gauge(draw, sheet, with_unit)
    elif rig == "slide":
        slide(draw, sheet)
    else:
        ball(draw, sheet)
    if draw.chance("other temperature", 0.2):
        sheet.block("surroundings", temperature=f'"{draw.between("temperature", -5, 40):.0f} °C"')
    return sheet.text()


def extreme(seed, number):
    """A plausible case of which some quantities are far off, up to twentyfold."""
    draw = Draw(seed, number)

    def off(match):
        name = f"quantity {len(re.findall(QUANTITY, match.string[:match.start()]))}"
        if not draw.chance(name, 0.1):
            return match[0]
        return f'"{float(match[1]) * draw.spread(f"{name} factor", 0.05, 20):.6g} '

    return re.sub(QUANTITY, off, plausible(seed, number))


if __name__ == "__main__":
    make = extreme if "--extreme" in sys.argv else plausible
    print(make(sys.argv[1], int(sys.argv[2])))
