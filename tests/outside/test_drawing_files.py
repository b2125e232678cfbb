"""The writers of pictures, read by others: poppler, qpdf and pypdf for PDF, resvg and shapely for SVG.

The specimen's places and sizes are stated in `crates/panelwright/examples/specimen.rs`; here they are read back.
"""

import io
import math
import re
import subprocess
import xml.etree.ElementTree as tree

import numpy
import pypdf
import pytest
import resvg_py
from PIL import Image
from shapely.geometry import LineString, Point, Polygon, box

POINTS_PER_MM = 72 / 25.4
SVG = "{http://www.w3.org/2000/svg}"


def run(*command):
    done = subprocess.run([*map(str, command)], capture_output=True, check=False)
    assert done.returncode == 0, f"{command}: exit {done.returncode}\n{done.stdout}\n{done.stderr}"
    return done.stdout


@pytest.fixture(scope="module")
def specimen(written):
    """A folder with the specimen, freshly written."""
    return written("specimen")


@pytest.fixture(scope="module")
def poppler(specimen):
    """The first page's lines and surfaces as poppler sees them: lists of points in mm, y up, curves as points.

    Without -noshrink this program rounds a page of 595.2756 points up to 596 and then shrinks it to fit (0.12 %).
    """
    run("pdftocairo", "-svg", "-noshrink", "-nocenter", "-f", 1, "-l", 1, specimen / "specimen.pdf", specimen / "read.svg")
    paths = []
    for element in tree.parse(specimen / "read.svg").iter(f"{SVG}path"):
        # Older versions write a style, newer ones attributes.
        style = dict(part.split(":") for part in element.get("style", "").split(";") if part) | element.attrib
        if "stroke-width" not in style and "fill-rule" not in style:
            continue
        numbers = re.search(r"matrix\(([^)]*)\)", element.get("transform", "matrix(1, 0, 0, 1, 0, 0)"))
        a, b, c, d, e, f = map(float, numbers.group(1).split(","))
        points = [
            ((a * x + c * y + e) / POINTS_PER_MM, 297 - (b * x + d * y + f) / POINTS_PER_MM)
            for x, y in absolute_points(element.get("d"))
        ]
        paths.append((style, points))
    assert len(paths) > 100
    return paths


def absolute_points(data):
    """Points along path data of absolute M, L, C, Z commands, 40 to a curve."""
    here = None
    for command, text in re.findall(r"([MLCZ])([^MLCZ]*)", data):
        numbers = [float(word) for word in text.split()]
        pairs = list(zip(numbers[::2], numbers[1::2]))
        if command == "C":
            for step in range(1, 41):
                t = step / 40
                weights = ((1 - t) ** 3, 3 * (1 - t) ** 2 * t, 3 * (1 - t) * t * t, t**3)
                curve = [here, *pairs]
                yield tuple(sum(w * p[axis] for w, p in zip(weights, curve)) for axis in (0, 1))
        elif pairs:
            yield pairs[0]
        here = pairs[-1] if pairs else here


def test_qpdf_finds_nothing_wrong(specimen):
    """qpdf --check: exit 0 means neither errors nor warnings."""
    assert b"No syntax or stream encoding errors" in run("qpdf", "--check", specimen / "specimen.pdf")


def test_page_boxes_are_the_papers_size(specimen):
    """A4 is 210 x 297 mm (ISO 216), Tabloid 11 x 17 in = 792 x 1224 points."""
    told = run("pdfinfo", "-box", "-l", 2, specimen / "specimen.pdf").decode()
    sizes = re.findall(r"Page +\d+ size: +([\d.]+) x ([\d.]+) pts", told)
    found = [float(size) for pair in sizes for size in pair]
    assert found == pytest.approx([595.276, 841.890, 792, 1224], abs=0.001)
    reader = pypdf.PdfReader(specimen / "specimen.pdf")
    for page in reader.pages:
        assert page.mediabox == page.trimbox == page.cropbox
        assert "/UserUnit" not in page
    # ISO 32000-1, table 150.
    preferences = reader.trailer["/Root"]["/ViewerPreferences"]
    assert preferences["/PrintScaling"] == "/None"
    assert preferences["/PickTrayByPDFSize"].value is True
    assert reader.metadata.title == "Specimen – ⌀ 4.5"
    assert reader.metadata.creation_date is None


