# SPDX-License-Identifier: Apache-2.0
"""Stacks as benches hold them, from a seed and a number: layers, plug and materials as text of a case file.
Sizes and moduli stay within what shoes and their foams show (common practice, no source)."""

LIBRARY_FOAMS = ["eva-soft", "eva-firm", "peba-supercritical", "pu-cast", "tpu-bead"]
LIBRARY_RUBBERS = ["rubber-60a", "rubber-64a", "rubber-67a"]


def mm(value):
    return f'"{value:.2f} mm"'


def per_cent(value):
    return f'"{100 * value:.2f} %"'


class Sheet:
    """Text of a case file in the making."""

    def __init__(self, title):
        self.top = ["format = 1", f'title = "{title}"']
        self.layers, self.materials, self.blocks = [], [], []
        self.height = 0  # of all layers [mm]

    def block(self, name, **entries):
        self.blocks.append(table(f"[{name}]", entries))

    def layer(self, name, material, thickness, unit=None, **entries):
        entries = {"name": f'"{name}"', "material": f'"{material}"', "thickness": mm(thickness), **entries}
        self.layers.append(table("[[layer]]", entries) + (table("[layer.unit]", unit) if unit else ""))
        self.height += thickness

    def material(self, name, **entries):
        self.materials.append(table("[[material]]", {"name": f'"{name}"', **entries}))

    def text(self):
        return "\n".join(self.top + self.layers + self.materials + self.blocks)


def table(head, entries):
    return "\n".join(["", head] + [f"{name} = {value}" for name, value in entries.items()]) + "\n"


def listed(rows):
    return "[" + ", ".join(rows) + "]"


def foam(draw, sheet, name, library_only=False):
    """Name of a foam: of the library, one of it changed, or an own one."""
    kind = draw.weighted(f"{name} foam", {"library": 4, "changed": 2, "own": 4})
    if kind == "library" or library_only:
        return draw.one_of(f"{name} library foam", LIBRARY_FOAMS)
    if kind == "changed":
        sheet.material(f"{name} foam", **{"from": f'"{draw.one_of(f"{name} library foam", LIBRARY_FOAMS)}"',
                                          "shear_modulus": f'"{draw.spread(f"{name} modulus", 0.25, 0.9):.3f} MPa"',
                                          "exponent": f'{draw.between(f"{name} exponent", 3, 9):.2f}'})
        return f"{name} foam"
    entries = {"density": f'"{draw.between(f"{name} density", 80, 300):.0f} kg/m3"',
               "shear_modulus": f'"{draw.spread(f"{name} modulus", 0.25, 1.5):.3f} MPa"',
               "exponent": f'{draw.between(f"{name} exponent", 2, 10):.2f}',
               "poisson": "0" if draw.chance(f"{name} cork", 0.3) else f'{draw.between(f"{name} poisson", 0, 0.25):.3f}'}
    if draw.chance(f"{name} cells", 0.8):
        entries["relative_density"] = f'{draw.between(f"{name} relative density", 0.08, 0.3):.3f}'
        entries["closed_cells"] = per_cent(draw.between(f"{name} closed", 0.5, 1))
        entries["densification_modulus"] = f'"{draw.spread(f"{name} densification", 5, 60):.1f} kPa"'
    entries["relaxing"] = listed(
        f'{{ share = {per_cent(draw.between(f"{name} relaxing {i}", 0.02, 0.3))}, '
        f'time = "{1e3 * draw.spread(f"{name} time {i}", 1e-4, 1):.3f} ms" }}'
        for i in range(int(4 * draw.unit(f"{name} relaxing"))))
    entries["slipping"] = listed(
        f'{{ share = {per_cent(draw.between(f"{name} slipping {i}", 0.05, 0.4))}, '
        f'cap = {draw.spread(f"{name} cap {i}", 0.01, 0.3):.4f} }}'
        for i in range(int(4 * draw.unit(f"{name} slipping"))))
    sheet.material(f"{name} foam", **entries)
    return f"{name} foam"


def rubber(draw, sheet, name):
    if draw.chance(f"{name} library", 0.5):
        return draw.one_of(f"{name} rubber", LIBRARY_RUBBERS)
    sheet.material(f"{name} rubber", family='"rubber"', density='"1150 kg/m3"',
                   hardness=f'"{draw.between(f"{name} hardness", 45, 78):.0f} ShoreA"')
    return f"{name} rubber"


