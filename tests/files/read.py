"""Reads the files that boxes are built from as other programs do, and says what is wrong with them.

admesh reads the STL files, ezdxf the drawings, and the 3MF archives are read by zipfile and ElementTree after the facts of the 3MF
core specification. Volumes, counts and lengths must agree with each other, with `solids.json`, which holds what the package says of
its solids, and with the cut list.

Run: python3 read.py folder...
"""

import csv
import json
import re
import struct
import subprocess
import sys
import zipfile
from collections import Counter
from pathlib import Path
from xml.etree import ElementTree

import ezdxf

MODEL = "{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}"
TYPES = "{http://schemas.openxmlformats.org/package/2006/content-types}"
RELATIONS = "{http://schemas.openxmlformats.org/package/2006/relationships}"
MODEL_RELATION = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"
MODEL_TYPE = "application/vnd.ms-package.3dmanufacturing-3dmodel+xml"

faults = []
counts = Counter()


def claim(holds, where, what):
    counts["facts"] += 1
    if not holds:
        faults.append(f"{where}: {what}")


def volume_of(corners, triangles):
    """A sixth of the sum of a · (b × c)."""
    total = 0.0
    for i, j, k in triangles:
        (ax, ay, az), (bx, by, bz), (cx, cy, cz) = corners[i], corners[j], corners[k]
        total += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
    return total / 6


def near(one, other, relative=1e-3):
    return abs(one - other) <= relative * abs(other)


def read_stl(path):
    """The volume that admesh finds, in mm³, and the number of triangles."""
    told = subprocess.run(["admesh", str(path)], capture_output=True, text=True, check=True).stdout
    number = lambda name, sign=":": float(re.search(rf"{name}\s*{sign}\s*([-\d.]+)", told).group(1))
    for name in ("Facets with 1 disconnected edge ", "Facets with 2 disconnected edges", "Facets with 3 disconnected edges", "Total disconnected facets ", "Degenerate facets", "Edges fixed", "Facets removed", "Facets added", "Facets reversed", "Backwards edges"):
        claim(number(name) == 0, path, f"admesh: {name.strip()}: {number(name)}")
    claim(number("Number of parts") == 1, path, f"admesh: {number('Number of parts')} parts in one file")
    data = path.read_bytes()
    (triangles,) = struct.unpack_from("<I", data, 80)
    claim(len(data) == 84 + 50 * triangles, path, "its length is not that of its triangles")
    claim(number("Number of facets") == triangles, path, "admesh finds another number of triangles")
    claim(abs(number("Min Z", "=")) < 1e-4, path, f"its lowest point is {number('Min Z', '=')} mm above the bed")
    counts["STL"] += 1
    return number("Volume"), triangles


def read_3mf(path):
    """Volumes in mm³ and numbers of triangles, by the name of the part."""
    with zipfile.ZipFile(path) as archive:
        claim(archive.testzip() is None, path, "a damaged archive")
        names = archive.namelist()
        types = ElementTree.fromstring(archive.read("[Content_Types].xml"))
        relations = ElementTree.fromstring(archive.read("_rels/.rels"))
        extensions = {one.get("Extension"): one.get("ContentType") for one in types.iter(f"{TYPES}Default")}
        claim(extensions.get("model") == MODEL_TYPE, path, "the type of the model is not stated")
        claim("rels" in extensions, path, "the type of the relationships is not stated")
        targets = [one.get("Target") for one in relations.iter(f"{RELATIONS}Relationship") if one.get("Type") == MODEL_RELATION]
        claim(len(targets) == 1, path, f"{len(targets)} models to start from")
        claim(targets[0].lstrip("/") in names, path, "the model is not in the archive")
        model = ElementTree.fromstring(archive.read(targets[0].lstrip("/")))
    claim(model.tag == f"{MODEL}model" and model.get("unit") == "millimeter", path, "not a model in millimetres")
    parts = {}
    ids = set()
    for one in model.iter(f"{MODEL}object"):
        claim(int(one.get("id")) > 0 and one.get("id") not in ids, path, "an object has no number of its own")
        ids.add(one.get("id"))
        name = one.get("name")
        corners = [tuple(float(corner.get(axis)) for axis in "xyz") for corner in one.iter(f"{MODEL}vertex")]
        triangles = [tuple(int(each.get(v)) for v in ("v1", "v2", "v3")) for each in one.iter(f"{MODEL}triangle")]
        claim(len(corners) >= 3 and len(triangles) >= 4, path, f"{name} is no solid")
        claim(all(0 <= i < len(corners) for each in triangles for i in each), path, f"{name}: an index out of range")
        claim(all(len(set(each)) == 3 for each in triangles), path, f"{name}: a triangle with two equal corners")
        claim(len(set(corners)) == len(corners), path, f"{name}: two corners at one place")
        edges = Counter((each[k], each[(k + 1) % 3]) for each in triangles for k in range(3))
        claim(max(edges.values()) == 1 and all((b, a) in edges for a, b in edges), path, f"{name}: not a closed oriented surface")
        volume = volume_of(corners, triangles)
        claim(volume > 0, path, f"{name}: a volume of {volume} mm³")
        parts[name] = (volume, len(triangles))
    built = [item.get("objectid") for item in model.iter(f"{MODEL}item")]
    claim(sorted(built) == sorted(ids), path, "not every part is built once")
    counts["3MF"] += 1
    return parts