def test_poppler_measures_the_bars_at_100_mm(poppler):
    wanted = [((20, 20), (120, 20)), ((20, 20), (20, 120))]
    for start, end in wanted:
        near = [
            points
            for _, points in poppler
            if len(points) == 2 and math.dist(points[0], start) < 0.05 and math.dist(points[1], end) < 0.05
        ]
        assert len(near) == 1
        assert math.dist(*near[0]) == pytest.approx(100, abs=0.001)


def test_poppler_finds_panel_and_holes_where_they_were_drawn(poppler):
    outline = box(45, 155, 165, 265).buffer(5, quad_segs=256)
    slot = LineString([(60, 165), (120, 165)]).buffer(6, quad_segs=256)
    circles = {(60 + 8 * column, 190 + 8 * row, 2.5) for column in range(12) for row in range(6)} | {(150, 250, 12)}
    left = set(circles)
    seen = 0
    for style, points in poppler:
        if style.get("fill") == "none" or len(points) < 50:
            continue
        if len(points) > 300:
            # The panel: outline, then window.
            split = next(index for index in range(2, len(points)) if math.dist(points[index], (60, 159)) < 0.05)
            panel, window = Polygon(points[:split]), Polygon(points[split:])
            for found, expected in ((panel, outline), (window, slot)):
                if found.area > 300 and abs(found.area - expected.area) < 5:
                    seen += 1
                    assert found.hausdorff_distance(expected) < 0.003
            continue
        ring = Polygon(points)
        for x, y, r in list(left):
            if ring.centroid.distance(Point(x, y)) < 0.5 and abs(ring.area - math.pi * r * r) < 0.05 * r * r:
                left.discard((x, y, r))
                distances = [math.dist(point, (x, y)) for point in points]
                assert max(distances) < r + 0.002 and min(distances) > r - 0.002
    assert seen == 2
    assert not left, f"poppler sees no hole at {sorted(left)[:3]} …"


def test_words_are_read_back_as_wide_as_we_measured_them(specimen, poppler):
    """The accent line under each text is as long as the program's own measure of it."""
    text = run("pdftotext", "-f", 1, "-l", 1, specimen / "specimen.pdf", "-").decode()
    assert "Drill ⌀ 4.5 × 6 mm → “through”, 20° ± 0.5 ≤ 3 ≥ 2 – ½ m² m³ µm" in text
    assert "Größe ABC xyz & <tags>" in text
    told = run("pdftotext", "-bbox", "-f", 1, "-l", 1, specimen / "specimen.pdf", "-").decode()
    words = re.findall(r'xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)<', told)
    ends = sorted(float(right) / POINTS_PER_MM for _, _, right, _, word in words if word in ("µm", "&lt;tags&gt;"))
    lines = sorted(
        points[1][0]
        for _, points in poppler
        if len(points) == 2 and abs(points[0][0] - 30) < 0.01 and points[0][1] > 110 and points[1][0] > 60
    )
    assert len(ends) == len(lines) == 4
    assert ends == pytest.approx(lines, abs=0.01)


def picture(png):
    return numpy.asarray(Image.open(io.BytesIO(png)).convert("RGB"), dtype=int)


