"""Layouts of rectangles: sound by plane geometry of another program, and never more sheets than another packer needs.

The other packer is `rectpack`, in all its modes. It takes minutes over all jobs, so its results are kept in
`rectpack.json` (written by `python tests/outside/rectangles.py`); some are worked out again here.
"""

import json
import math
import os
import pathlib
import random
import re
import subprocess

import ezdxf
import pytest
from ezdxf.path import make_path
from shapely import STRtree
from shapely.affinity import rotate, translate
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


def polygon(entity):
    """A closed contour of a DXF file; arcs as chords far finer than the gap."""
    return Polygon([(point.x, point.y) for point in make_path(entity).flattening(0.0005)])


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


def frames_and_pieces(seed):
    """A job of frames with openings and small pieces, whole millimetres."""
    draw = random.Random(seed)
    pieces = []
    for _ in range(draw.randint(1, 3)):
        width, height = draw.randint(200, 500), draw.randint(200, 400)
        room = [draw.randint(10, 40), draw.randint(10, 40)]
        room += [draw.randint(80, width - room[0] - 10), draw.randint(80, height - room[1] - 10)]
        count = draw.randint(1, 3)
        pieces.append({"width": width, "height": height, "count": count, "turn": True, "openings": [room]})
    for _ in range(draw.randint(2, 6)):
        width, height = draw.randint(20, 200), draw.randint(20, 200)
        pieces.append({"width": width, "height": height, "count": draw.randint(1, 5), "turn": draw.random() < 0.7})
    rules = {"trim": draw.choice([0, 5]), "gap": draw.choice([0, 2, 9]), "method": "free"}
    return {"pieces": pieces, "sheets": [{"width": 1220, "height": 610}], "rules": rules, "steps": 20_000}


def test_pieces_in_openings_keep_their_distance_from_every_material():
    """A frame's material is its rectangle less its openings; nothing in one comes nearer to any than the gap."""
    jobs = [frames_and_pieces(seed) for seed in range(60)]
    plans = rectangles.plans(os.environ["PANELWRIGHT_BIN"], jobs)
    inside = 0
    for job, plan in zip(jobs, plans):
        gap = job["rules"]["gap"]
        left = [piece["count"] for piece in job["pieces"]]
        for sheet in plan["sheets"]:
            materials = []
            for placed in sheet["placed"]:
                piece = job["pieces"][placed["piece"]]
                left[placed["piece"]] -= 1
                x, y, width, height = placed["rect"]
                material = rectangle(x, y, width, height)
                for u, v, w, h in piece.get("openings", []):
                    # The opening as it is cut: the room and the gap around it, turned with the frame.
                    u, v, w, h = u - gap, v - gap, w + 2 * gap, h + 2 * gap
                    hole = rectangle(u, v, w, h)
                    if placed["turned"]:
                        hole = translate(rotate(hole, 90, origin=(0, 0)), x + width, y)
                    else:
                        hole = translate(hole, x, y)
                    material = material.difference(hole)
                materials.append(material)
                inside += placed["inside"] is not None
            for index, one in enumerate(materials):
                for other in materials[:index]:
                    assert one.distance(other) >= gap - TOUCH_MM, (job, placed)
                    assert one.intersection(other).area < TOUCH_MM
        assert left == [sum(u["count"] for u in plan["unplaced"] if u["piece"] == at) for at in range(len(left))]
        assert plan["bound"] <= len(plan["sheets"])
    assert inside > 60


@pytest.fixture(scope="module")
def kits(panelwright, tmp_path_factory):
    """Two designs and a sleeve of a third on sheets: the answer, the folder, and each design's panels."""
    folder = tmp_path_factory.mktemp("kits")
    designs = {
        "quay": {"method": "laser"},
        "dinghy": {"method": "laser", "card.kind": "none", "cooler.height": 60},
        "oak": {"method": "router", "sheet.material": "plywood", "sheet.measured": 5.8},
    }
    sizes = {}
    for name, choices in designs.items():
        (folder / f"{name}.json").write_text(json.dumps(choices))
        panelwright("make", folder / f"{name}.json", "--out", folder / name)
        sizes[name] = json.loads((folder / name / "build.json").read_text())["panels"]
    wanted = [f"{folder / 'quay.json'}:2", str(folder / "dinghy.json"), f"{folder / 'oak.json'}:sleeve"]
    sheets = ["--sheet", "1220x610:3@fibreboard", "--sheet", "900x600:2@plywood"]
    told = panelwright("kits", *wanted, *sheets, "--most", "--json", "--steps", 500_000, "--out", folder / "out")
    return json.loads(told), folder / "out", sizes


