#!/usr/bin/env python3
"""`yardwright sheet --picture` draws a yard to PNG without a display: the right size, not blank, and every known thing at its
place. `yardwright picture` lays a picture under it, whose colours then show where they were said to lie. Pixels are read by
ImageMagick's convert; exit 77 (skipped) where it is missing. usage: picture_test.py YARDWRIGHT"""

import json
import math
import os
import shutil
import struct
import subprocess
import sys
import tempfile
import zlib

from program import NEW_YARD, OLD_YARD, PROGRAM, Case, main

LONGEST_MM, ROOM_MM, DOTS_PER_INCH = 360, 10, 144  # docs/methods/sheet.md: the picture of a plan
INK, STEEL, TIMBER, WATER, FUEL = (0x2a, 0x2e, 0x33), (0xe6, 0xe9, 0xea), (0xec, 0xe4, 0xd2), (0x2a, 0x6f, 0xb0), (0xa3, 0x5b, 0x38)
NEAR = 9  # of 255, in each colour: steel is no paper


def near(a, b):
    return all(abs(x - y) <= NEAR for x, y in zip(a, b))


class Plan:
    """A rendered plan of a yard whose longest side is east to west, in the yard's own unit."""

    def __init__(self, png, longest, north):
        self.size = tuple(map(int, subprocess.run(["identify", "-format", "%w %h", png], capture_output=True, check=True).stdout.split()))
        self.bytes = subprocess.run(["convert", png, "-depth", "8", "rgb:-"], capture_output=True, check=True).stdout
        self.north = north
        self.px = DOTS_PER_INCH / 25.4 * LONGEST_MM / longest
        self.room_px = DOTS_PER_INCH / 25.4 * ROOM_MM

    def at(self, east, north):
        x, y = round(self.room_px + east * self.px), round(self.room_px + (self.north - north) * self.px)
        start = 3 * (y * self.size[0] + x)
        return tuple(self.bytes[start:start + 3])

    def share(self, colour, places):
        return sum(near(self.at(*place), colour) for place in places) / len(places)

    def met(self, colour, place, slack):
        """Whether the colour is met within `slack` to the north or south."""
        return any(near(self.at(place[0], place[1] + slack * i / 6), colour) for i in range(-6, 7))

    def ring(self, east, north, radius):
        return [(east + radius * math.sin(a), north + radius * math.cos(a)) for a in (math.radians(i) for i in range(360))]

    def box(self, east, north, half):
        steps = [half * i / 12 for i in range(-12, 13)]
        return [(east + x, north + y) for x in steps for y in steps]

    def darkest_on_ring(self, east, north, radius, slack):
        """The share of directions in which a wall is met within `slack` of the radius."""
        met = 0
        for i in range(0, 360, 2):
            a = math.radians(i)
            met += any(near(self.at(east + r * math.sin(a), north + r * math.cos(a)), INK)
                       for r in (radius + slack * j / 6 for j in range(-6, 7)))
        return met / 180


