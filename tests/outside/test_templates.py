"""Templates as another program reads them: sizes, bars, outlines and holes of the PDF, in millimetres on paper.

`pdftocairo -svg` gives every page as lines in points; `pdfinfo` and `qpdf` look at the file as such. What a line should
be is read from build.json or typed here from the standard, never taken from the PDF itself.
"""

import csv
import json
import math
import re
import subprocess
import xml.etree.ElementTree as tree

import pytest
from shapely.geometry import Point

import flat

SVG = "{http://www.w3.org/2000/svg}"
MM = 25.4 / 72
# Microns matter to nobody with a saw; 0.01 mm is what the templates promise.
NEAR = 0.01
# The printer of the corrected templates: bars of 100 mm measured across and down, worked by hand.
ACROSS, DOWN = 100 / 99.4, 100 / 100.2


@pytest.fixture(scope="module")
def made(root, panelwright, tmp_path_factory):
    """`made({...})`: the pack of the first example with some choices changed, its build.json, and the PDF's place."""
    packs = {}

    def make(**changes):
        key = json.dumps(changes, sort_keys=True)
        if key not in packs:
            example = sorted((root / "examples").glob("a-*.json"))[0]
            design = json.loads(example.read_text())
            design.update({name.replace("__", "."): value for name, value in changes.items()})
            folder = tmp_path_factory.mktemp("templates")
            source = folder / "one.json"
            source.write_text(json.dumps(design))
            panelwright("make", source, "--out", folder / "pack")
            packs[key] = (json.loads((folder / "pack/build.json").read_text()), folder / "pack")
        return packs[key]

    return make


def page_sizes(pdf):
    """Width and height of every page in mm, as pdfinfo says."""
    told = subprocess.run(
        ["pdfinfo", "-f", "1", "-l", "999", pdf], capture_output=True, text=True, check=True
    ).stdout
    found = re.findall(r"Page +\d+ size: +([\d.]+) x ([\d.]+) pts", told)
    return [(float(w) * MM, float(h) * MM) for w, h in found]


def words_on(pdf, page):
    return subprocess.run(
        ["pdftotext", "-f", str(page), "-l", str(page), "-raw", pdf, "-"],
        capture_output=True,
        text=True,
        check=True,
    ).stdout


def matrix_of(element):
    found = re.match(r"matrix\(([^)]*)\)", element.get("transform", ""))
    return [float(value) for value in found.group(1).split(",")] if found else [1, 0, 0, 1, 0, 0]


def paths_on(pdf, page, tmp_path):
    """Every stroked path of a page: (corners in mm with y up, line width), Bezier pieces by their end points."""
    out = tmp_path / f"page-{page}.svg"
    subprocess.run(
        ["pdftocairo", "-svg", "-f", str(page), "-l", str(page), "-noshrink", "-nocenter", pdf, out], check=True
    )
    top = tree.parse(out).getroot()
    height = float(top.get("viewBox").split()[3])
    found = []
    for path in top.iter(f"{SVG}path"):
        # Older versions write one style, newer ones an attribute each.
        style = path.get("style") or f"stroke:{path.get('stroke', 'none')};"
        if re.search(r"stroke:\s*none", style) or "stroke:" not in style:
            continue
        a, b, c, d, e, f = matrix_of(path)
        points, curved = [], False
        tokens = re.findall(r"[MLCZ]|-?[\d.]+(?:e-?\d+)?", path.get("d"))
        index, command = 0, None
        while index < len(tokens):
            if tokens[index] in "MLCZ":
                command = tokens[index]
                index += 1
                continue
            take = 3 if command == "C" else 1
            curved |= command == "C"
            index += 2 * (take - 1)
            x, y = float(tokens[index]), float(tokens[index + 1])
            index += 2
            points.append(((a * x + c * y + e) * MM, (height - (b * x + d * y + f)) * MM))
        found.append({"points": points, "curved": curved})
    return found


