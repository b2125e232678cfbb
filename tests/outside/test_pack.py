"""Packs that other programs packed again: Python's zipfile writes them, `panelwright open` says what is in them."""

import json
import os
import subprocess
import zipfile

import pytest


@pytest.fixture(scope="module")
def made(panelwright, tmp_path_factory):
    """Two packs as zips, of a design and of another."""
    folder = tmp_path_factory.mktemp("packs")
    for name, choices in {"quay": {"design.title": "Quay"}, "other": {"cooler.height": 100}}.items():
        (folder / f"{name}.json").write_text(json.dumps(choices))
        panelwright("make", folder / f"{name}.json", "--zip", folder / f"{name}.zip")
    return folder


def members(path):
    """Names and bytes as zipfile reads them; it checks every CRC."""
    with zipfile.ZipFile(path) as pack:
        assert pack.testzip() is None
        return {name: pack.read(name) for name in pack.namelist()}


def opened(panelwright, path, code=0):
    return json.loads(panelwright("open", path, "--json", code=code))


@pytest.mark.parametrize("packing", [zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED], ids=["stored", "deflated"])
def test_a_pack_packed_again_in_a_folder_is_the_same_pack(panelwright, made, tmp_path, packing):
    again = tmp_path / "again.zip"
    files = members(made / "quay.zip")
    with zipfile.ZipFile(again, "w", packing) as pack:
        pack.mkdir("quay")
        pack.comment = b"from the shed"
        for name, content in files.items():
            pack.writestr(f"quay/{name}", content)
        pack.writestr("__notes/read me.txt", "nothing of ours")
    first, second = (opened(panelwright, path) for path in (made / "quay.zip", again))
    assert first["title"] == second["title"] == "Quay"
    assert first["fingerprint"] == second["fingerprint"] == json.loads(files["build.json"])["fingerprint"]
    assert {file["name"] for file in first["files"]} == set(files)
    assert all(file["verdict"] in ("belongs", "design") for file in first["files"])
    stray = [file for file in second["files"] if file["verdict"] == "unmarked"]
    assert [file["name"] for file in stray] == ["__notes/read me.txt"]
    assert json.loads(second["design_file"]) == {"format": 1, "design.title": "Quay"}


def test_a_page_of_another_design_is_found(panelwright, made, tmp_path):
    files, others = members(made / "quay.zip"), members(made / "other.zip")
    mixed = tmp_path / "mixed.zip"
    with zipfile.ZipFile(mixed, "w", zipfile.ZIP_DEFLATED) as pack:
        for name, content in files.items():
            pack.writestr(name, others[name] if name in ("templates.pdf", "cut/top.dxf") else content)
    told = opened(panelwright, mixed, code=1)
    strange = {file["name"]: file["fingerprints"] for file in told["files"] if file["verdict"] == "other"}
    other = json.loads(others["build.json"])["fingerprint"]
    assert strange == {"templates.pdf": [other], "cut/top.dxf": [other]}


def test_damage_anywhere_is_an_error_or_nothing_that_counts(made, tmp_path):
    """The header before each entry repeats what the list at the end says: only there a change may pass unseen."""
    whole = (made / "quay.zip").read_bytes()
    refused = 0
    for place in range(50, len(whole) - 1, len(whole) // 25):
        wrong = bytearray(whole)
        wrong[place] ^= 0x55
        path = tmp_path / "wrong.zip"
        path.write_bytes(wrong)
        done = subprocess.run([os.environ["PANELWRIGHT_BIN"], "open", path], capture_output=True, text=True, check=False)
        assert done.returncode in (0, 2), done.stderr
        if done.returncode == 2:
            refused += 1
            assert done.stderr.startswith("panelwright: ") and done.stdout == ""
        else:
            assert json.loads(done.stdout) == {"format": 1, "design.title": "Quay"}
            assert "none another" in done.stderr
    assert refused >= 20
