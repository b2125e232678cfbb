"""Layouts of rectangles: sound by plane geometry of another program, and never more sheets than another packer needs.

The other packer is `rectpack`, in all its modes. It takes minutes over all jobs, so its results are kept in
`rectpack.json` (written by `python tests/outside/rectangles.py`); some are worked out again here.
"""

import json
import math
import os
import pathlib

import pytest
from shapely import STRtree
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

import rectangles

# Steps for a job: about a tenth of a second in a build for speed.
STEPS = 200_000
# Every so many jobs rectpack's result is worked out again.
AGAIN = 25
# mm: places are whole thousandths, so shapes that differ by less than half of one are the same.
TOUCH_MM = 5e-4

KEPT = json.loads(pathlib.Path(__file__).with_name("rectpack.json").read_text())


@pytest.fixture(scope="module")
def done():
    """All jobs with their plans."""
    program = os.environ.get("PANELWRIGHT_BIN")
    assert program, "PANELWRIGHT_BIN names no program: start these checks by `cargo xtask test outside`"
    jobs = [rectangles.random_job(seed) for seed in range(len(KEPT))]
    plans = rectangles.plans(program, [dict(job, steps=STEPS) for job in jobs])
    assert len(plans) == len(jobs) >= 200
    return list(zip(jobs, plans))


def rectangle(x, y, width, height):
    return box(x, y, x + width, y + height)


def test_every_piece_lies_on_a_sheet_and_apart_from_the_others(done):
    for job, plan in done:
        gap = job["rules"]["gap"]
        left = [piece["count"] for piece in job["pieces"]]
        assert plan["unplaced"] == []
        for sheet in plan["sheets"]:
            kind = job["sheets"][sheet["sheet"]]
            whole = box(0, 0, kind["width"], kind["height"]).buffer(TOUCH_MM, join_style="mitre")
            shapes = []
            for placed in sheet["placed"]:
                piece = job["pieces"][placed["piece"]]
                left[placed["piece"]] -= 1
                size = (piece["width"], piece["height"])
                assert piece["turn"] or not placed["turned"]
                assert tuple(placed["rect"][2:]) == (size[::-1] if placed["turned"] else size)
                shapes.append(rectangle(*placed["rect"]))
            area = sum(shape.area for shape in shapes)
            assert math.isclose(area, unary_union(shapes).area, rel_tol=1e-9)
            assert math.isclose(area / (kind["width"] * kind["height"]), sheet["yield"], rel_tol=1e-9)
            shapes += [rectangle(*offcut) for offcut in sheet["offcuts"]]
            assert all(whole.covers(shape) for shape in shapes)
            # Each grown by half the gap they may still touch, no more.
            grown = [shape.buffer(gap / 2 - TOUCH_MM, join_style="mitre") for shape in shapes]
            first, second = STRtree(grown).query(grown, predicate="intersects")
            assert (first == second).all()
        assert left == [0] * len(left)


def test_the_saw_cuts_free_every_piece(done):
    """The kerfs of all cuts taken out of the sheet leave every piece and every offcut by itself."""
    sawn = 0
    for job, plan in done:
        if job["rules"]["method"] != "guillotine":
            assert all(sheet["cuts"] == [] for sheet in plan["sheets"])
            continue
        # A cut without width would leave everything in one.
        kerf = job["rules"]["gap"] or 2 * TOUCH_MM
        for sheet in plan["sheets"]:
            kind = job["sheets"][sheet["sheet"]]
            left = box(0, 0, kind["width"], kind["height"])
            for cut in sheet["cuts"]:
                (x0, y0), (x1, y1) = cut["start"], cut["end"]
                across = {"left": (kerf, 0), "right": (-kerf, 0), "bottom": (0, kerf), "top": (0, -kerf)}[cut["from"]]
                dx, dy = across
                left = left.difference(Polygon([(x0, y0), (x1, y1), (x1 + dx, y1 + dy), (x0 + dx, y0 + dy)]))
            parts = list(left.geoms) if left.geom_type == "MultiPolygon" else [left]
            tree = STRtree(parts)
            for rect in [placed["rect"] for placed in sheet["placed"]] + sheet["offcuts"]:
                shape = rectangle(*rect)
                part = parts[tree.nearest(shape.centroid)]
                assert part.symmetric_difference(shape).area <= 4 * TOUCH_MM * shape.length, (rect, part.wkt)
                sawn += 1
    assert sawn > 1000


def test_never_more_sheets_than_another_packer(done):
    worse = []
    for seed, (job, plan) in enumerate(done):
        other = KEPT[seed]
        if seed % AGAIN == 0:
            assert rectangles.best(job) == other, f"{seed}: rectpack.json is of another rectpack or other jobs"
        if other is not None and len(plan["sheets"]) > other:
            worse.append((seed, len(plan["sheets"]), other))
    assert worse == []


def test_no_packer_goes_below_the_bounds(done):
    for seed, (job, plan) in enumerate(done):
        gap = job["rules"]["gap"]
        sheet = job["sheets"][0]
        area = sum((p["width"] + gap) * (p["height"] + gap) * p["count"] for p in job["pieces"])
        assert plan["area_bound"] == math.ceil(area / ((sheet["width"] + gap) * (sheet["height"] + gap)))
        strongest = plan["bound"]
        assert strongest >= max(plan["area_bound"], plan["l2_bound"])
        assert strongest <= len(plan["sheets"])
        assert KEPT[seed] is None or strongest <= KEPT[seed]
        assert plan["fewest"] == (plan["bound"] == len(plan["sheets"])), seed