def box(points):
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def bars(paths):
    """Lengths of the level and of the upright bar: straight lines next to 100 mm with two ticks of 3 mm at their ends."""
    lines = [path["points"] for path in paths if len(path["points"]) == 2]
    level, upright = [], []
    for (x0, y0), (x1, y1) in lines:
        for out, a, b, fixed, at in ((level, x0, x1, y0, 1), (upright, y0, y1, x0, 0)):
            if abs((y1 - y0) if at else (x1 - x0)) > 1e-6 or not 95 < abs(b - a) < 105:
                continue
            ticks = [
                end
                for end in (a, b)
                if any(
                    all(abs(point[1 - at] - end) < NEAR for point in line)
                    and abs(abs(line[0][at] - line[1][at]) - 3) < 0.2
                    and min(line[0][at], line[1][at]) < fixed < max(line[0][at], line[1][at])
                    for line in lines
                )
            ]
            if len(ticks) == 2:
                out.append(abs(b - a))
    return level, upright


def whole_pages(build, pdf):
    """(page number, panel) of the panels that take one page each, by the name printed on it."""
    for number in range(1, len(page_sizes(pdf)) + 1):
        words = words_on(pdf, number)
        for panel in build["panels"]:
            if re.search(rf"^{panel['label']}$", words, re.MULTILINE) and "page 1 of 1" in words:
                yield number, panel


def ring(points):
    """Centre and diameter of a circle by the ends of its curves; a diameter of 0 for what is none."""
    ends = [point for index, point in enumerate(points) if all(math.dist(point, other) > NEAR for other in points[:index])]
    x, y = (sum(end[axis] for end in ends) / len(ends) for axis in (0, 1))
    radii = [math.dist(end, (x, y)) for end in ends]
    return x, y, 2 * max(radii) if len(ends) > 3 and max(radii) - min(radii) < NEAR else 0


def nearest_outline(paths, size, scale):
    """Of the closed straight paths, the one whose box is nearest to a size."""
    boxes = [box(path["points"]) for path in paths if len(path["points"]) >= 4]
    off = [math.hypot(x1 - x0 - size[0] * scale[0], y1 - y0 - size[1] * scale[1]) for x0, y0, x1, y1 in boxes]
    return boxes[off.index(min(off))]


@pytest.mark.parametrize(
    ("changes", "across", "down"),
    [({}, 1, 1), ({"printer__across": 99.4, "printer__down": 100.2}, ACROSS, DOWN)],
    ids=["as it is", "corrected"],
)
def test_bars_and_outlines_measure_what_they_should(made, tmp_path, changes, across, down):
    build, pack = made(**changes)
    pdf = pack / "templates.pdf"
    seen_bars = [0, 0]
    sizes = page_sizes(pdf)
    for number, (width, height) in enumerate(sizes, start=1):
        # Turned, the paper's short side is the page's height.
        scale = (across, down) if width < height else (down, across)
        level, upright = bars(paths_on(pdf, number, tmp_path))
        for axis, found in enumerate((level, upright)):
            for length in found:
                assert abs(length - 100 * scale[axis]) < NEAR, (number, axis, length)
                seen_bars[axis] += 1
        words = words_on(pdf, number)
        # The last page holds no line to measure.
        if not words.startswith("Order of work by hand"):
            assert ("Corrected for this printer" in words) == bool(changes), number
    assert min(seen_bars) >= len(build["panels"]) - 2, seen_bars
    checked = 0
    for number, panel in whole_pages(build, pdf):
        width, height = sizes[number - 1]
        scale = (across, down) if width < height else (down, across)
        x0, y0, x1, y1 = nearest_outline(paths_on(pdf, number, tmp_path), panel["size_mm"], scale)
        assert abs(x1 - x0 - panel["size_mm"][0] * scale[0]) < NEAR, panel["id"]
        assert abs(y1 - y0 - panel["size_mm"][1] * scale[1]) < NEAR, panel["id"]
        # Stands in the middle of the paper, whatever the correction.
        assert abs((x0 + x1) / 2 - width / 2) < NEAR and abs((y0 + y1) / 2 - height / 2) < NEAR
        checked += 1
    assert checked >= 4


