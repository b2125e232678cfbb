"""Cutting files, read by others: ezdxf for DXF, resvg and shapely for SVG, shapely for offsets.

`panelwright make` writes the nominal files of the examples; `crates/panelwright/examples/cutting.rs` writes seeded
designs by every rule.
"""

import io
import json
import math
import re
import xml.etree.ElementTree as tree

import ezdxf
import numpy
import pytest
import resvg_py
import shapely
from PIL import Image
from shapely import affinity, box
from shapely.geometry import LineString

import flat
from cut_files import EXACT, audited, contours, corners, form, polygon, same_as_path

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def specimens(written):
    """The folder of seeded cutting files."""
    return written("cutting")


@pytest.fixture(scope="module")
def told(specimens):
    """What the specimens say of themselves."""
    return json.loads((specimens / "cutting.json").read_text())


def test_nominal_files_hold_exactly_what_build_json_says(packs):
    for folder, build in packs:
        for panel in build["panels"]:
            document = audited(folder / "cut" / f"{panel['id']}.dxf")
            found = contours(document)
            wanted = [panel["outline"]] + [
                feature["path"]
                for feature in panel["features"]
                if not (feature.get("notch") and feature["through"])
            ]
            left = [(path, flat.polygon(path)) for path in wanted]
            for layer, contour in found:
                # The same cut named twice in build.json is cut once.
                rest = [(path, shape) for path, shape in left if not same_as_path(contour, path, shape)]
                assert len(rest) < len(left), f"{folder.name}/{panel['id']}: not in build.json: {layer} {contour}"
                left = rest
            assert not left, f"{folder.name}/{panel['id']}: not in the file: {left[:2]}"


def test_circles_have_their_diameter_and_sit_where_they_should(packs):
    for folder, build in packs:
        for panel in build["panels"]:
            document = ezdxf.readfile(folder / "cut" / f"{panel['id']}.dxf")
            circles = [numbers for _, (kind, numbers) in contours(document) if kind == "circle"]
            for feature in panel["features"]:
                if feature["diameter_mm"]:
                    x, y = feature["centre_mm"]
                    assert any(
                        math.dist((x, y), (cx, cy)) < EXACT and abs(2 * r - feature["diameter_mm"]) < EXACT
                        for cx, cy, r in circles
                    ), (folder.name, panel["id"], feature["id"])


def check_contours(document, name):
    """Closed, no stretch without length, none twice, nothing inside cut after the outline around it."""
    seen = set()
    outlines = []
    for layer, contour in contours(document):
        shape = polygon(contour)
        assert shape.is_valid and shape.area > 0, (name, layer)
        kind, numbers = contour
        if kind == "corners":
            for a, b in zip(numbers, [*numbers[1:], numbers[0]]):
                assert math.dist(a[:2], b[:2]) > 5e-5, (name, layer, a, b)
            mark = (layer, *sorted((round(x, 3), round(y, 3)) for x, y, _ in numbers))
        else:
            mark = (layer, *(round(number, 3) for number in numbers))
        assert mark not in seen, (name, mark)
        seen.add(mark)
        inside = shape.representative_point()
        assert not any(outline.contains(inside) for outline in outlines), f"{name}: cut after its outline"
        if layer == "outline":
            outlines.append(shape)
    assert outlines
    for entity in document.modelspace():
        if entity.dxftype() == "LINE":
            assert math.dist(entity.dxf.start, entity.dxf.end) > 5e-5
    return len(outlines)


def test_every_file_of_every_rule_is_clean(specimens, packs):
    # The first of two goes has no outline: `test_files_show_the_face_that_is_up` reads those.
    files = [file for file in sorted(specimens.glob("*.dxf")) if not file.name.startswith("go-")] + [file for folder, _ in packs for file in sorted(folder.glob("cut/*.dxf"))]
    assert len(files) > 150
    for file in files:
        count = check_contours(audited(file), file.name)
        assert count == (6 if "-sheet-" in file.name else 1)


