"""The sample ground made so that the steepest way out of a cell is one way: the test of directions that allows nothing."""

import heapq
import random

from cells import COLUMNS, ROWS, INNER, SIDEWAYS, is_edge, neighbours

SEED = 20240611
STEP_M = 2.0 ** -13  # levels are whole multiples and under 2^11 m: exact in single precision
POND = (220, 364)    # a place for the pond that is kept


def ringed(levels):
    """The outer ring lies lower than all and no two cells of it level, so that it drains off the grid in every tool."""
    return [100 - cell * STEP_M if is_edge(cell) else level for cell, level in enumerate(levels)]


def tilted(levels, rise):
    """Filled from the edge inwards, each cell at least its rise above the one from which it was reached."""
    filled, seen = list(levels), [is_edge(cell) for cell in range(len(levels))]
    heap = [(levels[cell], cell) for cell in range(len(levels)) if seen[cell]]
    heapq.heapify(heap)
    while heap:
        water, cell = heapq.heappop(heap)
        for to in neighbours(cell):
            if not seen[to]:
                seen[to] = True
                filled[to] = max(filled[to], water + rise[to])
                heapq.heappush(heap, (filled[to], to))
    return filled


def ties(levels):
    """Inner cells to which a neighbour falls as steeply as to another, and nowhere steeper."""
    tied = set()
    for cell in INNER:
        here = levels[cell]
        falls = [(here - levels[cell + away]) * share for away, share in SIDEWAYS]
        most = max(falls)
        if falls.count(most) > 1:
            tied |= {cell + away for (away, _), one in zip(SIDEWAYS, falls) if one == most}
    return {cell for cell in tied if not is_edge(cell)}


def dig_pond(levels):
    """One hollow of nine cells: r.terraflow 8.2 stops on ground that has none."""
    middle = POND[0] * COLUMNS + POND[1]
    cells = [middle] + neighbours(middle)
    floor = min(levels[cell] for cell in cells) - 1
    for number, cell in enumerate(cells):
        levels[cell] = floor + number * STEP_M
    return levels


def ground(levels):
    dice = random.Random(SEED)
    noise, rise = [0.0] * len(levels), [0.0] * len(levels)
    ringed_levels, to_roll = ringed(levels), range(ROWS * COLUMNS)
    while to_roll:
        for cell in to_roll:
            noise[cell] = dice.randrange(-4096, 4096) * STEP_M
            rise[cell] = dice.randrange(1, 128) * STEP_M
        smooth = tilted([a if is_edge(cell) else a + noise[cell] for cell, a in enumerate(ringed_levels)], rise)
        to_roll = sorted(ties(smooth))
    return dig_pond(smooth)
