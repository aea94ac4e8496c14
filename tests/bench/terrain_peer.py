#!/usr/bin/env python3
"""Times of fill, directions and areas above beside GRASS GIS (Debian's grass-core), on the same ground in the same run.

usage: terrain_peer.py FLOW_OF_TERRAIN

The ground is the elevation sample of Debian's python-matplotlib-data, laid 5 by 5 and mirrored at the seams: 3.5 million
cells of whole metres. Each program reads the levels and writes its maps: what is timed is the whole of it, the least of
three runs taken in turn. GRASS has its levels in a map of its own already. r.terraflow fills, and routes as asked here (D8);
r.watershed finds its ways without filling. Times are for reading, never for a test's verdict.
"""

import os
import shutil
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True  # the tree stays as it is
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "independent"))
from cells import COLUMNS, ROWS, load, sample_ground, save

TIMES = 5
WIDE, HIGH = COLUMNS * TIMES, ROWS * TIMES
PROGRAMS = {
    "this program": "{ours} south_first {columns} {rows} 1",
    "r.terraflow": "r.terraflow -s --q --o elevation=levels filled=filled direction=direction accumulation=above directory=. "
                   "memory=2000 stats=stats",
    "r.watershed": "r.watershed -s --q --o elevation=levels drainage=drainage accumulation=accumulation",
    "start of a GRASS module": "g.region -p",
}
SETUP = """
set -e
g.region n={rows} s=0 w=0 e={columns} rows={rows} cols={columns}
r.in.bin -f --q input=levels output=levels bytes=4 north={rows} south=0 west=0 east={columns} rows={rows} cols={columns}
"""


def mirrored(cells, wide, times):
    """Rows of `wide` cells, laid beside each other `times` times, every second one the other way round."""
    rows = [cells[at:at + wide] for at in range(0, len(cells), wide)]
    long_rows = []
    for row in rows:
        long_rows.append([cell for i in range(times) for cell in (row if i % 2 == 0 else row[::-1])])
    return [cell for i in range(times) for row in (long_rows if i % 2 == 0 else long_rows[::-1]) for cell in row]


def script(ours):
    lines = [SETUP.format(rows=HIGH, columns=WIDE)]
    for _ in range(3):
        for name, command in PROGRAMS.items():
            command = command.format(ours=ours, rows=HIGH, columns=WIDE)
            lines.append('from=$(date +%s%N); {} > said; echo "{}:$(( $(date +%s%N) - from ))" >> times'.format(command, name))
    lines.append("r.out.bin -f --q input=filled output=filled bytes=4 null=-1")
    return "\n".join(lines)


def south_first(cells):
    return [cell for row in reversed(range(HIGH)) for cell in cells[row * WIDE:(row + 1) * WIDE]]


def main(ours):
    levels = sample_ground()
    if shutil.which("grass") is None or levels is None:
        sys.exit("terrain_peer.py: GRASS GIS or its ground is missing; apt-get install grass-core python-matplotlib-data")
    levels = mirrored(list(levels), COLUMNS, TIMES)
    with tempfile.TemporaryDirectory() as folder:
        path = lambda name: os.path.join(folder, name)
        save(path("levels"), "f", levels)
        save(path("south_first"), "f", south_first(levels))
        with open(path("script"), "w") as file:
            file.write(script(ours))
        run = subprocess.run(["grass", "--tmp-location", "XY", "--exec", "sh", "script"], cwd=folder, text=True,
                             stdout=subprocess.PIPE, stderr=subprocess.STDOUT, env=dict(os.environ, HOME=folder))
        if run.returncode != 0:
            sys.exit("terrain_peer.py: GRASS stopped:\n" + run.stdout)
        taken = {name: [] for name in PROGRAMS}
        with open(path("times")) as file:
            for line in file:
                name, nanoseconds = line.rsplit(":", 1)
                taken[name].append(int(nanoseconds) / 1e9)
        filled = south_first(list(load(path("filled"), "f")))
        different = sum(a != b for a, b in zip(filled, load(path("south_first.filled"), "f")))
    print("%d by %d cells; filled levels differ in %d" % (WIDE, HIGH, different))
    for name, seconds in taken.items():
        print("  %-24s %6.2f s  %5.1f times this program's" % (name, min(seconds), min(seconds) / min(taken["this program"])))


if __name__ == "__main__":
    main(os.path.abspath(sys.argv[1]))
