"""Reads cutting files by other programs: ezdxf for the file, shapely for the areas its contours enclose."""

import math
import re

import ezdxf
from ezdxf import recover
from shapely.geometry import Polygon

# What no tool follows; holding tabs are marked on layers named by their height.
ASIDE = {"notes", "sheet", "part"}


def is_aside(layer):
    """Whether a layer holds marks that no tool follows."""
    return layer in ASIDE or layer.startswith("tabs-")


# mm: half a unit in the fourth decimal at both ends of a coordinate, and room.
EXACT = 0.001


def audited(path):
    """A file that reads without a repair, strictly and by the reader that repairs."""
    text = path.read_bytes()
    assert b"\n" not in text.replace(b"\r\n", b"")
    document = ezdxf.readfile(path)
    audit = document.audit()
    assert not audit.errors and not audit.fixes, (path, audit.errors, audit.fixes)
    _, audit = recover.readfile(path)
    assert not audit.errors and not audit.fixes, (path, audit.errors, audit.fixes)
    assert document.dxfversion == "AC1015"
    assert document.header["$INSUNITS"] == 4 and document.header["$MEASUREMENT"] == 1
    return document


def form(entity):
    """A closed contour as (kind, numbers): circle (x, y, r) or its corners (x, y, bulge)."""
    if entity.dxftype() == "CIRCLE":
        return ("circle", (entity.dxf.center.x, entity.dxf.center.y, entity.dxf.radius))
    assert entity.dxftype() == "LWPOLYLINE", entity.dxftype()
    assert entity.closed, "an open contour"
    return ("corners", [tuple(corner) for corner in entity.get_points("xyb")])


def corners(path):
    """Path data as corners (x, y, bulge); y up, so a sweep flag of 1 is counter-clockwise."""
    found = []
    for command, text in re.findall(r"([MLAZ])([^MLAZ]*)", path):
        numbers = [float(word) for word in text.split()]
        if command == "Z":
            continue
        if command == "A":
            radius, _, _, large, sweep, x, y = numbers
            half = math.dist(found[-1][:2], (x, y)) / 2
            rise = radius - math.sqrt(max(radius * radius - half * half, 0))
            assert not large
            found[-1][2] = (rise if sweep else -rise) / half
            numbers = [x, y]
        found.append([*numbers, 0.0])
    if len(found) > 1 and math.dist(found[0][:2], found[-1][:2]) < 1e-9:
        found.pop()
    return found


def polygon(contour, chord=0.002):
    """A form of the file as a shapely polygon, arcs as chords."""
    kind, numbers = contour
    if kind == "circle":
        x, y, r = numbers
        numbers = [(x + r, y, 1.0), (x - r, y, 1.0)]
    points = []
    for (x1, y1, bulge), (x2, y2, _) in zip(numbers, [*numbers[1:], numbers[0]]):
        points.append((x1, y1))
        if bulge:
            half = math.dist((x1, y1), (x2, y2)) / 2
            angle = 4 * math.atan(bulge)
            radius = half * (1 + bulge * bulge) / (2 * abs(bulge))
            rise = half * (1 - bulge * bulge) / (2 * bulge)
            cx = (x1 + x2) / 2 - rise * (y2 - y1) / (2 * half)
            cy = (y1 + y2) / 2 + rise * (x2 - x1) / (2 * half)
            start = math.atan2(y1 - cy, x1 - cx)
            steps = max(2, math.ceil(abs(angle) / (2 * math.acos(max(1 - chord / radius, 0)))))
            points.extend(
                (cx + radius * math.cos(start + angle * i / steps), cy + radius * math.sin(start + angle * i / steps))
                for i in range(1, steps)
            )
    return Polygon(points)


def contours(document):
    """The closed contours a tool follows, in the order of the file: layer and form."""
    return [
        (entity.dxf.layer, form(entity))
        for entity in document.modelspace()
        if not is_aside(entity.dxf.layer) and entity.dxf.layer not in ("lettering", "parting")
    ]


def same_as_path(contour, path, theirs):
    """Whether a form of the file is the outline of the path data, to EXACT; `theirs` is that as a polygon."""
    kind, numbers = contour
    ours = polygon(contour)
    if any(abs(a - b) > 0.01 for a, b in zip(ours.bounds, theirs.bounds)):
        return False
    wanted = corners(path)
    if kind == "circle":
        x, y, r = numbers
        return all(b > 0 for *_, b in wanted) and all(
            abs(math.dist((px, py), (x, y)) - r) < EXACT for px, py, _ in wanted
        )
    # Path data writes wide arcs in pieces: every corner of the file is a corner there, and between them they agree.
    near = all(any(math.dist(corner[:2], other[:2]) < EXACT for other in wanted) for corner in numbers)
    return near and theirs.hausdorff_distance(ours) < 0.006 and abs(theirs.area - ours.area) < 0.01 * theirs.length