@pytest.mark.parametrize(("paper", "most"), [("a1", 2), ("a0", 1)])
@pytest.mark.parametrize(
    ("changes", "across", "down"),
    [({}, 1, 1), ({"printer__across": 99.4, "printer__down": 100.2}, ACROSS, DOWN)],
    ids=["as it is", "corrected"],
)
def test_a_plotter_prints_the_whole_case_on_one_or_two_sheets(made, tmp_path, paper, most, changes, across, down):
    """Every panel is there once at its true size, apart from the others, with two bars, its name and its hole key."""
    build, pack = made(template__paper=paper, **changes)
    pdf = pack / "templates.pdf"
    sizes = page_sizes(pdf)
    pages = [number for number, (width, _) in enumerate(sizes, start=1) if width > 500]
    assert 1 <= len(pages) <= most
    left = list(build["panels"])
    level, upright, words = [], [], ""
    for number in pages:
        width, height = sizes[number - 1]
        scale = (across, down) if width < height else (down, across)
        paths = paths_on(pdf, number, tmp_path)
        words += words_on(pdf, number)
        found = bars(paths)
        for axis, lengths in enumerate(found):
            assert all(abs(length - 100 * scale[axis]) < NEAR for length in lengths)
        level += found[0]
        upright += found[1]
        boxes = [box(path["points"]) for path in paths if len(path["points"]) >= 4]
        placed = []
        for panel in list(left):
            size = [panel["size_mm"][axis] * scale[axis] for axis in (0, 1)]
            mine = [
                one for one in boxes
                if abs(one[2] - one[0] - size[0]) < NEAR and abs(one[3] - one[1] - size[1]) < NEAR and one not in placed
            ]
            if mine:
                placed.append(mine[0])
                left.remove(panel)
        for index, (x0, y0, x1, y1) in enumerate(placed):
            assert min(x0, y0) > 0 and x1 < width and y1 < height
            for u0, v0, u1, v1 in placed[:index]:
                assert x1 < u0 or u1 < x0 or y1 < v0 or v1 < y0
    assert left == []
    assert len(level) == len(upright) == len(build["panels"])
    for panel in build["panels"]:
        assert len(re.findall(rf"^{panel['label']}$", words, re.MULTILINE)) == 1, panel["label"]
        keys = {feature["key"] for feature in panel["features"] if feature.get("key")}
        assert all(re.search(rf"^{key}\b", words, re.MULTILINE) for key in keys), keys


def test_a_print_that_was_fitted_to_the_page_is_not_corrected(made, tmp_path):
    _, pack = made(printer__across=96.0)
    pdf = pack / "templates.pdf"
    level, upright = bars(paths_on(pdf, 1, tmp_path))
    assert level and all(abs(length - 100) < NEAR for length in level + upright)
    assert "Not corrected: a bar of 100 mm read 96 mm" in words_on(pdf, 1)
    findings = json.loads((pack / "findings.json").read_text())
    assert "printer-scale" in json.dumps(findings)


@pytest.mark.parametrize(
    ("paper", "size"),
    [("a4", (210, 297)), ("a3", (297, 420)), ("letter", (215.9, 279.4)), ("legal", (215.9, 355.6)),
     ("tabloid", (279.4, 431.8)), ("a1", (594, 841)), ("a0", (841, 1189))],
)  # fmt: skip
def test_pages_are_the_papers_true_size_and_the_file_is_whole(made, panelwright, tmp_path, paper, size):
    _, pack = made(template__paper=paper)
    test = tmp_path / "test.pdf"
    panelwright("test-page", "--paper", paper, "--out", test)
    assert len(page_sizes(test)) == 1
    for pdf in (pack / "templates.pdf", test):
        for number, (width, height) in enumerate(page_sizes(pdf), start=1):
            # What is only written comes on A4 where the panels share a large sheet.
            written = paper in ("a1", "a0") and words_on(pdf, number).startswith("Order of work by hand")
            # A printed size of three decimals of a point, and a hair.
            assert sorted((width, height)) == pytest.approx((210, 297) if written else sorted(size), abs=0.01)
        done = subprocess.run(["qpdf", "--check", pdf], capture_output=True, text=True, check=False)
        assert done.returncode == 0, done.stdout + done.stderr


