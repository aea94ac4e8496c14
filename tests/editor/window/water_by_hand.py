#!/usr/bin/env python3
"""Drains a yard in the real window, under a virtual display: a retaining wall, a curb, a catch basin, a trench drain, a
tile line, a downspout and a receiving ditch put on the plan with their tools; a rain table brought in; the ground cut
along a measured line, down its slope and up it. What it believes of the yard is the saved file, of the section the line
of the ground that the side view draws. Usage: water_by_hand.py EDITOR. Exit 77 (skipped) where a tool is missing."""
import os
import shutil
import subprocess
import sys
import tempfile

from end_to_end import SIZE, TOOLS, Display, Window, of_kind, saved

FOOT = 0.3048
NEAR_FT = 4      # a pixel of the screen is a foot, and a hand two pixels off
FALL = 0.02      # of the ground, to the south
INK = (0x2a, 0x2e, 0x33)
TRAY = {"retaining-wall": (31, 612), "curb": (84, 617), "catch-basin": (84, 666), "trench-drain": (31, 716),
        "tile-line": (84, 714), "downspout": (31, 763), "receiving-ditch": (84, 765), "measure": (31, 863)}
LINES = {"retaining-wall": ((100, 430), (200, 430)), "curb": ((100, 380), (200, 380)),
         "trench-drain": ((100, 330), (200, 330)), "tile-line": ((100, 230), (350, 230)),
         "receiving-ditch": ((60, 60), (540, 60))}
BASIN, BIN, DOWNSPOUT = (300, 230), (450, 330), (450, 308)
# The side view's ground, clear of its title, its names and the numbers below it.
CHART = {"left": 180, "right": 930, "top": 712, "bottom": 866}
FILE_MENU, RAIN_ENTRY = (80, 25), (140, 185)
RAIN_FILE, BRING_IN = (540, 322), (525, 556)  # after the folder above and the folder of the window's state
RAIN = """Point precipitation frequency estimates (inches)
Data type: Precipitation depth
by duration for ARI (years):, 1,2,5,10,25,50,100
24-hr:, 2.21,2.61,3.30,3.90,4.75,5.45,6.17
"""


def on_screen(place):
    """The lot is 618 px wide in the window."""
    east, north = place
    return round(275.5 + 1.03 * east), round(619 - 1.03 * north)


def make_yard(program, folder):
    file = os.path.join(folder, "wet.yard")
    def yardwright(*words):
        subprocess.run([program, *words], check=True, cwd=folder, stdout=subprocess.DEVNULL)
    yardwright("new", file, "--length", "600ft", "--width", "500ft")
    with open(os.path.join(folder, "levels.csv"), "w") as levels:
        levels.write("x,y,z\n")
        for x in range(-60, 260, 20):
            levels.writelines("%d,%d,%.3f\n" % (x, y, 270 + FALL * y) for y in range(-60, 240, 20))
    yardwright("ground", file, "--from", "levels.csv", "--margin", "30m", "--plan-unit", "m", "--vertical-unit", "m")
    os.remove(os.path.join(folder, "levels.csv"))
    with open(os.path.join(folder, "atlas14.csv"), "w") as rain:
        rain.write(RAIN)
    return file


def draw_line(window, kind):
    window.click(*TRAY[kind])
    for place in LINES[kind]:
        window.click(*on_screen(place))
    window.keys("Return", "Escape", "Escape")


def feet(value):
    return float(value.split()[0]) / FOOT if isinstance(value, str) else value


def is_near(point, place):
    return all(abs(feet(got) - wanted) < NEAR_FT for got, wanted in zip(point, place))


def check_water(yard):
    for kind, ends in LINES.items():
        drawn = of_kind(yard, kind)
        assert len(drawn) == 1, (kind, yard["items"])
        assert len(drawn[0]["path"]) == 2, drawn
        assert all(is_near(point, place) for point, place in zip(drawn[0]["path"], ends)), (drawn, ends)
    basins, spouts = of_kind(yard, "catch-basin"), of_kind(yard, "downspout")
    assert len(basins) == 1 and is_near(basins[0]["at"], BASIN), basins
    assert len(spouts) == 1 and is_near(spouts[0]["at"], DOWNSPOUT), spouts
    assert spouts[0]["of"] == of_kind(yard, "bin")[0]["id"], spouts


def place_water(window):
    for kind in LINES:
        draw_line(window, kind)
    for kind, place in (("catch-basin", BASIN), ("downspout", DOWNSPOUT)):
        window.click(*TRAY[kind])
        window.click(*on_screen(place))
        window.keys("Escape", "Escape")


def bring_in_rain(window):
    window.click(*FILE_MENU)
    window.click(*RAIN_ENTRY)
    window.click(*RAIN_FILE)
    window.click(*BRING_IN)


def screen(window):
    """Rows of pixels, three bytes each."""
    raw = subprocess.run(["import", "-window", "root", "-depth", "8", "rgb:-"], env=window.environment,
                         capture_output=True, check=True).stdout
    wide = SIZE[0] * 3
    return [raw[y * wide:(y + 1) * wide] for y in range(SIZE[1])]


def ground_line(window):
    """The lowest pixel in ink of every tenth column of the side view."""
    rows, found = screen(window), []
    for x in range(CHART["left"], CHART["right"], 10):
        for y in range(CHART["bottom"], CHART["top"], -1):
            if all(abs(rows[y][3 * x + i] - INK[i]) < 24 for i in range(3)):
                found.append((x, y))
                break
    return found


def measured_section(window, start, end):
    window.click(*TRAY["measure"])
    for place in (start, end):
        window.click(*on_screen(place))
    window.move(*on_screen((300, 480)))
    line = ground_line(window)
    window.keys("Escape", "Escape", "Escape")
    return line


def check_slope(line, falls):
    """A straight line from side to side that falls to the right, or rises."""
    assert len(line) > 50, "the side view shows no ground: %s" % line
    (left, top), (right, bottom) = line[0], line[-1]
    assert (bottom - top > 25) if falls else (top - bottom > 25), line
    for x, y in line:
        straight = top + (bottom - top) * (x - left) / (right - left)
        assert abs(y - straight) < 4, (x, y, straight)


def main(editor):
    if any(shutil.which(tool) is None for tool in (*TOOLS, "import")):
        return 77
    program = os.path.join(os.path.dirname(editor), "yardwright")
    with tempfile.TemporaryDirectory() as folder, Display() as display:
        file = make_yard(program, folder)
        window = Window(editor, display, folder, file, "--question", "drain")
        try:
            window.click(31, 133)
            window.click(*on_screen(BIN))
            window.keys("Escape", "Escape")
            place_water(window)
            window.keys("ctrl+s")
            check_water(saved(file, lambda yard: len(yard["items"]) == 8))
            north, south = (520, 450), (520, 100)
            check_slope(measured_section(window, north, south), falls=True)
            check_slope(measured_section(window, south, north), falls=False)
            bring_in_rain(window)
            window.keys("ctrl+s")
            storm = saved(file, lambda yard: "100 6.17" in yard["storm"].get("table", ""))["storm"]
            assert storm["rain"] == 4.75, storm  # of 25 years
        finally:
            window.end()
    print("water was drained, its ground cut and its rain brought in")
    return 0


if __name__ == "__main__":
    sys.exit(main(os.path.abspath(sys.argv[1])))
