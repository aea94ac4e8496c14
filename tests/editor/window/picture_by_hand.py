#!/usr/bin/env python3
"""Lays a picture under a plan in the real window, under a virtual display: chosen from the tray, two of its points
clicked, where they lie typed, one step undone and done again, saved. What it believes is the saved file: both points
of the picture lie where they were said to. Usage: picture_by_hand.py EDITOR. Exit 77 (skipped) where a tool is missing."""
import math
import os
import shutil
import struct
import sys
import tempfile
import time
import zlib

from end_to_end import TOOLS, Display, Window, saved

FOOT = 0.3048
WIDE, HIGH = 400, 300
MARKS = ((100, 200), (300, 50))  # pixels from the top left corner
PLACES = ((150 * FOOT, 150 * FOOT), (200 * FOOT, 300 * FOOT))
NEAR_M = 3 * FOOT  # a pixel of the screen is a third of a metre, and a hand two pixels off
YARD = ('{"yardwright": 1, "name": "Traced", "units": "us", "lot": {"corners": [[0, 0], [600, 0], [600, 500], [0, 500]],'
        ' "edges": ["road", "neighbour", "neighbour", "neighbour"]}, "items": []}')


def write_png(path):
    """White, with a black square about each mark."""
    def is_marked(x, y):
        return any(abs(x - mx) < 8 and abs(y - my) < 8 for mx, my in MARKS)
    rows = b"".join(b"\0" + bytes(0 if is_marked(x, y) else 255 for x in range(WIDE)) for y in range(HIGH))
    def chunk(kind, data):
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
    header = struct.pack(">IIBBBBB", WIDE, HIGH, 8, 0, 0, 0, 0)
    with open(path, "wb") as file:
        file.write(b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b""))


def on_screen(pixel):
    """Where a pixel stands before it is fitted: the picture is as wide as the lot, which is 618 px of the window."""
    left, top, width = 275.5, 130.0, 618.0
    return round(left + pixel[0] / WIDE * width), round(top + pixel[1] / WIDE * width)


def type_over(window, at, text):
    window.click(*at)
    window.keys("ctrl+a")
    window.type(text)
    window.keys("Return")
    time.sleep(0.5)


def metres(value):
    return float(value.split()[0]) if isinstance(value, str) else value * FOOT


def place_of(picture, pixel):
    """East and north of a pixel: from the picture's middle along its right and against its up."""
    turn = math.radians(picture["facing"])
    width = metres(picture["width"])
    right = (pixel[0] / WIDE - 0.5) * width
    up = (0.5 - pixel[1] / HIGH) * width * picture["proportion"]
    east, north = (metres(value) for value in picture["at"])
    return east + right * math.cos(turn) + up * math.sin(turn), north - right * math.sin(turn) + up * math.cos(turn)


def check(picture):
    for pixel, (east, north) in zip(MARKS, PLACES):
        at = place_of(picture, pixel)
        away = math.hypot(at[0] - east, at[1] - north)
        if away > NEAR_M:
            raise SystemExit("pixel %s lies %.2f m from where it was put" % (pixel, away))


def main(editor):
    if any(shutil.which(tool) is None for tool in TOOLS):
        return 77
    with tempfile.TemporaryDirectory() as folder, Display() as display:
        file = os.path.join(folder, "traced.yard")
        with open(file, "w") as out:
            out.write(YARD)
        write_png(os.path.join(folder, "sky.png"))
        window = Window(editor, display, folder, file)
        try:
            window.click(84, 822)    # the tray's picture
            time.sleep(0.5)
            window.click(529, 330)   # sky.png, after the folder above and the folder of the window's state
            window.click(530, 536)   # lay it under
            time.sleep(1)
            for mark in MARKS:
                window.click(*on_screen(mark))
            type_over(window, (1286, 194), "150ft, 150ft")
            type_over(window, (1286, 221), "200ft,300ft")
            window.keys("ctrl+z", "ctrl+shift+z", "ctrl+s")
            check(saved(file, lambda yard: [item["file"] for item in yard["items"]] == ["sky.png"])["items"][0])
        finally:
            window.end()
    print("a picture was laid under a plan, fitted by two points, and saved")
    return 0


if __name__ == "__main__":
    sys.exit(main(os.path.abspath(sys.argv[1])))
