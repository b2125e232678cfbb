"""`build.json` and `findings.json` are what their JSON Schemas say, for every example.

Validated by `jsonschema`, which is not ours. Source: JSON Schema, draft 2020-12.
"""

import copy
import json
import re

import jsonschema
import pytest

SCHEMAS = ("build", "findings")


def schema(root, name):
    return json.loads((root / "schema" / f"{name}.schema.json").read_text("utf-8"))


def checker(root, name):
    found = schema(root, name)
    jsonschema.Draft202012Validator.check_schema(found)
    return jsonschema.Draft202012Validator(found)


def designs(root):
    found = sorted((root / "examples").glob("*.json"))
    assert len(found) >= 5, "the examples are gone"
    return found


@pytest.fixture(scope="session")
def folders(root, packs):
    """The pack of every example: name to folder."""
    return {design.stem: folder for design, (folder, _) in zip(designs(root), packs)}


def read(folder, name):
    return json.loads((folder / f"{name}.json").read_text("utf-8"))


def objects(node):
    """Every object schema within a schema."""
    if isinstance(node, dict):
        if node.get("type") == "object":
            yield node
        for inner in node.values():
            yield from objects(inner)
    elif isinstance(node, list):
        for inner in node:
            yield from objects(inner)


@pytest.mark.parametrize("name", SCHEMAS)
def test_every_example_is_as_the_schema_says(root, folders, name):
    check = checker(root, name)
    for example, folder in folders.items():
        errors = [f"{error.json_path}: {error.message}" for error in check.iter_errors(read(folder, name))]
        assert not errors, f"{example}: " + "\n".join(errors[:10])


@pytest.mark.parametrize("name", SCHEMAS)
def test_every_field_is_described_and_nothing_else_is_let_in(root, name):
    count = 0
    for found in objects(schema(root, name)):
        assert found["additionalProperties"] is False
        for field, described in (found.get("properties", {}) | found.get("patternProperties", {})).items():
            count += 1
            assert "description" in described or "$ref" in described, field
    assert count > 10


def test_the_schema_refuses_what_is_wrong(root, folders):
    """A schema that lets everything through would pass the tests above."""
    check = checker(root, "build")
    good = read(folders[min(folders)], "build")

    def refused(change):
        wrong = copy.deepcopy(good)
        change(wrong)
        return list(check.iter_errors(wrong)) != []

    assert refused(lambda build: build.pop("fingerprint"))
    assert refused(lambda build: build["case"]["outside_mm"].pop())
    assert refused(lambda build: build["parts"][0].update(kind="sandwich"))
    assert refused(lambda build: build["parts"][0]["bodies_mm"][0].pop())
    assert refused(lambda build: build["panels"].pop())
    assert refused(lambda build: build["panels"][0]["features"][0].update(depth_mm=None))
    assert refused(lambda build: build["panels"][0]["features"][0].update(source="somewhere"))
    assert refused(lambda build: build["panels"][0].update(colour="red"))
    assert refused(lambda build: build["panels"][0].update(outline="M0 0L1 1"))


def test_every_word_of_the_schema_is_used_by_some_example(root, folders):
    """Kinds that no example has are kinds nobody has seen checked."""
    builds = [read(folder, "build") for folder in folders.values()]
    kinds = {part["kind"] for build in builds for part in build["parts"]}
    known = set(schema(root, "build")["$defs"]["part"]["properties"]["kind"]["enum"])
    assert kinds <= known
    assert {"board", "memory", "cooler", "card", "supply", "drive", "fan", "bracket", "captive-nut", "foot"} <= kinds
    severities = {finding["severity"] for build in builds for finding in build["findings"]}
    assert severities == {"blocks", "caution", "note"}


def test_ids_are_unique_and_whatever_is_named_is_there(folders):
    for example, folder in folders.items():
        build = read(folder, "build")
        parts = [part["id"] for part in build["parts"]]
        panels = [panel["id"] for panel in build["panels"]]
        features = [f"{panel['id']}/{feature['id']}" for panel in build["panels"] for feature in panel["features"]]
        screws = [screw["id"] for screw in build["screws"]]
        for ids in (parts + panels, features, screws):
            assert len(ids) == len(set(ids)), example
        named = {name for joint in build["fasteners"] + build["screws"] for name in joint["joins"]}
        named |= {name for panel in build["panels"] for feature in panel["features"] for name in feature["about"]}
        named |= {name for finding in build["findings"] for name in finding["about"]}
        missing = named - set(parts) - set(panels) - set(features) - set(screws)
        assert not missing, f"{example}: {missing}"


def test_both_files_of_a_pack_say_the_same(folders):
    for folder in folders.values():
        build, findings = read(folder, "build"), read(folder, "findings")
        assert findings["findings"] == build["findings"]
        assert findings["fingerprint"] == build["fingerprint"]
        for severity, count in findings["counts"].items():
            assert count == sum(finding["severity"] == severity for finding in build["findings"])


def test_numbers_have_at_most_four_decimals_and_no_minus_zero(folders):
    """In the text itself: a parser would already have hidden the spelling."""
    for folder in folders.values():
        for name in SCHEMAS:
            text = re.sub(r'"(?:[^"\\]|\\.)*"', '""', (folder / f"{name}.json").read_text("utf-8"))
            numbers = re.findall(r"-?\d[\d.eE+-]*", text)
            assert len(numbers) > 0
            wrong = [number for number in numbers if not re.fullmatch(r"-?\d+(\.\d{0,3}[1-9])?", number)]
            assert not wrong and "-0" not in numbers, wrong[:5]
