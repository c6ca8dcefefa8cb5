"""A tetrahedron in millimetres as the binary STL file of another program, without its head of 80 bytes. Writes stl.json."""
import json
from pathlib import Path

import numpy as np
import trimesh

corners = np.array([[0, 0, 0], [30, 0, 0], [0, 40, 0], [0, 0, 50]], float)
triangles = np.array([[0, 2, 1], [0, 1, 3], [0, 3, 2], [1, 2, 3]])
file = trimesh.exchange.stl.export_stl(trimesh.Trimesh(corners, triangles, process=False))
out = dict(corners=corners.ravel().tolist(), triangles=triangles.ravel().tolist(), bytes=list(file[80:]))
Path(__file__).with_suffix(".json").write_text(json.dumps(out) + "\n")
