"""Reads panels of build.json on its own: path data to polygons, panel frames to the case.

Nothing here comes from the program: it is a second reading of the file, with shapely for the plane geometry.
"""

import math
import re

from shapely.geometry import Polygon
from shapely.ops import unary_union

# Sagitta of a chord that stands for an arc, mm: far below what the checks allow.
CHORD_MM = 0.005


def points(path):
    """Path data (M, L, A, Z; absolute, arcs with equal radii) as a list of points."""
    tokens = re.findall(r"[MLAZ]|-?[\d.]+(?:e-?\d+)?", path)
    out, index, here = [], 0, None
    command = None
    while index < len(tokens):
        if tokens[index] in "MLAZ":
            command = tokens[index]
            index += 1
            if command == "Z":
                continue
        if command in "ML":
            here = (float(tokens[index]), float(tokens[index + 1]))
            out.append(here)
            index += 2
        else:
            radius, _, _, large, sweep, x, y = (float(token) for token in tokens[index : index + 7])
            index += 7
            out.extend(arc(here, (x, y), radius, large > 0.5, sweep > 0.5))
            here = (x, y)
    return out


def arc(start, end, radius, large, sweep):
    """Points of a circular arc after its start; SVG 1.1, appendix F.6.5, for equal radii. y runs up in panel data."""
    (x1, y1), (x2, y2) = start, end
    dx, dy = (x1 - x2) / 2, (y1 - y2) / 2
    half = math.hypot(dx, dy)
    radius = max(radius, half)
    offset = math.sqrt(max(radius * radius - half * half, 0.0)) / half if half else 0.0
    sign = 1 if large != sweep else -1
    cx = sign * offset * dy + (x1 + x2) / 2
    cy = -sign * offset * dx + (y1 + y2) / 2
    first = math.atan2(y1 - cy, x1 - cx)
    last = math.atan2(y2 - cy, x2 - cx)
    turn = (last - first) % (2 * math.pi)
    if not sweep:
        turn -= 2 * math.pi
    steps = max(2, math.ceil(abs(turn) / (2 * math.acos(max(1 - CHORD_MM / radius, 0.0)))))
    return [
        (cx + radius * math.cos(first + turn * step / steps), cy + radius * math.sin(first + turn * step / steps))
        for step in range(1, steps + 1)
    ]


def polygon(path):
    """Path data as a shapely polygon."""
    return Polygon(points(path))


def material(panel):
    """What is left of a panel after everything that goes through it is cut out."""
    holes = [
        polygon(feature["path"])
        for feature in panel["features"]
        if feature["through"] and not feature.get("notch")
    ]
    return polygon(panel["outline"]).difference(unary_union(holes))


def to_case(panel, u, v, w=0.0):
    """A panel point, w mm outward from its outside face, in the case frame."""
    frame = panel["frame"]
    return [
        frame["origin_mm"][axis] + u * frame["u"][axis] + v * frame["v"][axis] + w * frame["out"][axis]
        for axis in range(3)
    ]


def to_panel(panel, point):
    """A case point in the panel's frame: u, v and the distance outward from the outside face."""
    frame = panel["frame"]
    rel = [point[axis] - frame["origin_mm"][axis] for axis in range(3)]
    return [sum(a * b for a, b in zip(rel, frame[name])) for name in ("u", "v", "out")]


def slab(panel):
    """The box a panel fills, openings and all: [low, high] in the case frame."""
    w, h = panel["size_mm"]
    a, b = to_case(panel, 0, 0, 0), to_case(panel, w, h, -panel["thickness_mm"])
    return [min(x, y) for x, y in zip(a, b)], [max(x, y) for x, y in zip(a, b)]
