#!/usr/bin/env python3
"""Lets it rain in the real window, under a virtual display, and touches nothing until the storm is over: the plan shows
its water at once, as it does when the pointer moves again; dragging the line of the hours shows the water of another
moment. What it believes are the pixels of the plan. Usage: storm_by_hand.py EDITOR. Exit 77 (skipped) where a tool is
missing."""
import os
import shutil
import subprocess
import sys
import tempfile
import time

from end_to_end import TOOLS, Display, Window
from water_by_hand import screen

RAIN, HOURS = (1101, 194), ((530, 800), (200, 800))
PLAN = {"left": 125, "right": 1045, "top": 60, "bottom": 620}  # clear of the scale bar and the line at its foot
FEW = 200  # pixels: a pointer that moved
LONGEST_S = 60


def make_yard(program, folder):
    file = os.path.join(folder, "rain.yard")
    def yardwright(*words):
        subprocess.run([program, *words], check=True, cwd=folder, stdout=subprocess.DEVNULL)
    yardwright("new", file, "--length", "80m", "--width", "80m")
    with open(os.path.join(folder, "levels.csv"), "w") as levels:
        levels.write("x,y,z\n")
        for x in range(-40, 130, 10):
            levels.writelines("%d,%d,%.3f\n" % (x, y, 100 + 0.02 * y + 0.01 * abs(x - 40)) for y in range(-40, 130, 10))
    yardwright("ground", file, "--from", "levels.csv", "--margin", "20m", "--plan-unit", "m", "--vertical-unit", "m")
    return file


def plan(window):
    return [row[3 * PLAN["left"]:3 * PLAN["right"]] for row in screen(window)[PLAN["top"]:PLAN["bottom"]]]


def differing(one, other):
    return sum(one[y][x:x + 3] != other[y][x:x + 3] for y in range(len(one)) for x in range(0, len(one[y]), 3))


def after_the_storm(window, dry):
    """The plan once it has changed and stands still."""
    for _ in range(LONGEST_S):
        time.sleep(1)
        now = plan(window)
        if differing(now, dry) > FEW:
            time.sleep(1)
            return plan(window)
    raise SystemExit("the plan showed no water of the storm within %d s" % LONGEST_S)


def main(editor):
    if any(shutil.which(tool) is None for tool in (*TOOLS, "import")):
        return 77
    program = os.path.join(os.path.dirname(editor), "yardwright")
    with tempfile.TemporaryDirectory() as folder, Display() as display:
        window = Window(editor, display, folder, make_yard(program, folder), "--question", "drain")
        try:
            window.move(*RAIN)
            dry = plan(window)
            window.click(*RAIN)
            wet = after_the_storm(window, dry)
            window.move(RAIN[0] + 150, RAIN[1] + 300)
            time.sleep(0.5)
            assert differing(plan(window), wet) < FEW, "the plan showed other water once the pointer moved"
            window.drag(*HOURS)
            time.sleep(0.5)
            assert differing(plan(window), wet) > FEW, "the plan did not follow the line of the hours"
        finally:
            window.end()
    print("it rained, the plan showed it at once, and the hours were played back")
    return 0


if __name__ == "__main__":
    sys.exit(main(os.path.abspath(sys.argv[1])))