def test_files_say_how_they_were_made_and_for_which_design(specimens, told):
    for file in told["files"]:
        text = (specimens / f"{file['file']}.dxf").read_text()
        head = text[: text.index("SECTION")]
        assert file["fingerprint"] in head and file["says"] in head
        title = tree.parse(specimens / f"{file['file']}.svg").getroot().findtext(f"{SVG}title")
        assert file["fingerprint"] in title and file["says"] in title
        words = {"nominal": "nominal", "laser": "compensated for a cut 0.2", "router-path": "compensated for a cutter"}
        assert file["says"].startswith(words.get(file["rule"], "nominal, for a cutter of 3.175"))
        # And to the eye: lines of the notes stand below the part.
        document = ezdxf.readfile(specimens / f"{file['file']}.dxf")
        notes = [entity for entity in document.modelspace() if entity.dxf.layer == "notes"]
        assert len(notes) > 40


def test_files_of_a_design_that_must_not_be_cut_say_so(panelwright, tmp_path):
    """In a remark and, one line more for each warning, in letters on the layer of notes; the audit stays clean."""
    fine = {"method": "laser", "size.rule": "smallest"}
    short = {**fine, "kit.count": 5, "stock.count": 1}
    blocked = {**short, "size.rule": "given", "size.height": 120, "cooler.height": 200}
    rows = {}
    for name, design in (("fine", fine), ("short", short), ("blocked", blocked)):
        source = tmp_path / f"{name}.json"
        source.write_text(json.dumps(design))
        panelwright("make", source, "--out", tmp_path / name)
        files = sorted(tmp_path.glob(f"{name}/cut/*.dxf")) + sorted(tmp_path.glob(f"{name}/sheets/*.dxf"))
        # The piece to measure the beam by is cut before anything else.
        files = [file for file in files if file.stem != "kerf-test"]
        assert len(files) >= 7
        for file in files:
            head = file.read_text().split("SECTION")[0]
            assert ("Do not cut yet: " in head) == (name == "blocked"), file
            assert ("Not enough sheet: " in head) == (name != "fine"), file
            # 8 mm from line to line of letters 4 mm high, the first one nearest to the part.
            notes = [entity for entity in audited(file).modelspace() if entity.dxf.layer == "notes"]
            points = [
                point
                for entity in notes
                for point in (
                    [entity.dxf.start, entity.dxf.end] if entity.dxftype() == "LINE" else entity.get_points("xy")
                )
            ]
            ys = [point[1] for point in points]
            rows.setdefault(file.name, {})[name] = (max(ys) - min(ys)) // 8
    panel = rows["left.dxf"]
    assert panel["short"] == panel["fine"] + 1 and panel["blocked"] == panel["fine"] + 2, panel


def buffered(path, by, sharp):
    """shapely's offset of a contour."""
    shape = flat.polygon(path)
    return shape.buffer(by, join_style="mitre" if sharp else "round", quad_segs=256, mitre_limit=4.0)


def test_laser_paths_are_half_a_kerf_off_as_shapely_says(specimens, told):
    checked = 0
    for file in told["files"]:
        if file["rule"] != "laser":
            continue
        given = {feature["id"]: feature["path"] for feature in file["features"]} | {"outline": file["outline"]}
        for cut in file["cuts"]:
            by = 0.1 if cut["of"] == "outline" else -0.1
            wanted, found = buffered(given[cut["of"]], by, True), flat.polygon(cut["path"])
            assert found.hausdorff_distance(wanted) < 0.012, (file["file"], cut["of"])
            assert abs(found.area - wanted.area) < 0.012 * found.length
            checked += 1
    assert checked > 150


