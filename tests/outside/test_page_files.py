"""The folder a static host gets: complete, relative, and listed for use without a network."""

import json
import re


def test_every_file_is_listed_and_every_listed_file_is_there(dist):
    build = json.loads((dist / "files.json").read_text())
    there = {path.relative_to(dist).as_posix() for path in dist.rglob("*") if path.is_file()}
    assert set(build["files"]) == there - {"files.json", "sw.js"}
    assert re.fullmatch(r"[0-9a-f]{16}", build["version"])


def test_no_page_file_refers_to_the_top_of_its_host_or_to_another(dist):
    """A static host may put the page into any folder, and the page must ask nobody else."""
    pages = [path for path in dist.rglob("*") if path.suffix in {".html", ".css"}]
    assert pages
    for path in pages:
        for target in re.findall(r"""(?:href|src)=["']([^"']*)["']|url\(["']?([^"')]*)""", path.read_text()):
            target = "".join(target)
            assert not target.startswith("/") and "://" not in target, f"{path.name}: {target}"


def test_the_module_is_wasm_of_the_first_version(dist):
    """WebAssembly Core Specification 1.0, 5.5.15: the magic bytes, then version 1."""
    module = (dist / "wasm/panelwright_bg.wasm").read_bytes()
    assert module[:8] == b"\0asm\x01\0\0\0"
