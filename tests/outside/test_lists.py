"""Lists and packs, read by others: Python's csv and json, poppler and qpdf for the pages, shapely for areas."""

import csv
import shutil
import subprocess
import zipfile
from collections import Counter

import pytest

import flat

# Grams and square millimetres are written to so many decimals of kilograms and square metres.
HALF_GRAM = 0.00051
HALF_AREA = 0.000051
# Density that the lists state for fibreboard, kg/m³.
DENSITY = 750


def rows(folder, name):
    """The rows of a list by the titles of its columns."""
    path = folder / "lists" / f"{name}.csv"
    raw = path.read_bytes()
    assert raw.startswith(b"\xef\xbb\xbf"), "spreadsheets need the mark"
    assert raw.count(b"\n") == raw.count(b"\r\n")
    with path.open(encoding="utf-8-sig", newline="") as file:
        lines = list(csv.reader(file, strict=True))
    assert len({len(line) for line in lines}) == 1, "every row has every field"
    return [dict(zip(lines[0], line)) for line in lines[1:]]


def test_every_list_opens_and_tells_its_design(packs):
    for folder, build in packs:
        for path in (folder / "lists").glob("*.csv"):
            for row in rows(folder, path.stem):
                assert row["design"] == build["fingerprint"]


def test_bags_shopping_list_and_build_count_the_same(packs):
    for folder, build in packs:
        wanted = Counter()
        for line in build["fasteners"]:
            wanted[line["what"], line["length_mm"]] += line["count"]
        bagged = Counter()
        for row in rows(folder, "bags"):
            if row["label"] != "Panels":
                length = float(row["length, mm"]) if row["length, mm"] else None
                bagged[row["what"], length] += int(row["in each bag"])
        assert bagged == wanted
        groups = {"Brackets", "Screws", "Nuts", "Washers", "Standoffs", "Feet", "Other"}
        bought = sum(float(row["for one case"]) for row in rows(folder, "shopping") if row["group"] in groups)
        assert bought == sum(wanted.values())
        nuts = sum(1 for screw in build["screws"] if screw["nut"])
        listed = sum(float(row["for one case"]) for row in rows(folder, "shopping") if row["group"] == "Nuts")
        assert listed >= nuts
        for row in rows(folder, "shopping"):
            if row["unit"] == "pieces":
                packed = float(row["packs"]) * float(row["in a pack"])
                assert packed >= float(row["for all"]) + float(row["spare"])


def test_masses_and_faces_agree_with_shapely(packs):
    for folder, build in packs:
        listed = {row["panel"]: row for row in rows(folder, "panels")}
        for panel in build["panels"]:
            whole = flat.polygon(panel["outline"])
            through = whole
            blind = 0
            for feature in panel["features"]:
                shape = flat.polygon(feature["path"])
                if feature["through"] and not feature["notch"]:
                    through = through.difference(shape)
            for feature in panel["features"]:
                if not feature["through"]:
                    blind += flat.polygon(feature["path"]).intersection(through).area * feature["depth_mm"]
            volume = through.area * panel["thickness_mm"] - blind
            row = listed[panel["label"]]
            assert float(row["face, m²"]) == pytest.approx(whole.area / 1e6, abs=HALF_AREA)
            # Flattened arcs: a few square millimetres; what is recessed beyond the outline counts for nothing.
            assert float(row["mass of each, kg"]) == pytest.approx(volume * DENSITY / 1e9, abs=2 * HALF_GRAM)
            assert float(row["edges without vents, m"]) >= whole.length / 1000 - 0.001
        total = sum(float(listed[panel["label"]]["mass of each, kg"]) for panel in build["panels"])
        assert float(listed["One case"]["mass of each, kg"]) == pytest.approx(total, abs=6 * HALF_GRAM)


def test_holes_of_the_drilling_list_are_those_with_a_letter(packs):
    for folder, build in packs:
        wanted = Counter()
        for panel in build["panels"]:
            for feature in panel["features"]:
                if feature["key"]:
                    wanted[panel["label"], round(feature["diameter_mm"], 2)] += 1
        listed = Counter()
        for row in rows(folder, "drilling"):
            listed[row["panel"], float(row["diameter, mm"])] += int(row["holes in each"])
        assert listed == wanted


def test_the_printed_lists_are_sound_and_stamped_on_every_page(packs):
    for folder, build in packs:
        path = folder / "lists.pdf"
        subprocess.run(["qpdf", "--check", path], check=True, capture_output=True)
        text = subprocess.run(["pdftotext", "-layout", path, "-"], check=True, capture_output=True, text=True).stdout
        pages = text.split("\f")[:-1]
        assert len(pages) >= 2
        for number, page in enumerate(pages, 1):
            assert f"design {build['fingerprint']}" in page
            assert f"page {number} of {len(pages)}" in page
        for title in ["Shopping list", "Kit bags", "Panels to cut", "Drilling"]:
            assert title in text
        for panel in build["panels"]:
            assert panel["label"] in text


def test_a_zip_holds_the_same_files_and_the_same_bytes_twice(root, panelwright, packs, tmp_path):
    for design, (folder, build) in zip(sorted((root / "examples").glob("*.json")), packs):
        first, second = tmp_path / f"{design.stem}-1.zip", tmp_path / f"{design.stem}-2.zip"
        for path in (first, second):
            panelwright("make", design, "--zip", path)
        assert first.read_bytes() == second.read_bytes()
        with zipfile.ZipFile(first) as pack:
            assert pack.testzip() is None
            names = pack.namelist()
            assert sorted(names) == sorted(str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file())
            for name in names:
                assert pack.read(name) == (folder / name).read_bytes()
            assert build["fingerprint"] in pack.read("README.txt").decode()
        if shutil.which("unzip"):
            subprocess.run(["unzip", "-tq", first], check=True, capture_output=True)
