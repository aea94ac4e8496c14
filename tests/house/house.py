#!/usr/bin/env python3
"""Measures the house: which way includes point, what each header needs, how large the rooms are.

usage: house.py arrows|headers|layout|sizes SOURCE_DIR [compiler and its flags ...]
Exit code 1 where a rule of DEVELOPERS.md is broken; each break is one line.
"""
import concurrent.futures
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

# A file may include its own room and the rooms named for it. Questions never include each other.
LEFT = {
    "geom/units": [],
    "geom/shape": ["geom/units"],
    "geom/site": ["geom/shape", "geom/units"],
    "geom/io": ["geom/site", "geom/shape", "geom/units", "assets"],
    "geom/ground": ["geom/site", "geom/shape", "geom/units"],
}
GROUND = ["geom/ground", "geom/site", "geom/shape", "geom/units"]
QUESTIONS = ["geom/reach", "geom/turn", "geom/drain", "geom/clear", "geom/pace"]
for question in QUESTIONS:
    LEFT[question] = GROUND
LEFT["geom/check"] = QUESTIONS + GROUND
LEFT["geom/grow"] = ["geom/check", "geom/io"] + LEFT["geom/check"]
LEFT["geom/sheet"] = ["geom/grow"] + LEFT["geom/grow"]
GEOM = ["geom/sheet"] + LEFT["geom/sheet"]
LEFT["editor/cli"] = GEOM
LEFT["editor/session"] = GEOM
LEFT["editor/canvas"] = ["editor/session"] + GEOM
LEFT["editor/panels"] = ["editor/canvas", "editor/session"] + GEOM
LEFT["editor/window"] = ["editor/panels", "editor/canvas", "editor/session"] + GEOM

WINDOW_LIBRARIES = re.compile(r"<(SFML|imgui|GL)[/_.]|imgui\.h|imgui_impl")
WINDOWLESS = ("geom/", "editor/cli/", "editor/session/")
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"][^>"]+[>"])', re.M)
LIBRARY_IN_HEADER = re.compile(r"<(boost|nlohmann|gdal|cairo|ogr|cpl)")
# Headers that wrap a library for the .cpp files of their own room alone.
LIBRARY_DOORS = {"geom/io/asset_json.hpp", "geom/io/gdal_handles.hpp"}
NAMES_REFUSED = {"utils", "util", "helpers", "helper", "common", "manager", "misc"}
LARGEST_FILE = 400
LARGEST_TESTED = ("geom", "editor")


def sources(root):
    for top in LARGEST_TESTED:
        yield from sorted(p for p in (root / top).rglob("*") if p.suffix in (".hpp", ".cpp"))


def room_of(path):
    return "/".join(path.split("/")[:2])


def arrows(root):
    breaks = []
    for path in sources(root):
        name = path.relative_to(root).as_posix()
        room = room_of(name)
        text = path.read_text()
        if path.stem in NAMES_REFUSED:
            breaks.append(f"{name}: a file is named after what it is about, not '{path.stem}'")
        for included in INCLUDE.findall(text):
            target = included[1:-1]
            if name.startswith(WINDOWLESS) and WINDOW_LIBRARIES.search(included):
                breaks.append(f"{name} includes {target}: no window library here")
            if name.startswith("geom/") and name.endswith(".hpp") and name not in LIBRARY_DOORS and LIBRARY_IN_HEADER.search(included):
                breaks.append(f"{name} includes {target}: libraries stay in .cpp files")
            if included[0] != '"' or not target.startswith(("geom/", "editor/", "assets/")):
                continue
            to = "assets" if target.startswith("assets/") else room_of(target)
            if room not in LEFT:
                breaks.append(f"{name}: {room} is no room of the house")
            elif to != room and to not in LEFT[room]:
                breaks.append(f"{name} includes {target}: {room} may not reach {to}")
    return breaks + rings(root)


def rings(root):
    """Files that include each other, directly or around a ring."""
    includes = {}
    for path in sources(root):
        name = path.relative_to(root).as_posix()
        includes[name] = [t[1:-1] for t in INCLUDE.findall(path.read_text()) if t[0] == '"']
    done, breaks = set(), []

    def walk(name, way):
        if name in way:
            breaks.append("include ring: " + " -> ".join(way[way.index(name):] + [name]))
        elif name not in done:
            for target in includes.get(name, []):
                walk(target, way + [name])
            done.add(name)

    for name in includes:
        walk(name, [])
    return breaks


def headers(root, compiler):
    everything = [p for p in sources(root) if p.suffix == ".hpp"]

    def alone(path, folder):
        name = path.relative_to(root).as_posix()
        command = compiler + ["-c", "-x", "c++", name, "-o", f"{folder}/{name.replace('/', '_')}.o"]
        done = subprocess.run(command, capture_output=True, text=True, cwd=root)
        return None if done.returncode == 0 else f"{path.relative_to(root)} does not compile alone:\n{done.stderr[:600]}"

    # Through ccache where it is installed: a header that did not change is not compiled again.
    compiler = ([shutil.which("ccache")] if shutil.which("ccache") else []) + compiler
    with tempfile.TemporaryDirectory() as folder, concurrent.futures.ThreadPoolExecutor(2) as pool:
        results = list(pool.map(lambda path: alone(path, folder), everything))
    print(f"{len(everything)} headers compiled alone")
    return [r for r in results if r]


def layout(root):
    """Files that clang-format would write otherwise."""
    files = [p for top in ("geom", "editor", "tests") for p in sorted((root / top).rglob("*")) if p.suffix in (".hpp", ".cpp")]
    command = ["clang-format", "--dry-run", "--style=file"] + [p.relative_to(root).as_posix() for p in files]
    done = subprocess.run(command, capture_output=True, text=True, cwd=root)
    return sorted({line.split(": warning")[0] for line in done.stderr.splitlines() if ": warning" in line})


def sizes(root):
    breaks, rooms = [], {}
    for path in sources(root):
        name = path.relative_to(root).as_posix()
        lines = len(path.read_text().splitlines())
        rooms.setdefault(room_of(name), []).append((lines, name))
        if lines > LARGEST_FILE:
            breaks.append(f"{name} has {lines} lines, at most {LARGEST_FILE}: two rooms in one?")
    print(f"{'room':<18}{'files':>6}{'lines':>8}{'median':>8}{'longest':>9}")
    for room, files in rooms.items():
        counts = sorted(lines for lines, _ in files)
        print(f"{room:<18}{len(files):>6}{sum(counts):>8}{counts[len(counts) // 2]:>8}{counts[-1]:>9}")
    return breaks


def main():
    what, root = sys.argv[1], pathlib.Path(sys.argv[2])
    breaks = {"arrows": lambda: arrows(root), "layout": lambda: layout(root), "sizes": lambda: sizes(root),
              "headers": lambda: headers(root, sys.argv[3:])}[what]()
    print("\n".join(breaks) or f"{what}: in order")
    return 1 if breaks else 0


if __name__ == "__main__":
    sys.exit(main())