def test_offsets_agree_with_shapely_and_with_steiner(told):
    split, vanished, agreed = 0, 0, 0
    for case in told["offsets"]:
        sharp = case["joins"] == "sharp"
        wanted = buffered(case["given"], case["by"], sharp)
        got = case["got"]
        if "lost" in got:
            parts = list(getattr(wanted, "geoms", [wanted]))
            if wanted.is_empty:
                assert got["lost"] == "Vanished"
                vanished += 1
            else:
                # In pieces, or with an island left inside.
                assert len(parts) > 1 or parts[0].interiors, case
                assert got["lost"].startswith("Split"), case
                split += 1
            continue
        found = flat.polygon(got["path"])
        assert found.is_valid
        if sharp and "A" in got["path"]:
            # A join that another edge cuts short stays round: between the round offset and the sharp one.
            low, high = sorted((buffered(case["given"], case["by"], False).area, wanted.area))
            assert low - 0.01 * wanted.length < got["area"] < high + 0.01 * wanted.length, case
            continue
        assert abs(got["area"] - wanted.area) < 0.002 * wanted.length + 0.01, case
        if not sharp:
            assert found.hausdorff_distance(wanted) < 0.012, case
        given = flat.polygon(case["given"])
        if case["by"] > 0 and not sharp and given.equals(given.convex_hull):
            steiner = given.area + given.length * case["by"] + math.pi * case["by"] ** 2
            assert got["area"] == pytest.approx(steiner, abs=0.01)
        agreed += 1
    assert agreed > 150 and split > 5 and vanished > 1, (agreed, split, vanished)


def test_router_paths_leave_the_part_and_take_no_more(specimens, told):
    """A cutter that follows the path cuts up to the edge and not into it, save in the relief of corners."""
    radius = 3.175 / 2
    checked = 0
    for file in told["files"]:
        if file["rule"] != "router-path":
            continue
        given = {feature["id"]: feature["path"] for feature in file["features"]} | {"outline": file["outline"]}
        for cut in file["cuts"]:
            if "drill" in cut["layer"]:
                continue
            path, part = flat.polygon(cut["path"]), flat.polygon(given[cut["of"]])
            swept = path.exterior.buffer(radius, quad_segs=64)
            # Relief for a right angle takes (pi/2 - 1) r^2 = 0.57 r^2, 1.05 as wide.
            allowed = (math.pi / 2 - 1) * (radius * 1.05) ** 2
            into = swept.intersection(part) if cut["of"] == "outline" else swept.difference(part)
            if cut["of"].startswith("tongue-hollow"):
                # It is open at its top, where the card window begins: there the cutter runs out.
                into = into.intersection(box(-1e4, -1e4, 1e4, part.bounds[3]))
            corner = len(corners(given[cut["of"]]))
            assert into.area < corner * allowed + 0.01 * part.length, (file["file"], cut["of"])
            assert swept.distance(part.exterior) < 0.01
            checked += 1
    assert checked > 100


def flipped(shape, width):
    """A shape as seen from the other face of a panel so wide."""
    return affinity.scale(shape, xfact=-1, origin=(width / 2, 0))


def in_outside_view(go, shape):
    """A shape of a file in the panel's own frame."""
    return flipped(shape, go["width"]) if go["seen_from"] == "inside" else shape


def is_same(one, other):
    """Whether two shapes are the same to 0.01 mm; their bounds tell most that are not."""
    near = all(abs(a - b) < 0.02 for a, b in zip(one.bounds, other.bounds))
    return near and one.hausdorff_distance(other) < 0.01