def test_svg_and_pdf_show_the_same_picture(specimen):
    """Two renderers, two formats, ten pixels to the millimetre: the same ink in the same places."""
    drawn = picture(
        bytes(
            resvg_py.svg_to_bytes(
                svg_string=(specimen / "specimen-file.svg").read_text(),
                width=2100,
                height=2970,
                dpi=96,
                background="white",
                skip_system_fonts=True,
            )
        )
    )
    run("pdftocairo", "-png", "-r", 254, "-f", 1, "-l", 1, "-singlefile", specimen / "specimen.pdf", specimen / "read")
    printed = picture((specimen / "read.png").read_bytes())
    # 210 x 297 mm at 254 dots to the inch; a renderer may round a part of a dot up.
    for image in (drawn, printed):
        assert image.shape[0] in (2970, 2971) and image.shape[1] in (2100, 2101)
    drawn, printed = drawn[:2970, :2100], printed[:2970, :2100]
    apart = abs(drawn - printed).max(axis=2)
    # Renderers soften edges differently; nothing may differ by much over more than a pixel.
    strongly = apart > 96
    inner = strongly[1:-1, 1:-1] & strongly[:-2, 1:-1] & strongly[2:, 1:-1] & strongly[1:-1, :-2] & strongly[1:-1, 2:]
    assert not inner.any(), f"they differ at {numpy.argwhere(inner)[:3]} (row, column)"
    assert strongly.mean() < 0.005
    # And it is the picture meant, not two blank pages: sheet, a hole's paper, a line of the panel's edge.
    for x, y, colour in ((45, 200, (222, 202, 168)), (60, 190, (255, 255, 255)), (40, 200, (0, 0, 0))):
        for image in (drawn, printed):
            assert abs(image[2970 - round(10 * y), round(10 * x)] - colour).max() < 12, (x, y)


def test_svg_paths_are_closed_figures_of_the_stated_area(specimen):
    """Arcs read by the rules of SVG 2, 9.5.1, and measured by shapely."""
    page = tree.parse(specimen / "specimen-page.svg")
    assert page.getroot().get("width") == "210mm" and page.getroot().get("viewBox") == "0 0 210 297"
    groups = {group.get("id") for group in page.getroot().findall(f"{SVG}g")}
    assert groups == {"one-corners", "one-bars", "one-panel", "one-words", "one-surfaces", "one-grouped"}
    panel = page.find(f".//{SVG}path[@id='one-left']")
    assert panel.findtext(f"{SVG}title") == "Left panel <6 mm>"
    outline, window = (Polygon(points) for points in figures(panel.get("d")))
    # w h - (4 - pi) r^2 and L b + pi b^2 / 4.
    assert outline.area == pytest.approx(130 * 120 - (4 - math.pi) * 25, abs=0.02)
    assert window.area == pytest.approx(60 * 12 + math.pi * 36, abs=0.02)
    assert outline.hausdorff_distance(box(45, 32, 165, 142).buffer(5, quad_segs=512)) < 0.001


def figures(data):
    """Closed figures of path data with absolute M, L, A, Z commands, arcs as 400 points."""
    found, points = [], []
    for command, text in re.findall(r"([MLAZ])([^MLAZ]*)", data):
        numbers = [float(word) for word in text.split()]
        if command == "M":
            points = [tuple(numbers)]
        elif command == "L":
            points.append(tuple(numbers))
        elif command == "Z":
            found.append(points)
        else:
            radius, _, _, large, sweep, x, y = numbers
            points.extend(arc(points[-1], (x, y), radius, large, sweep))
    assert len(found) == data.count("M")
    return found


def arc(start, end, r, large, sweep):
    """Centre form of an arc from its ends: SVG 2, appendix B.2.4, for equal radii."""
    (x1, y1), (x2, y2) = start, end
    chord = math.dist(start, end)
    height = math.sqrt(max(r * r - chord * chord / 4, 0)) / chord
    side = 1 if large != sweep else -1
    cx, cy = (x1 + x2) / 2 - side * height * (y2 - y1), (y1 + y2) / 2 + side * height * (x2 - x1)
    first, last = math.atan2(y1 - cy, x1 - cx), math.atan2(y2 - cy, x2 - cx)
    turn = (last - first) % (2 * math.pi) if sweep else -((first - last) % (2 * math.pi))
    return [(cx + r * math.cos(first + turn * i / 400), cy + r * math.sin(first + turn * i / 400)) for i in range(1, 401)]
