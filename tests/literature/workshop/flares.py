"""Writes flares.json: how much a tube with an elliptic or an exponential flare, flush in an infinite wall, acts beyond the start
of its flare, by the finite elements of ../duct/flare.py. Radius of the tube 1.

Run: python3 flares.py
"""

import json
import sys
from pathlib import Path

import numpy as np

here = Path(__file__).resolve()
sys.path.append(str(here.parents[1] / "duct"))
from flare import Ellipse, extrapolated  # noqa: E402


class Exponential:
    """y = W (e^(4x/D) - 1 - 4x/D) / (e^4 - 5)."""

    def __init__(self, depth, widening):
        self.depth, self.widening = depth, widening

    def beyond(self, x):
        part = 4 * np.clip(x / self.depth, 0, 1)
        return self.widening * (np.exp(part) - 1 - part) / (np.exp(4) - 5)

    def line(self, count):
        # As many points where it is steep as where it is long.
        x = self.depth * np.sin(np.linspace(0, np.pi / 2, count))
        return zip(x, self.beyond(x))


sizes = [(0.4, 0.4), (1.0, 0.5), (0.5, 1.0), (2.0, 1.0), (1.5, 1.5), (3.0, 1.0)]
made = {
    name: [[depth, widening, round(float(extrapolated(kind(depth, widening))), 5)] for depth, widening in sizes]
    for name, kind in (("ellipse", Ellipse), ("exponential", Exponential))
}
here.with_suffix(".json").write_text(json.dumps(made, indent=1) + "\n")