def test_the_test_page_shows_true_bars_square_and_circle(panelwright, tmp_path):
    test = tmp_path / "test.pdf"
    panelwright("test-page", "--out", test)
    paths = paths_on(test, 1, tmp_path)
    straight = [path["points"] for path in paths if len(path["points"]) == 2]
    level = [abs(b[0] - a[0]) for a, b in straight if abs(a[1] - b[1]) < 1e-6]
    upright = [abs(b[1] - a[1]) for a, b in straight if abs(a[0] - b[0]) < 1e-6]
    for lengths, wanted in ((level, 100), (upright, 100), (upright, 200)):
        assert any(abs(length - wanted) < NEAR for length in lengths), wanted
    boxes = [box(path["points"]) for path in paths if len(path["points"]) >= 4]
    sides = [(x1 - x0, y1 - y0) for x0, y0, x1, y1 in boxes]
    assert any(abs(w - 100) < NEAR and abs(h - 100) < NEAR for w, h in sides)
    assert any(abs(w - 40) < NEAR and abs(h - 40) < NEAR for w, h in sides)
    diagonals = [math.dist(*line) for line in straight if abs(line[0][0] - line[1][0]) > 90 and abs(line[0][1] - line[1][1]) > 90]
    assert len(diagonals) == 2 and all(abs(length - 100 * math.sqrt(2)) < NEAR for length in diagonals)
    words = words_on(test, 1)
    assert "The bar across measures" in words and "100 %" in words
    # What is there is not overwritten.
    panelwright("test-page", "--out", test, code=2)


def test_fingers_are_printed_whole(made):
    """A panel of the paper's own size with fingers along its edge is spread over pages rather than left to ticks."""
    build, pack = made(method="laser")
    edges = [panel for panel in build["panels"] if panel["outline"].count("L") > 20]
    assert edges, "no panel has fingers"
    words = [words_on(pack / "templates.pdf", page + 1) for page in range(len(page_sizes(pack / "templates.pdf")))]
    for panel in edges:
        mine = [text for text in words if re.search(rf"^{panel['label']}$", text, re.MULTILINE)]
        assert mine and not any("beyond these ticks" in text for text in mine), panel["id"]


def test_the_boards_holes_lie_where_the_standard_has_them(made, tmp_path):
    """Mini-ITX: holes C, F, H, J of ATX Specification 2.2, figure 3, laid over the centre marks of the floor."""
    build, pack = made()
    pdf = pack / "templates.pdf"
    # Inches from hole C, component side towards you, rear edge at the top: x to the right, y down.
    figure = {"C": (0.0, 0.0), "F": (6.2, 0.9), "H": (0.0, 6.1), "J": (6.2, 6.1)}
    number = next(number for number, panel in whole_pages(build, pdf) if panel["id"] == "floor")
    lines = [path["points"] for path in paths_on(pdf, number, tmp_path) if len(path["points"]) == 2]
    level = [((a[0] + b[0]) / 2, a[1]) for a, b in lines if abs(a[1] - b[1]) < 1e-6 and abs(a[0] - b[0]) < 20]
    upright = [(a[0], (a[1] + b[1]) / 2) for a, b in lines if abs(a[0] - b[0]) < 1e-6 and abs(a[1] - b[1]) < 20]
    crosses = [one for one in level if any(math.dist(one, other) < NEAR for other in upright)]
    # The floor is seen from below with the back at the top: left and right of the figure change places.
    over = [
        origin
        for origin in crosses
        if all(
            any(math.dist((origin[0] - 25.4 * x, origin[1] - 25.4 * y), cross) < NEAR for cross in crosses)
            for x, y in figure.values()
        )
    ]
    assert len(over) == 1, crosses