def read_dxf(path):
    """Size of all that is cut, in mm, the circles that are cut, and the closed figures."""
    drawing = ezdxf.readfile(path)
    audit = drawing.audit()
    claim(not audit.errors and not audit.fixes, path, f"ezdxf: {[one.message for one in [*audit.errors, *audit.fixes]][:3]}")
    claim(drawing.units == ezdxf.units.MM, path, "not in millimetres")
    cut = [one for one in drawing.modelspace() if one.dxf.layer == "cut"]
    claim(all(one.dxf.layer in drawing.layers for one in drawing.modelspace()), path, "a layer that is not in its table")
    circles = [one for one in cut if one.dxftype() == "CIRCLE"]
    figures = [one for one in cut if one.dxftype() == "LWPOLYLINE"]
    claim(all(one.closed for one in figures), path, "an outline that is not closed")
    claim(all(one.dxf.radius > 0 for one in circles), path, "a circle without a radius")
    boxes = [list(zip(*one.get_points("xy"))) for one in figures]
    sizes = [(max(x) - min(x), max(y) - min(y)) for x, y in boxes]
    counts["DXF"] += 1
    return sizes, circles


def slug(text):
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")


def read_folder(folder):
    solids = folder / "solids.json"
    ours = json.loads(solids.read_text()) if solids.exists() else {}
    for archive in sorted(folder.glob("**/*.3mf")):
        parts = read_3mf(archive)
        files = sorted(archive.parent.glob("*.stl"))
        claim(len(files) == len(parts), archive, f"{len(parts)} parts beside {len(files)} STL files")
        for name, (volume, triangles) in parts.items():
            path = archive.parent / f"{slug(name)}.stl"
            claim(path in files, archive, f"no STL file of {name}")
            if path not in files:
                continue
            found, facets = read_stl(path)
            claim(facets == triangles, path, f"{facets} triangles, but {triangles} in the archive")
            claim(near(found, volume), path, f"{found} mm³, but {volume} in the archive")
            if name in ours:
                claim(near(found, ours[name] * 1e9), path, f"{found} mm³, but {ours[name] * 1e9} by the package")
        plastic = re.search(r"plastic, printed solid</t[hd]><td>about (\d+) g", (folder / "build.html").read_text().replace("\u00a0", " ")) if (folder / "build.html").exists() else None
        if plastic:
            grams = sum(volume for volume, _ in parts.values()) * 1.24e-3
            claim(abs(grams - int(plastic.group(1))) <= 0.6 + 1e-3 * grams, archive, f"{grams} g, but {plastic.group(1)} g on the page")
    cut_list = folder / "cut-list.csv"
    if not cut_list.exists():
        return
    rows = list(csv.DictReader(cut_list.open(newline="")))
    drawn = set()
    openings = Counter()
    sorted_size = lambda size: tuple(sorted(round(edge, 1) for edge in size))
    for row in rows:
        for name in row["piece"].split(" + "):
            path = folder / "panels" / f"{slug(name)}.dxf"
            if not path.exists():
                continue
            drawn.add(path)
            sizes, circles = read_dxf(path)
            whole, *within = sorted(sizes, key=lambda size: -size[0] * size[1])
            openings.update(map(sorted_size, within))
            asked = sorted((float(row["length (mm)"]), float(row["width (mm)"])))
            claim(all(abs(one - other) < 0.006 for one, other in zip(sorted(whole), asked)), path, f"{whole} mm, but {asked} in the cut list")
            cutouts = [each for each in row["cutouts"].split("; ") if each]
            claim(len(circles) + len(sizes) - 1 == len(cutouts), path, f"{len(circles) + len(sizes) - 1} openings, but {cutouts} in the cut list")
    claim(set((folder / "panels").glob("*.dxf")) == drawn, folder, "drawings of pieces that are not in the cut list")
    on_sheets = Counter()
    for path in (folder / "sheets").glob("*.dxf"):
        sizes, _ = read_dxf(path)
        on_sheets.update(map(sorted_size, sizes))
    asked = Counter()
    for row in rows:
        asked[tuple(sorted((round(float(row["length (mm)"]), 1), round(float(row["width (mm)"]), 1))))] += int(row["count"])
    # A sheet shows the openings of its pieces as well.
    asked += openings
    claim(on_sheets == asked, folder, f"on the sheets {on_sheets - asked} too many, {asked - on_sheets} missing")


for each in sys.argv[1:]:
    read_folder(Path(each))
for fault in faults:
    print(f"files: {fault}")
print(f"files: {counts['facts']} facts of {counts['STL']} STL, {counts['3MF']} 3MF and {counts['DXF']} DXF files, {len(faults)} wrong")
sys.exit(1 if faults or min(counts["STL"], counts["3MF"], counts["DXF"]) == 0 else 0)