def air_unit(draw, room):
    """Air unit no wider than `room` [mm]."""
    state = draw.weighted("unit state", {"sealed": 6, "open": 2, "leaking": 1})
    unit = {"diameter": mm(min(room, draw.between("unit width", 0.6, 0.95) * room)), "film": '"tpu-film"',
            "film_thickness": mm(draw.between("film", 0.5, 1.2)), "state": f'"{state}"'}
    if state != "open" and not draw.chance("flat unit", 0.2):
        unit["gauge_pressure"] = f'"{draw.between("pressure", 20, 180):.0f} kPa"'
    if draw.chance("rest of the unit", 0.5):
        unit["outside_volume"] = f'"{draw.between("outside volume", 0, 40):.1f} cm3"'
    if draw.chance("other heat time", 0.3):
        unit["heat_time"] = draw.one_of("heat time", ['"adiabatic"', '"isothermal"', '"10 ms"', '"100 ms"'])
    if state == "leaking":
        unit["leak_diameter"] = mm(draw.spread("hole", 0.2, 2))
    if draw.chance("without fibres", 0.3):
        unit["fibres"] = "false"
        unit["film_thickness"] = mm(draw.between("film", 0.8, 1.5))
        if "gauge_pressure" in unit:  # no fibres hold its faces: a soft cushion
            unit["gauge_pressure"] = f'"{draw.between("pressure", 5, 40):.0f} kPa"'
    return unit


def plug(draw, sheet, upside_down=False):
    """Radius [mm] of the plug, whose block is added; a gauge asks for a round one."""
    radius = draw.between("plug radius", 30, 50)
    entries = {"radius": mm(radius)}
    side = draw.weighted("side", {"free": 6, "shell": 2, "wrapped": 2})
    entries["side"] = f'"{side}"'
    if side == "shell":
        entries["shell_stiffness"] = f'"{draw.spread("shell", 1, 100):.2f} MPa/m"'
    if side == "wrapped":
        wall = rubber(draw, sheet, "wall") if draw.chance("rubber wall", 0.5) else foam(draw, sheet, "wall")
        entries.update(side_material=f'"{wall}"', side_thickness=mm(draw.between("wall", 2, 5)))
    entries["base"] = f'"{draw.weighted("base", {"bonded": 4, "resting": 3, "clamped": 1, "sliding": 2})}"'
    if side == "free" and not upside_down and draw.chance("strip", 0.06):
        entries["section"] = '"plane-strain"'
    sheet.block("plug", **entries)
    return radius, "section" in entries


def sole(draw, sheet, radius, with_unit, upside_down=False):
    """Layers of a sole plug, foot side first; from the ground up when the gauge stands on its outsole."""
    layers = []
    if draw.chance("insert", 0.3):
        layers.append(("insert", foam(draw, sheet, "insert"), draw.between("insert height", 3, 6), None, {}))
    if draw.chance("board", 0.4):
        layers.append(("board", "lasting-board", draw.between("board height", 1.2, 2.5), None, {}))
    entries = {}
    if draw.chance("ringed", 0.3):
        entries = {"core_diameter": mm(2 * radius * draw.between("core", 0.4, 0.8)),
                   "ring": f'"{foam(draw, sheet, "ring")}"'}
    layers.append(("upper", foam(draw, sheet, "upper"), draw.between("upper height", 8, 20), None, entries))
    if with_unit:
        layers.append(("unit", foam(draw, sheet, "carrier"), draw.between("unit height", 8, 16),
                       air_unit(draw, 2 * radius), {}))
    if draw.chance("plate", 0.3):
        layers.append(("plate", draw.one_of("plate kind", ["carbon-plate", "nylon-plate", "glass-nylon-plate", "tpu-plate"]),
                       draw.between("plate height", 0.8, 1.6), None, {}))
    if draw.chance("lower", 0.6):
        layers.append(("lower", foam(draw, sheet, "lower"), draw.between("lower height", 5, 15), None, {}))
    if draw.chance("outsole", 0.7):
        outsole = rubber(draw, sheet, "outsole")
        layers.append(("outsole", outsole, draw.between("outsole height", 1.5, 4), None, {}))
        if draw.chance("lugs", 0.4) and not upside_down:
            layers.append(("lugs", outsole, draw.between("lug height", 1.5, 4), None,
                           {"area_share": per_cent(draw.between("lug share", 0.3, 0.8))}))
    for name, material, thickness, unit, more in reversed(layers) if upside_down else layers:
        sheet.layer(name, material, thickness, unit, **more)