def test_tables_for_marking_out_say_what_the_panels_hold(made):
    build, pack = made(hand__marking=True)
    words = [words_on(pack / "templates.pdf", page + 1) for page in range(len(page_sizes(pack / "templates.pdf")))]
    for panel in build["panels"]:
        text = (pack / f"marking/{panel['id']}.csv").read_bytes().decode("utf-8")
        assert text.count("\r\n") == text.count("\n")
        rows = list(csv.DictReader(text.splitlines()))
        for feature in panel["features"]:
            if feature["kind"] != "hole":
                continue
            mine = [row for row in rows if row["id"] == feature["id"]]
            assert len(mine) == 1, feature["id"]
            u, v = (float(mine[0][f"from {edge} edge mm"]) for edge in ("left", "lower"))
            assert math.dist((u, v), feature["centre_mm"]) < NEAR, feature["id"]
        diagonal = [row for row in rows if row["what"] == "diagonals of the panel"]
        assert abs(float(diagonal[0]["from left edge mm"]) - math.hypot(*panel["size_mm"])) < NEAR
        assert any(f"Marking out: {panel['label']}" in page for page in words), panel["id"]


def test_tables_hold_every_hole_drilled_to_cut_an_opening_out(made, tmp_path):
    """Chains and blade entries: those of the table are the rings of the template, inside the openings of build.json."""
    build, pack = made(hand__marking=True, hand__chain=True, hand__frame=102)
    chains = 0
    for number, panel in whole_pages(build, pack / "templates.pdf"):
        rows = list(csv.DictReader((pack / f"marking/{panel['id']}.csv").read_text(encoding="utf-8").splitlines()))
        table = {feature["id"]: [] for feature in panel["features"]}
        for row in rows:
            if re.search(r", (chain|blade entry) \d+ of \d+$", row["what"]):
                diameter = float(row["then"].removeprefix("⌀"))
                table[row["id"]].append((float(row["from left edge mm"]), float(row["from lower edge mm"]), diameter))
                chains += "chain" in row["what"]
        paths = paths_on(pack / "templates.pdf", number, tmp_path)
        left, lower, *_ = nearest_outline(paths, panel["size_mm"], (1, 1))
        rings = [
            (x - left, y - lower, wide)
            for x, y, wide in map(ring, (path["points"] for path in paths if path["curved"]))
            if wide
        ]
        for feature in panel["features"]:
            if feature["kind"] not in ("opening", "vent") or feature["notch"] or not feature["through"]:
                continue
            line = flat.polygon(feature["path"])
            # What is drawn within the line, the line itself not counted.
            inside = [
                (x, y, wide)
                for x, y, wide in rings
                if line.buffer(NEAR).contains(Point(x, y).buffer(wide / 2))
                and not (feature["diameter_mm"] and abs(wide - feature["diameter_mm"]) < NEAR)
                and not abs(wide * wide * math.pi / 4 - line.area) < NEAR * line.length
            ]
            assert len(inside) == len(table[feature["id"]]), (panel["id"], feature["id"])
            for mark in table[feature["id"]]:
                assert any(math.dist(mark, ring) < 2 * NEAR for ring in inside), (panel["id"], feature["id"], mark)
    assert chains > 30


def test_the_last_page_counts_the_drills(made):
    """Holes by diameter of each panel, counted from build.json, stand on the page for work by hand."""
    build, pack = made()
    pages = len(page_sizes(pack / "templates.pdf"))
    words = words_on(pack / "templates.pdf", pages)
    assert words.startswith("Order of work by hand")
    for panel in build["panels"]:
        after = words.split(f"\n{panel['label']}\n")[1]
        drills = " ".join(after.split("2. ")[0].split())
        holes = {}
        for feature in panel["features"]:
            if feature["kind"] == "hole" and feature["through"] and feature.get("diameter_mm"):
                size = f"{feature['diameter_mm']:g}"
                holes[size] = holes.get(size, 0) + 1
        for size, count in holes.items():
            found = re.search(rf"⌀{re.escape(size)}: (\d+)", drills)
            # A blade's entry or the end of a vent may take the same drill.
            assert found and int(found.group(1)) >= count, (panel["id"], size, drills)
