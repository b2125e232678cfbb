"""Joined panels, read from build.json alone: they touch, never share room, and fill the corner between them.

Plane geometry by shapely. Two panels of a corner stand square to each other, so the room both could claim is a bar along
the corner; what each has of it is a set of stretches along the bar, and those are compared.
"""

import itertools
import json
import random

import pytest
from shapely.geometry import box
from shapely.ops import unary_union

import flat

SEAMS = ["left_front", "right_front", "left_top", "right_top", "front_top"]
JOINTS = ["brackets", "blocks", "rebate", "finger", "tab"]
# build.json is written to 1e-4 mm.
CLOSE_MM = 1e-3


def build_of(panelwright, folder, design):
    file = folder / "design.json"
    file.write_text(json.dumps(design))
    panelwright("make", file, "--out", folder / "out", "--force")
    return json.loads((folder / "out" / "build.json").read_text())


def sheet(panel, depth):
    """What is left of a panel at a depth behind its outside face."""
    gone = [
        flat.polygon(feature["path"])
        for feature in panel["features"]
        if not feature.get("notch")
        and (
            feature["through"]
            or (feature["face"] == "inside" and depth > panel["thickness_mm"] - feature["depth_mm"])
            or (feature["face"] == "outside" and depth < feature["depth_mm"])
        )
    ]
    return flat.polygon(panel["outline"]).difference(unary_union(gone))


def common(one, other):
    """The box two panels could both claim, or None."""
    slabs = [flat.slab(panel) for panel in (one, other)]
    low = [max(slabs[0][0][axis], slabs[1][0][axis]) for axis in range(3)]
    high = [min(slabs[0][1][axis], slabs[1][1][axis]) for axis in range(3)]
    return (low, high) if all(b - a > CLOSE_MM for a, b in zip(low, high)) else None


def stretches(panel, room, axis):
    """The parts of a panel along an axis inside a box, at the box's middle in the panel's own depth."""
    low, high = room
    middle = [(a + b) / 2 for a, b in zip(low, high)]
    depth = -flat.to_panel(panel, middle)[2]
    corners = [flat.to_panel(panel, low), flat.to_panel(panel, high)]
    u, v = sorted(c[0] for c in corners), sorted(c[1] for c in corners)
    left = sheet(panel, depth).intersection(box(u[0], v[0], u[1], v[1]))
    along = 0 if abs(panel["frame"]["u"][axis]) > 0.5 else 1
    parts = left.geoms if hasattr(left, "geoms") else [left]
    sign = panel["frame"]["u" if along == 0 else "v"][axis]
    out = []
    for part in parts:
        if part.area < CLOSE_MM:
            continue
        ends = [part.bounds[along], part.bounds[along + 2]]
        out.append(sorted(panel["frame"]["origin_mm"][axis] + sign * end for end in ends))
    return out


def overlap(first, second):
    return sum(max(0.0, min(a[1], b[1]) - max(a[0], b[0])) for a in first for b in second)


def designs():
    dice = random.Random(20)
    for number in range(60):
        design = {"size.rule": "smallest", "joint.play": 0.0, "sheet.nominal": dice.choice([4.0, 6.0, 9.0])}
        design["sleeve.corners"] = dice.choice(["sides", "face"])
        for seam in SEAMS:
            design[f"joint.{seam}"] = dice.choice(JOINTS)
            design[f"through.{seam}"] = dice.choice(["auto", *seam.split("_")])
        design["joint.floor_back"] = dice.choice(JOINTS[:4])
        yield pytest.param(design, id=str(number))


@pytest.mark.parametrize("design", list(designs()))
def test_joined_panels_never_share_room(panelwright, tmp_path, design):
    build = build_of(panelwright, tmp_path, design)
    checked = 0
    for one, other in itertools.combinations(build["panels"], 2):
        room = common(one, other)
        if room is None:
            continue
        normals = [max(range(3), key=lambda axis: abs(panel["frame"]["out"][axis])) for panel in (one, other)]
        axis = 3 - sum(normals)
        first, second = stretches(one, room, axis), stretches(other, room, axis)
        assert overlap(first, second) < 0.05, (one["id"], other["id"], first, second)
        checked += 1
    joints = [design[f"joint.{seam}"] for seam in [*SEAMS, "floor_back"]]
    assert checked >= sum(joint in ("rebate", "finger", "tab") for joint in joints)


def test_fingers_fill_the_corner_and_have_the_play_asked_for(panelwright, tmp_path):
    for play in (0.0, 0.2):
        design = {"size.rule": "smallest", "joint.play": play, "joint.left_front": "finger"}
        panels = {panel["id"]: panel for panel in build_of(panelwright, tmp_path, design)["panels"]}
        room = common(panels["left"], panels["front"])
        first, second = (stretches(panels[name], room, 2) for name in ("left", "front"))
        filled = sum(end - start for start, end in first + second)
        # Each of the flanks that meet stands back by half of the play in all.
        flanks = len(first) + len(second) - 1
        assert filled == pytest.approx(room[1][2] - room[0][2] - flanks * play / 2, abs=CLOSE_MM)
        assert len(first) == len(second) + 1