def test_files_show_the_face_that_is_up(specimens, told):
    """Each cut once in all goes of a panel, on the face it lies in, where the panel has it when that face is up."""
    panels = {}
    for go in told["goes"]:
        panels.setdefault(go["file"].rsplit("-", 1)[0], []).append(go)
    mirrored, twice = 0, 0
    for name, goes in panels.items():
        left = [feature for feature in goes[0]["features"] if not (feature["notch"] and feature["through"])]
        # What a file leaves out it names; rebates of joints and hollows of tongues run out past the edge.
        left = [feature for feature in left if not feature["runs_out"] and feature["id"] not in goes[-1]["lost"]]
        left = [(feature, flat.polygon(feature["path"])) for feature in left]
        assert len(goes) == goes[0]["of"]
        for go in goes:
            # Every form of file is audited, not every file: an audit takes longer than all the rest.
            read = audited if go["of"] == 2 or mirrored % 6 == 0 else ezdxf.readfile
            document = read(specimens / f"{go['file']}.dxf")
            head = (specimens / f"{go['file']}.dxf").read_text().split("SECTION")[0]
            assert f"seen from {go['seen_from']}" in head and ("mirror image" in head) == (go["seen_from"] == "inside")
            layers = {layer for layer, _ in contours(document)}
            assert ("outline" in layers) == (go is goes[-1])
            # Nothing cut to a depth lies in the face that is down.
            blind = {layer for layer in layers if layer.endswith("mm") or layer.endswith("-inside")}
            assert all(layer.endswith("-inside") == (go["seen_from"] == "inside") for layer in blind), (name, blind)
            mirrored += go["seen_from"] == "inside"
            for layer, contour in contours(document):
                shape = in_outside_view(go, polygon(contour))
                if layer == "outline":
                    assert shape.symmetric_difference(flat.polygon(go["outline"])).area < 0.01 * shape.length
                    continue
                found = [
                    pair
                    for pair in left
                    if pair[0]["through"] == (layer not in blind) and is_same(pair[1], shape)
                ]
                if not found and layer.startswith("rebate") and any(feature["runs_out"] for feature in go["features"]):
                    # A joint's rebate runs out past the edge it reaches, a tongue's hollow into the card window.
                    continue
                assert found, (name, layer, shape.bounds)
                left = [pair for pair in left if pair is not found[0]]
        # The same cut named twice is cut once.
        done = [flat.polygon(feature["path"]) for feature in goes[0]["features"]]
        for feature, shape in left:
            assert sum(is_same(shape, other) for other in done) > 1, (name, feature["id"])
        twice += len(goes) == 2
    assert mirrored > 100 and twice >= 2, (mirrored, twice)


def test_lettering_keeps_off_every_cut(specimens, told):
    """Strokes on whole sheet: inside the outline and 1.5 mm from it and from whatever is cut; readable from inside."""
    lettered, strokes = 0, 0
    for go in told["goes"]:
        document = ezdxf.readfile(specimens / f"{go['file']}.dxf")
        lines = [entity for entity in document.modelspace() if entity.dxf.layer == "lettering"]
        if go["method"] == "router":
            assert not lines
            continue
        assert go["seen_from"] == "inside"
        lettered += bool(lines)
        sheet = flat.polygon(go["outline"]).buffer(-1.49, join_style="mitre")
        cuts = shapely.union_all([flat.polygon(feature["path"]) for feature in go["features"]]).buffer(1.49)
        for line in lines:
            if line.dxftype() == "LINE":
                points = [line.dxf.start, line.dxf.end]
            else:
                points = list(line.get_points("xy"))
            stroke = in_outside_view(go, LineString([tuple(point)[:2] for point in points]))
            assert sheet.contains(stroke), (go["file"], stroke.bounds)
            assert not cuts.intersects(stroke), (go["file"], stroke.bounds)
            strokes += 1
    assert lettered > 80 and strokes > 2000, (lettered, strokes)