def outlines(path):
    """Outlines of a sheet's DXF as shapely has them, and the entities in their order."""
    document = ezdxf.readfile(path)
    audit = document.audit()
    assert not audit.errors and not audit.fixes
    space = document.modelspace()
    found = [polygon(entity) for entity in space if entity.dxf.layer.endswith("outline")]
    return found, [entity for entity in space if entity.dxf.layer == "sheet"]


def test_whole_rounds_of_kits_lie_on_the_sheets_without_touching(kits):
    answer, folder, sizes = kits
    rounds = answer["rounds"]
    assert 1 <= rounds <= answer["bound"]
    wanted = {"fibreboard-6": 2 * len(sizes["quay"]) + len(sizes["dinghy"]), "plywood-5.8": 4}
    for stack, count in wanted.items():
        files = sorted(folder.glob(f"{stack}/sheet-*-cut.dxf"))
        assert 1 <= len(files) <= (3 if stack.startswith("fibre") else 2)
        areas = 0
        for file in files:
            shapes, [edge] = outlines(file)
            sheet = polygon(edge)
            areas += len(shapes)
            for index, shape in enumerate(shapes):
                assert sheet.contains(shape)
                assert all(shape.distance(other) > 1 for other in shapes[:index])
        assert areas == count * rounds, stack
    # The oak sleeve is a little thinner; its panels come from its own design.
    sleeve = [panel for panel in sizes["oak"] if panel["assembly"] == "sleeve"]
    assert len(sleeve) == 4
    pages = subprocess.run(["pdfinfo", folder / "sheets.pdf"], capture_output=True, text=True, check=True).stdout
    sheets = sum(len(stack["layouts"]["sheets"]) for stack in answer["stacks"])
    assert re.search(rf"Pages: +{sheets}\n", pages), pages


# Beside the default case a box so small that its panels fit other panels' openings; sizes invented for the check.
BOX = {"method": "laser", "laser.kerf": 0.2, "size.rule": "given", "size.width": 80, "size.depth": 100, "size.height": 80}
LARGE = {"method": "laser", "laser.kerf": 0.2, "stock.openings": True, "fan1.size": "140"}


def test_panels_in_openings_of_real_designs_are_cut_first_and_touch_nothing(panelwright, tmp_path):
    for name, choices in (("large", LARGE), ("box", BOX)):
        (tmp_path / f"{name}.json").write_text(json.dumps(choices))
    kits = [f"{tmp_path / 'large.json'}:2", f"{tmp_path / 'box.json'}:2"]
    told = panelwright("kits", *kits, "--steps", 50_000, "--json", "--out", tmp_path / "out")
    said = [label for stack in json.loads(told)["stacks"] for sheet in stack["layouts"]["sheets"] for label in sheet["panels"]]
    assert len(said) == 24
    inner = 0
    for file in sorted((tmp_path / "out").glob("*/sheet-*-cut.dxf")):
        document = ezdxf.readfile(file)
        audit = document.audit()
        assert not audit.errors and not audit.fixes
        cut = [entity for entity in document.modelspace() if entity.dxf.layer not in ("notes", "sheet")]
        first = [index for index, entity in enumerate(cut) if entity.dxf.layer.startswith("first-")]
        # Everything of a panel in an opening comes before anything else.
        assert first == list(range(len(first)))
        shapes = {}
        for entity in cut:
            if entity.dxf.layer.endswith(("outline", "openings")):
                shapes.setdefault(entity.dxf.layer, []).append(polygon(entity))
        openings = unary_union(shapes.get("openings", []))
        for outline in shapes.get("first-outline", []):
            inner += 1
            # 2 mm between panels and at the rim; both paths run half a kerf into it.
            hosts = [opening for opening in shapes["openings"] if opening.contains(outline)]
            assert len(hosts) == 1 and hosts[0].exterior.distance(outline) >= 2 - 0.2 - TOUCH_MM
            material = unary_union([other for other in shapes["outline"]]).difference(openings)
            assert material.distance(outline) >= 2 - 0.2 - TOUCH_MM
            others = [other for other in shapes["first-outline"] if other is not outline]
            assert all(outline.distance(other) >= 2 - 0.2 - TOUCH_MM for other in others)
        groups = re.findall(r'<g id="([^"]+)"', file.with_suffix(".svg").read_text())
        assert groups == sorted(groups, key=lambda name: (name != "sheet", not name.startswith("first-"), name == "outline"))
    assert inner >= 2
    assert sum("in an opening of large" in label for label in said) == inner
