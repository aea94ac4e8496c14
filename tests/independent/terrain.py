#!/usr/bin/env python3
"""Holds the flow over real ground against GRASS GIS 8.2 (Debian's grass-core), cell by cell.

usage: terrain.py FLOW_OF_TERRAIN

The ground is the elevation sample of Debian's python-matplotlib-data: a fault near Jacksboro, 344 by 403 whole metres.

raw ground    fill (r.terraflow), ponds with depth and volume (r.clump -d, r.univar), D8 directions (r.terraflow -s). Whole
              metres tie often; a cell may differ only where two ways fall equally, where nothing falls (a flat) or on the
              outer edge, and what drains through a cell only below such cells.
without ties  the same ground with seeded noise on it, flats tilted and an outer ring that lies lower than all: nothing is
              left to choice but in one pond that is kept. Directions and areas above must be equal outside pond and ring.
"""

import collections
import os
import shutil
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True  # the tree stays as it is
import without_ties
from cells import COLUMNS, ROWS, STEPS, fall, is_edge, load, neighbour, neighbours, north_first, sample_ground, save

GRASS = """
set -e
g.region n={rows} s=0 w=0 e={columns} rows={rows} cols={columns}
r.in.bin -f --q input=levels output=levels bytes=4 north={rows} south=0 west=0 east={columns} rows={rows} cols={columns}
r.terraflow -s --q elevation=levels filled=filled direction=direction accumulation=above directory=. memory=300 stats=stats
r.mapcalc --q "depth = float(filled - levels)"
r.mapcalc --q "wet = if(filled > levels, 1, null())"
r.clump -d --q input=wet output=pond
r.univar -t --q map=depth zones=pond output=ponds
for map in filled direction above; do r.out.bin -f --q input=$map output=$map bytes=4 null=-1; done
r.out.bin -i --q input=pond output=pond bytes=4 null=0
""".format(rows=ROWS, columns=COLUMNS)

NO_CELL = -1
Flow = collections.namedtuple("Flow", "filled receiver above pond ponds")
"""Cells north row first; receiver: NO_CELL off the grid, None where the tool leaves it open; ponds: (cells, depth, volume)."""


def need(there, missing, package):
    if not there:
        sys.exit("terrain.py: %s is missing; apt-get install %s brings it" % (missing, package))