class Picture(Case):
    def setUp(self):
        self.folder = tempfile.mkdtemp()
        self.addCleanup(shutil.rmtree, self.folder)

    def drawn(self, yard, longest, north):
        png = os.path.join(self.folder, "plan.png")
        bare = {name: value for name, value in os.environ.items() if name not in ("DISPLAY", "WAYLAND_DISPLAY", "XAUTHORITY")}
        subprocess.run([PROGRAM, "sheet", yard, "--picture", "-o", png], env=bare, check=True, capture_output=True, timeout=120)
        return Plan(png, longest, north)

    def is_a_bin(self, plan, east, north, diameter):
        radius, wall = diameter / 2, diameter / 40
        self.assertGreater(plan.darkest_on_ring(east, north, radius, wall), 0.75, "the wall")
        self.assertLess(plan.darkest_on_ring(east, north, radius * 1.3, wall), 0.25, "no wall farther out")
        inside = plan.ring(east, north, radius * 0.75)
        self.assertGreater(plan.share(STEEL, inside), 0.3, "steel inside")
        self.assertLess(plan.share(STEEL, plan.ring(east, north, radius * 1.3)), 0.1, "none outside")

    def test_the_old_yard(self):
        plan = self.drawn(OLD_YARD, longest=620, north=520)
        high_mm = 2 * ROOM_MM + LONGEST_MM * 560 / 620  # 520 ft of lot and 40 ft of drive before it
        for px, mm in zip(plan.size, (LONGEST_MM + 2 * ROOM_MM, high_mm)):
            self.assertAlmostEqual(px, mm / 25.4 * DOTS_PER_INCH, delta=2)
        self.assertGreater(len(set(plan.bytes[i:i + 3] for i in range(0, len(plan.bytes) - 3, 3 * 997))), 20, "colours: not blank")
        for east, north, diameter in ((258, 288, 36), (314, 292, 36), (250, 232, 30), (388, 302, 48)):
            with self.subTest(bin=(east, north)):
                self.is_a_bin(plan, east, north, diameter)
        self.assertGreater(plan.share(WATER, plan.box(120, 395, 5)), 0.05, "the well")
        long_sides = [(398 + 24 * i / 40, north) for i in range(41) for north in (235.5, 244.5)]
        self.assertGreater(sum(plan.met(FUEL, place, 0.8) for place in long_sides) / len(long_sides), 0.8, "the dryer's long sides")
        self.assertEqual(plan.share(WATER, plan.box(500, 450, 20)), 0, "an empty field")
        walls = [(490 + 60 * i / 100, north) for i in range(101) for north in (130, 170)]
        self.assertGreater(sum(plan.met(INK, place, 0.8) for place in walls) / len(walls), 0.7, "the machine shed's long walls")

    def test_the_new_yard_in_metres(self):
        plan = self.drawn(NEW_YARD, longest=300, north=240)
        self.assertAlmostEqual(plan.size[1], (2 * ROOM_MM + LONGEST_MM * 260 / 300) / 25.4 * DOTS_PER_INCH, delta=2)
        for east, north in ((126, 126), (174, 126)):
            with self.subTest(bin=(east, north)):
                self.is_a_bin(plan, east, north, 11)

    # Four colours, each a quarter of the picture, two of its pixels put to two corners of the lot.
    def test_a_picture_lies_where_it_was_laid(self):
        yard = os.path.join(self.folder, "traced.yard")
        with open(yard, "w") as file:
            json.dump({"yardwright": 1, "name": "Traced", "units": "us", "lot": {
                "corners": [[0, 0], [600, 0], [600, 400], [0, 400]], "edges": ["road", "neighbour", "neighbour", "neighbour"]}}, file)
        red, green, blue, yellow = (200, 30, 30), (30, 160, 60), (40, 60, 200), (220, 200, 40)
        sky = os.path.join(self.folder, "sky.png")
        write_png(sky, 300, 200, lambda x, y: ((red, green), (blue, yellow))[y >= 100][x >= 150])
        out = self.answered("picture", yard, "--from", sky, "--points", "0,200", "300,0", "--at", "0ft,0ft", "600ft,400ft", "--strength", "1")
        self.assertAlmostEqual(out["width_m"], 600 * 0.3048, places=6)
        self.assertAlmostEqual(out["east_m"], 300 * 0.3048, places=6)
        plan = self.drawn(yard, longest=600, north=400)
        for colour, east, north in ((red, 150, 300), (green, 450, 300), (blue, 150, 100), (yellow, 450, 100)):
            quarter = plan.box(east, north, 90)
            self.assertGreater(plan.share(colour, quarter), 0.85, "but for its name")
            self.assertEqual([plan.share(other, quarter) for other in (red, green, blue, yellow) if other != colour], [0, 0, 0])
        for east, north in ((296, 204), (304, 196), (304, 204), (296, 196)):
            colour = ((blue, yellow), (red, green))[north > 200][east > 300]
            self.assertTrue(near(plan.at(east, north), colour), "four feet from where the quarters meet")


def write_png(path, wide, high, colour_at):
    rows = b"".join(b"\0" + b"".join(bytes(colour_at(x, y)) for x in range(wide)) for y in range(high))

    def chunk(kind, data):
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
    with open(path, "wb") as file:
        file.write(b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", wide, high, 8, 2, 0, 0, 0)) +
                   chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b""))


if __name__ == "__main__":
    if shutil.which("convert") is None or shutil.which("identify") is None:
        sys.exit(77)
    main()
