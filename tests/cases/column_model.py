#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""A rough second opinion on a drop: the layers of a stack as springs in series, no finite elements.

It says where the ranges in [[expect]] of the prepared drops come from; it is printed, not tested.
- One area for all layers: the striker's, wider by 0.19 of the stack's height, which makes the force of a flat punch of
  45 mm on 25 mm of foam 1.47 times that of the column under it (table of outside checks, integral equation).
- Foams: Ogden-Hill network, isothermal cell gas, densification, sides free; branches slower than the blow as springs, slipping
  ones up to their cap. Rubber is a linear spring, plates and boards are rigid.
- Air unit: adiabatic gas of its whole volume, squeezed under that area only, firm until the load takes the pressure off.
- Loss: each foam gives back its stored pulse_return, everything else all of it; the guide takes its share both ways.

usage: column_model.py CASES LIBRARY STACK RIG [ENERGY_J]
"""
import math
import pathlib
import sys
import tomllib

GRAVITY, ATMOSPHERE = 9.80665, 101325.0
UNITS = {"mm": 1e-3, "kg": 1, "g": 1e-3, "J": 1, "kPa": 1e3, "MPa": 1e6, "GPa": 1e9, "ms": 1e-3, "s": 1, "%": 1e-2, "kg/m3": 1,
         "N/mm": 1e3, "Pa": 1}
BLOW = 10e-3  # s: branches that fade more slowly than this are springs in a drop


def value(text):
    if not isinstance(text, str):
        return float(text)
    number, unit = text.split(maxsplit=1)
    return float(number) * UNITS[unit]


def load(path):
    with open(path, "rb") as file:
        return tomllib.load(file)


class Foam:
    def __init__(self, data):
        self.mu, self.alpha, nu = value(data["shear_modulus"]), data["exponent"], data["poisson"]
        self.nu, self.beta = nu, nu / (1 - 2 * nu)
        self.cells, self.solid = data["closed_cells"], data["relative_density"]
        self.densification = value(data["densification_modulus"])
        self.returned = value(data["pulse_return"])
        self.slow = sum(value(term["share"]) for term in data["relaxing"] if value(term["time"]) >= BLOW)
        self.slips = [(value(term["share"]), term["cap"]) for term in data["slipping"]]

    def stress(self, strain):
        """Nominal, compression positive [Pa]; infinite where the cells are full."""
        stretch = 1 - strain
        lateral = stretch ** -self.nu
        room = (stretch * lateral ** 2 - self.solid) / (1 - self.solid)
        if stretch <= 0.05 or room <= 0.02:
            return math.inf
        network = 2 * self.mu / (self.alpha * stretch) * (stretch ** (-self.alpha * self.nu) - stretch ** self.alpha)
        gas = self.cells * ATMOSPHERE * (1 / room - 1) * lateral ** 2
        full = self.densification * (room ** -2 - 1 - 2 * (1 - room)) * lateral ** 2
        young = 2 * self.mu * (1 + self.nu)
        slip = sum(share * young * min(strain, cap) for share, cap in self.slips)
        return network * (1 + self.slow) + gas + full + slip


class Rubber:
    returned = 1.0

    def __init__(self, data):
        self.young = 6 * value(data["c10"])

    def stress(self, strain):
        return self.young * strain


class Gas:
    returned = 1.0

    def __init__(self, unit, height, area):
        self.start = ATMOSPHERE + value(unit["gauge_pressure"]) if unit.get("state") != "open" else None
        self.share = area / (math.pi / 4 * value(unit["diameter"]) ** 2)

    def stress(self, strain):
        if self.start is None:  # dead: nothing until the films meet
            return 0 if strain < 0.9 else 1e9 * (strain - 0.9)
        return self.start * (1 - self.share * strain) ** -1.4 - ATMOSPHERE + 1e6 * max(0, strain - 0.9)


def strain_at(law, stress):
    low, high = 0.0, 0.97
    if law.stress(0) >= stress:
        return 0.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if law.stress(middle) < stress else (low, middle)
    return low


def stack_of(cases, library, name, striker):
    materials = {m["name"]: m for path in pathlib.Path(library).glob("*.toml") for m in load(path)["material"]}
    stack = load(pathlib.Path(cases) / "stacks" / f"{name}.toml")
    height = sum(value(layer["thickness"]) for layer in stack["layer"])
    radius = min(value(stack["plug"]["radius"]), striker / 2 + 0.19 * height)
    area = math.pi * radius ** 2
    layers = []
    for layer in stack["layer"]:
        data, thickness = materials[layer["material"]], value(layer["thickness"])
        if "unit" in layer:
            law = Gas(layer["unit"], thickness, area)
        elif data["family"] == "foam":
            law = Foam(data)
        elif data["family"] == "rubber":
            law = Rubber(data)
        else:
            continue
        layers.append((law, thickness, area * value(layer.get("area_share", 1))))
    return layers, height


def main():
    cases, library, name, rig_name = sys.argv[1:5]
    rig = load(pathlib.Path(cases) / "rigs" / f"{rig_name}.toml")["drop"]
    mass, guide = value(rig["mass"]), value(rig.get("guide_loss", 0))
    energy = float(sys.argv[5]) if len(sys.argv) > 5 else value(rig["energy"]) if "energy" in rig else mass * GRAVITY * value(
        rig["height"])
    layers, height = stack_of(cases, library, name, value(rig["diameter"]))
    # Up in small steps of force until the work is what came down.
    force, depth, work, back, stretch = 0.0, 0.0, 0.0, 0.0, [(0.0, 0.0)]
    while work < energy * (1 - guide) + mass * GRAVITY * depth:
        force += 2.0
        deeper = gained = returned = 0.0
        for law, thickness, area in layers:
            squeezed = thickness * (strain_at(law, force / area) - strain_at(law, (force - 2) / area))
            deeper += squeezed
            gained += squeezed * (force - 1)
            returned += squeezed * (force - 1) * law.returned
        depth, work, back = depth + deeper, work + gained, back + returned
        stretch.append((depth, force))
    # Time down along that curve and up along the same one with the returned share of its force; a step is run through at
    # the mean of its speeds, which is exact where the force is constant.
    share, time = back / work, 0.0
    for scale in (1.0, share):
        speed2 = 0.0  # from the turning point back to the first touch
        for (a, fa), (b, fb) in zip(stretch[-2::-1], stretch[:0:-1]):
            faster = max(speed2 + 2 * (b - a) * (scale * (fa + fb) / 2 / mass - GRAVITY), 0.0)
            time += 2 * (b - a) / max(math.sqrt(speed2) + math.sqrt(faster), 1e-6)
            speed2 = faster
    up = back - mass * GRAVITY * depth
    print(f"{name} under {rig_name}, {energy:.2f} J: rebound {100 * up * (1 - guide) / energy:.0f} %, "
          f"loop {100 * share:.0f} %, force {force:.0f} N, {force / mass / GRAVITY - 1:.0f} g, {1e3 * depth:.1f} mm, "
          f"contact {1e3 * time:.1f} ms")


main()