def flow_here(program, levels, folder):
    path = os.path.join(folder, "south_first")
    save(path, "f", north_first(levels))
    subprocess.run([program, path, str(COLUMNS), str(ROWS), "1"], check=True)
    numbers = lambda name, sort: north_first(load("%s.%s" % (path, name), sort))
    mirrored = lambda cell: cell if cell < 0 else (ROWS - 1 - cell // COLUMNS) * COLUMNS + cell % COLUMNS
    with open(path + ".depressions") as file:
        ponds = [tuple(float(word) for word in line.split()) for line in file]
    return Flow(numbers("filled", "f"), [mirrored(cell) for cell in numbers("receiver", "i")], numbers("above", "i"),
                numbers("depression", "i"), ponds)


def grass_receiver(cell, direction):
    if direction == 0:
        return None
    return neighbour(cell, STEPS[direction], NO_CELL)


def flow_of_grass(levels, folder):
    save(os.path.join(folder, "levels"), "f", levels)
    with open(os.path.join(folder, "script"), "w") as file:
        file.write(GRASS)
    run = subprocess.run(["grass", "--tmp-location", "XY", "--exec", "sh", "script"], cwd=folder, text=True,
                         stdout=subprocess.PIPE, stderr=subprocess.STDOUT, env=dict(os.environ, HOME=folder))
    if run.returncode != 0:
        sys.exit("terrain.py: GRASS stopped:\n" + run.stdout)
    numbers = lambda name, sort: load(os.path.join(folder, name), sort)
    directions = [int(number) for number in numbers("direction", "f")]
    with open(os.path.join(folder, "ponds")) as file:
        rows = [dict(zip(head, line.rstrip("\n").split("|"))) for head in [next(file).rstrip("\n").split("|")] for line in file]
    ponds = {int(row["zone"]): (int(row["non_null_cells"]), float(row["max"]), float(row["sum"])) for row in rows}
    return Flow(numbers("filled", "f"), [grass_receiver(*pair) for pair in enumerate(directions)], numbers("above", "f"),
                numbers("pond", "i"), ponds)


def both(program, levels):
    with tempfile.TemporaryDirectory() as folder:
        return flow_here(program, levels, folder), flow_of_grass(levels, folder)


def all_equal(what, ours, theirs):
    differing = [cell for cell, (a, b) in enumerate(zip(ours, theirs)) if a != b]
    assert not differing, "%s differs in %d cells, first %s" % (what, len(differing), divmod(differing[0], COLUMNS))
    print("  %-18s equal in all %d cells" % (what, len(ours)))


def ponds_match(ours, theirs):
    """One number here for each number there, and the same cells, depth and volume."""
    pairs = {(a, b) for a, b in zip(ours.pond, theirs.pond) if a >= 0 or b > 0}
    assert len(pairs) == len(ours.ponds) == len(theirs.ponds), "%d ponds here, %d in GRASS" % (len(ours.ponds), len(theirs.ponds))
    for a, b in pairs:
        assert a >= 0 and b > 0, "a cell is wet in one alone"
        assert all(abs(x - y) <= 1e-5 * y for x, y in zip(ours.ponds[a], theirs.ponds[b])), (ours.ponds[a], theirs.ponds[b])
    print("  %-18s %d, the same cells, depth and volume" % ("ponds", len(pairs)))


def cause(cell, ours, theirs):
    """Why the way out of a cell differs; None where nothing explains it."""
    filled = ours.filled
    if is_edge(cell):
        return "edge: GRASS sends off the grid" if theirs.receiver[cell] == NO_CELL else None
    steepest = max(fall(filled, cell, to) for to in neighbours(cell))
    if steepest <= 0:
        level = filled[ours.receiver[cell]] == filled[cell]
        return "flat: GRASS leaves the way open" if level and theirs.receiver[cell] is None else None
    ways = (ours.receiver[cell], theirs.receiver[cell])
    return "tie of equal falls" if all(way is not None and fall(filled, cell, way) == steepest for way in ways) else None


def directions_match(ours, theirs):
    """The cells that go another way there, each of them explained."""
    causes = {cell: cause(cell, ours, theirs)
              for cell in range(len(ours.receiver)) if ours.receiver[cell] != theirs.receiver[cell]}
    unexplained = [divmod(cell, COLUMNS) for cell, why in causes.items() if why is None]
    assert not unexplained, "%d directions differ without a cause, first %s" % (len(unexplained), unexplained[0])
    print("  %-18s equal in %d cells" % ("directions", len(ours.receiver) - len(causes)))
    for why, count in collections.Counter(causes.values()).items():
        print("  %-18s %s in %d cells" % ("", why, count))
    return set(causes)


def below(cells, ours, theirs):
    """Those cells and all that water of theirs may reach in either tool; from an open flat it may go to any level neighbour."""
    seen, waiting = set(cells), list(cells)
    while waiting:
        cell = waiting.pop()
        ways = {ours.receiver[cell], theirs.receiver[cell]}
        if None in ways:
            ways |= {way for way in neighbours(cell) if ours.filled[way] <= ours.filled[cell]}
        new = ways - seen - {NO_CELL, None}
        seen |= new
        waiting += new
    return seen


def above_matches(ours, theirs, may_differ, least_equal):
    """In whole cells: GRASS passes on a share of 0.9999999 here and there, which sums up to a thirtieth of a cell."""
    differing = [cell for cell, (a, b) in enumerate(zip(ours.above, theirs.above)) if a != round(b)]
    unexplained = [divmod(cell, COLUMNS) for cell in differing if cell not in may_differ]
    assert not unexplained, "%d areas above differ without a cause, first %s" % (len(unexplained), unexplained[0])
    equal = len(ours.above) - len(differing)
    assert equal >= least_equal, "only %d areas above are equal" % equal
    print("  %-18s equal in %d cells; %d lie below a way that differs" % ("area above", equal, len(differing)))


def raw_ground(program, levels):
    print("raw ground")
    ours, theirs = both(program, levels)
    all_equal("fill", ours.filled, theirs.filled)
    ponds_match(ours, theirs)
    other_ways = directions_match(ours, theirs)
    above_matches(ours, theirs, below(other_ways, ours, theirs), least_equal=len(levels) // 2)


def ground_without_ties(program, levels):
    print("without ties")
    smooth = without_ties.ground(levels)
    ours, theirs = both(program, smooth)
    all_equal("fill", ours.filled, theirs.filled)
    ponds_match(ours, theirs)
    other_ways = directions_match(ours, theirs)
    free = {cell for cell in range(len(smooth)) if ours.pond[cell] >= 0 or is_edge(cell)}
    assert other_ways <= free, "a direction differs outside the pond and the ring"
    above_matches(ours, theirs, free, least_equal=len(smooth) - len(free))


def main(program):
    need(shutil.which("grass") is not None, "GRASS GIS", "grass-core")
    levels = sample_ground()
    need(levels is not None, "the elevation sample", "python-matplotlib-data")
    raw_ground(program, levels)
    ground_without_ties(program, levels)


if __name__ == "__main__":
    main(os.path.abspath(sys.argv[1]))