def test_holding_tabs_are_marked_with_place_length_and_height(specimens, told):
    """Marks start and end on the outline, as far apart as a tab is wide, and the remarks give the same in figures."""
    checked = 0
    for go in told["goes"]:
        if go["method"] != "router" or go["go"] != go["of"]:
            continue
        path = specimens / f"{go['file']}.dxf"
        marks = [entity for entity in ezdxf.readfile(path).modelspace() if entity.dxf.layer.startswith("tabs-")]
        remarks = path.read_text().split("SECTION")[0]
        figures = re.findall(r"tabs-([\d.]+)mm: x (-?[\d.]+) y (-?[\d.]+), ([\d.]+) long", remarks)
        assert len(marks) == len(figures) <= go["tabs"], go["file"]
        outline = flat.polygon(go["outline"])
        cuts = shapely.union_all([flat.polygon(feature["path"]) for feature in go["features"]])
        for mark, (height, x, y, length) in zip(marks, figures):
            start, *_, end = mark.get_points("xy")
            tab = in_outside_view(go, LineString([start, end]))
            assert outline.exterior.distance(shapely.Point(tab.coords[0])) < EXACT
            assert outline.exterior.distance(shapely.Point(tab.coords[-1])) < EXACT
            assert tab.length == pytest.approx(go["tab_width"], abs=EXACT) == pytest.approx(float(length), abs=0.01)
            assert math.dist((float(x), float(y)), ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)) < 0.01
            assert float(height) == pytest.approx(go["tab_height"], abs=0.005)
            if not go["beside_cut"]:
                assert cuts.is_empty or cuts.distance(tab) > go["thickness"] - 0.01, go["file"]
            checked += 1
    assert checked > 150, checked


def test_the_kerf_test_piece_has_its_cuts(specimens):
    document = audited(specimens / "kerf-test.dxf")
    lines = [entity for entity in document.modelspace() if entity.dxf.layer == "parting"]
    across = sorted(entity.dxf.start.x for entity in lines)
    assert across == pytest.approx([10 * i for i in range(1, 10)])
    numbers = [entity for entity in document.modelspace() if entity.dxf.layer == "lettering"]
    assert len(numbers) >= 11 and all(entity.dxftype() in ("LINE", "LWPOLYLINE") for entity in numbers)


def test_svg_and_dxf_draw_the_same_lines(specimens, told):
    """Millimetres, layers as groups, and resvg's ink on every contour that ezdxf reads."""
    files = [file["file"] for file in told["files"] if file["rule"] in ("nominal", "router-edge")][::5]
    for name in files:
        text = (specimens / f"{name}.svg").read_text()
        page = tree.fromstring(text)
        width, height = (float(page.get(side).removesuffix("mm")) for side in ("width", "height"))
        assert page.get("viewBox") == f"0 0 {page.get('width')[:-2]} {page.get('height')[:-2]}"
        document = ezdxf.readfile(specimens / f"{name}.dxf")
        groups = [group.get("id") for group in page.findall(f"{SVG}g")]
        used = dict.fromkeys(entity.dxf.layer for entity in document.modelspace() if entity.dxf.layer != "notes")
        assert groups == list(used)
        scale = 8
        size = {"width": round(width * scale), "height": round(height * scale)}
        png = resvg_py.svg_to_bytes(svg_string=text, **size, dpi=96, background="white", skip_system_fonts=True)
        ink = numpy.asarray(Image.open(io.BytesIO(bytes(png))).convert("L")) < 240
        outline = next(polygon(contour) for layer, contour in contours(document) if layer == "outline")
        # 5 mm of page all around.
        left, top = outline.bounds[0] - 5, outline.bounds[3] + 5
        for layer, contour in contours(document):
            edge = polygon(contour).exterior
            for step in range(24):
                point = edge.interpolate(step / 24, normalized=True)
                column, row = round((point.x - left) * scale), round((top - point.y) * scale)
                window = ink[max(row - 3, 0) : row + 4, max(column - 3, 0) : column + 4]
                assert window.any(), (name, layer, point)


def test_hairlines_are_thin(specimens, told):
    for file in told["files"]:
        text = (specimens / f"{file['file']}.svg").read_text()
        widths = set(re.findall(r'stroke-width="([^"]*)"', text))
        assert widths == ({"0.01"} if file["rule"] == "laser" else {"0.25"})
