"""The sample ground and the arithmetic of its cells, numbered row by row from the north-west."""

import array
import zipfile

SAMPLE = "/usr/share/matplotlib/mpl-data/sample_data/jacksboro_fault_dem.npz"
ROWS, COLUMNS = 344, 403
STEPS = {1: (0, 1), 2: (1, 1), 4: (1, 0), 8: (1, -1), 16: (0, -1), 32: (-1, -1), 64: (-1, 0), 128: (-1, 1)}
"""Rows down and columns right of the neighbour that r.terraflow's number for a direction means."""


def sample_ground():
    """Levels in metres; None where Debian's package is not there. An array file: a header whose length stands at byte 8."""
    try:
        packed = zipfile.ZipFile(SAMPLE).read("elevation.npy")
    except OSError:
        return None
    levels = array.array("h", packed[10 + int.from_bytes(packed[8:10], "little"):])
    assert len(levels) == ROWS * COLUMNS, "the elevation sample has another size than 344 by 403"
    return [float(level) for level in levels]


def load(path, sort):
    numbers = array.array(sort)
    with open(path, "rb") as file:
        numbers.frombytes(file.read())
    return numbers


def save(path, sort, numbers):
    with open(path, "wb") as file:
        array.array(sort, numbers).tofile(file)


def north_first(numbers):
    """South row first becomes north row first, and back."""
    turned = array.array("f" if isinstance(numbers, list) else numbers.typecode)
    for row in reversed(range(ROWS)):
        turned.extend(numbers[row * COLUMNS:(row + 1) * COLUMNS])
    return turned


def is_edge(cell):
    return cell // COLUMNS in (0, ROWS - 1) or cell % COLUMNS in (0, COLUMNS - 1)


def neighbour(cell, step, off_grid):
    row, column = cell // COLUMNS + step[0], cell % COLUMNS + step[1]
    return row * COLUMNS + column if 0 <= row < ROWS and 0 <= column < COLUMNS else off_grid


def neighbours(cell):
    if is_edge(cell):
        around = (neighbour(cell, step, None) for step in STEPS.values())
        return [to for to in around if to is not None]
    return [cell + away for away, _ in SIDEWAYS]


def fall(levels, cell, to):
    """For one length of a cell's side."""
    straight = cell % COLUMNS == to % COLUMNS or cell // COLUMNS == to // COLUMNS
    return (levels[cell] - levels[to]) * (1 if straight else DIAGONAL)


DIAGONAL = 0.5 ** 0.5
SIDEWAYS = [(down * COLUMNS + right, 1 if down * right == 0 else DIAGONAL) for down, right in STEPS.values()]
"""For an inner cell: how far each neighbour's number is away, and the fall's share for one side's length."""
INNER = [cell for cell in range(ROWS * COLUMNS) if not is_edge(cell)]
