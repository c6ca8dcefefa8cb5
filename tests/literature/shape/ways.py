"""How far a solid within a box can move towards each side: the greatest step along an axis that linear inequalities allow.

A cuboid with panels of its own on each face, and a wedge drawn out along its width. Each panel is a half space, moved
inwards by its thickness; a cuboid keeps its eight corners within them, a lying cylinder its axis at its radius.
Writes ways.json beside this file.
"""
import json
from itertools import product
from pathlib import Path

import numpy as np
from scipy.optimize import linprog

FACES = {"left": (0, -1), "right": (0, 1), "bottom": (1, -1), "top": (1, 1), "front": (2, -1), "back": (2, 1)}


def cuboid(edges, thickness):
    """Half spaces n·x ≤ d of the inside; thickness by face."""
    spaces = []
    for axis in range(3):
        low, high = thickness[2 * axis], thickness[2 * axis + 1]
        unit = np.eye(3)[axis]
        spaces += [(-unit, -low), (unit, edges[axis] - high)]
    return spaces


def wedge(across, up, top, length, thickness):
    """The section lies on depth and height; its far side leans towards the front at the top."""
    slant = np.array([0.0, across - top, up]) / np.hypot(across - top, up)
    sides = [((0, 0, -1), 0), ((0, -1, 0), 0), ((0, 1, 0), up), (slant, slant @ [0, 0, across]), ((-1, 0, 0), 0), ((1, 0, 0), length)]
    return [(np.array(n, float), d - thickness) for n, d in sides]


def way(spaces, solid, face):
    axis, sign = FACES[face]
    step = sign * np.eye(3)[axis]
    low, high = np.array(solid["least"]), np.array(solid["greatest"])
    rows, room = [], []
    for n, d in spaces:
        if solid["form"] == "cylinder":
            # Its flat ends reach as far as its edges along its own axis, its round side by its radius.
            own = "xyz".index(solid["axis"])
            radius = (high - low)[(own + 1) % 3] / 2
            around = np.delete(n, own)
            reach = n @ ((low + high) / 2) + abs(n[own]) * (high - low)[own] / 2 + radius * np.hypot(*around)
        else:
            reach = max(n @ np.where(corner, high, low) for corner in product([0, 1], repeat=3))
        rows.append([n @ step])
        room.append(d - reach)
    found = linprog([-1], A_ub=rows, b_ub=room, bounds=[(0, None)])
    return float(found.x[0])


disc = dict(form="cylinder", axis="x", least=[0.1, 0.06, 0.05], greatest=[0.35, 0.16, 0.15])
block = dict(form="cuboid", least=[0.05, 0.04, 0.03], greatest=[0.2, 0.14, 0.12])
boxes = [
    dict(name="cuboid", sizes=dict(width=0.4, height=0.5, depth=0.3), thickness=[0.012, 0.018, 0.02, 0.022, 0.025, 0.015]),
    dict(name="wedge", sizes=dict(across=0.4, up=0.34, top=0.15, length=0.6), thickness=0.018),
]
out = []
for box in boxes:
    sizes, t = box["sizes"], box["thickness"]
    spaces = cuboid(list(sizes.values()), t) if box["name"] == "cuboid" else wedge(**sizes, thickness=t)
    for solid in (block, disc):
        out.append(dict(box, solid=solid, ways={face: way(spaces, solid, face) for face in FACES}))

Path(__file__).with_suffix(".json").write_text(json.dumps(out, indent=1) + "\n")
