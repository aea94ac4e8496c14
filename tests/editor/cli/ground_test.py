#!/usr/bin/env python3
"""From bare ground to a plan sheet: `new`, `ground`, `check`, `sheet`, on files that GDAL's own tools make.
usage: ground_test.py YARDWRIGHT

The ground is a tilted plane in Tennessee's state plane (EPSG 2274, US survey feet). GDAL's gdaltransform says where a
place of the yard lies on it and gdallocationinfo what level the yard's own file has there."""

import json
import os
import re
import shutil
import subprocess
import tempfile
import unittest

from program import Case, main, run

EAST, NORTH, US_FT = 1900000, 600000, 1200 / 3937
HOLE = lambda x, y: abs(x - EAST) < 30 and abs(y - NORTH) < 30
PLACES = ((-60, -60), (10, 10), (100, 100), (190, 20), (150, 260))  # metres from the yard's origin


def plane_ft(x, y):
    return 900 + 0.01 * (x - EAST) + 0.02 * (y - NORTH)


def ascii_grid(path, level, cells=400, cell=5, west=EAST - 1000, south=NORTH - 1000):
    with open(path, "w") as file:
        file.write("ncols %d\nnrows %d\nxllcorner %d\nyllcorner %d\ncellsize %g\nNODATA_value -9999\n" % (cells, cells, west, south, cell))
        for row in range(cells):
            y = south + (cells - row - 0.5) * cell
            file.write(" ".join("%.4f" % level(west + (column + 0.5) * cell, y) for column in range(cells)) + "\n")


def tool(*words, given=None):
    return subprocess.run(words, input=given, capture_output=True, text=True, check=True).stdout


class Ground(Case):
    @classmethod
    def setUpClass(cls):
        assert shutil.which("gdal_translate"), "gdal-bin is missing; apt-get install gdal-bin brings it"
        cls.made = tempfile.TemporaryDirectory()
        cls.addClassCleanup(cls.made.cleanup)
        at = lambda name: os.path.join(cls.made.name, name)
        ascii_grid(at("plane.asc"), plane_ft)
        ascii_grid(at("hole.asc"), lambda x, y: -9999 if HOLE(x, y) else plane_ft(x, y))
        for name in ("plane", "hole"):
            tool("gdal_translate", "-q", "-a_srs", "EPSG:2274", at(name + ".asc"), at(name + ".tif"))
        tool("gdalwarp", "-q", "-t_srs", "EPSG:4326", "-r", "bilinear", at("plane.tif"), at("degrees.tif"))
        tool("gdalwarp", "-q", "-t_srs", "EPSG:26916", "-r", "bilinear", "-tr", "1", "1", at("plane.tif"), at("utm.tif"))

    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = folder.name
        self.yard = os.path.join(self.folder, "my.yard")
        self.answered("new", self.yard, "--units", "metric", "--length", "201m", "--width", "201m", "--name", "Home place")

    def source(self, name):
        return os.path.join(self.made.name, name)

    def ground(self, name, *words):
        return self.answered("ground", self.yard, "--from", self.source(name), *words)

    def levels_m(self, told):
        """Of the yard's own file, by GDAL."""
        with open(self.yard) as file:
            path = os.path.join(self.folder, json.load(file)["ground"]["file"])
        east, north = told["origin_easting_m"], told["origin_northing_m"]
        given = "".join("%.4f %.4f\n" % (east + x, north + y) for x, y in PLACES)
        return [float(word) for word in tool("gdallocationinfo", "-valonly", "-geoloc", path, given=given).split()]

    def plane_m(self, told):
        """At the middle of the cell of each place, on the plane that the files were made from, by GDAL."""
        west, south = told["south_west_m"]
        cell = told["cell_m"]
        middle = lambda at, low: low + (int((at - low) / cell) + 0.5) * cell
        given = "".join("%.6f %.6f\n" % (told["origin_easting_m"] + middle(x, west), told["origin_northing_m"] + middle(y, south)) for x, y in PLACES)
        lines = tool("gdaltransform", "-s_srs", "EPSG:%d" % told["epsg"], "-t_srs", "EPSG:2274", "-output_xy", given=given).splitlines()
        return [plane_ft(*map(float, line.split()[:2])) * US_FT for line in lines]

    def is_the_plane(self, told, tolerance_m):
        for ours, true in zip(self.levels_m(told), self.plane_m(told), strict=True):
            self.assertAlmostEqual(ours, true, delta=tolerance_m)
        self.assertEqual(self.answered("check", self.yard)["site"], "Home place")

    def test_feet_become_metres(self):
        told = self.ground("plane.tif", "--vertical-unit", "us-ft")
        self.assertEqual((told["cell_m"], told["filled_cells"]), (1, 0))
        self.assertGreaterEqual(told["columns"], 400)  # the lot and 100 m around it
        self.is_the_plane(told, tolerance_m=0.002)

    def test_feet_that_are_not_said_are_asked_for(self):
        self.assertIn("--vertical-unit", self.refused("ground", self.yard, "--from", self.source("plane.tif"))[0]["do"])

    def test_degrees_become_metres(self):
        told = self.ground("degrees.tif", "--vertical-unit", "us-ft")
        self.assertEqual(told["epsg"], 32616)  # the zone in which the file lies
        self.is_the_plane(told, tolerance_m=0.02)

    def test_a_cell_may_be_chosen(self):
        told = self.ground("plane.tif", "--vertical-unit", "us-ft", "--cell", "2.5m", "--margin", "30m")
        self.assertEqual(told["cell_m"], 2.5)
        self.assertAlmostEqual(told["columns"] * 2.5, 261, delta=5)

    def test_an_ascii_grid_says_no_place_of_its_own(self):
        self.assertIn("EPSG", self.refused("ground", self.yard, "--from", self.source("plane.asc"))[0]["do"])
        self.is_the_plane(self.ground("plane.asc", "--epsg", "2274", "--vertical-unit", "us-ft"), tolerance_m=0.002)

    def test_a_tied_yard_stays_where_it_is(self):
        first = self.ground("plane.tif", "--vertical-unit", "us-ft")
        second = self.ground("degrees.tif", "--vertical-unit", "us-ft")
        self.assertEqual(first["origin_easting_m"], second["origin_easting_m"])
        self.is_the_plane(second, tolerance_m=0.02)

    def test_holes_are_refused_or_filled_and_never_nought(self):
        refused = self.refused("ground", self.yard, "--from", self.source("hole.tif"), "--vertical-unit", "us-ft")[0]
        self.assertIn("--fill-holes", refused["do"])
        self.assertRegex(refused["what"], r"\d+ cells")
        told = self.ground("hole.tif", "--vertical-unit", "us-ft", "--fill-holes")
        self.assertAlmostEqual(told["filled_cells"] * told["cell_m"] ** 2, (60 * US_FT) ** 2, delta=60)  # 335 m2 and the rim
        self.is_the_plane(told, tolerance_m=0.1)
        self.assertGreater(told["lowest_m"], 260)

    def test_spot_levels_become_a_surface(self):
        spots = os.path.join(self.folder, "spots.csv")
        with open(spots, "w") as file:
            file.write("x,y,z\n")
            for i in range(18):
                for j in range(18):
                    x, y = -120 + 26 * i + 7 * (j % 3), -120 + 26 * j - 5 * (i % 2)
                    file.write("%g,%g,%.6f\n" % (x, y, 100 + 0.03 * x - 0.01 * y))
        told = self.answered("ground", self.yard, "--from", spots, "--plan-unit", "m")
        self.assertEqual(told["epsg"], 0)
        with open(self.yard) as file:
            path = os.path.join(self.folder, json.load(file)["ground"]["file"])
        for x, y in ((10.5, 10.5), (100.5, 30.5), (190.5, 190.5)):
            level = float(tool("gdallocationinfo", "-valonly", "-geoloc", path, str(x), str(y)))
            self.assertAlmostEqual(level, 100 + 0.03 * x - 0.01 * y, delta=1e-3)

    def test_a_file_that_does_not_reach_is_refused(self):
        self.answered("new", self.yard, "--force", "--length", "5km", "--width", "5km")
        self.assertIn("does not cover the lot", self.refused("ground", self.yard, "--from", self.source("utm.tif"), "--vertical-unit", "us-ft")[0]["what"])

    def test_from_bare_ground_to_a_plan_sheet(self):
        self.ground("plane.tif", "--vertical-unit", "us-ft")
        check = self.answered("check", self.yard)
        self.assertNotIn("fail", check["verdicts"].values())
        plan = os.path.join(self.folder, "plan.pdf")
        self.assertEqual(self.answered("sheet", self.yard, "-o", plan, "--paper", "a3")["files"], [plan])
        text = tool("pdftotext", "-raw", plan, "-")
        for words in ("Home place", "Overhead lines", "Confined spaces"):
            self.assertIn(words, text)
        self.assertRegex(text, r"1\s?:\s?\d+")
        def levels_on(*pages):
            return set(re.findall(r"(?m)^(2\d\d) m$", tool("pdftotext", "-raw", *pages, plan, "-")))
        levels = levels_on("-f", "1", "-l", "1")
        self.assertTrue(levels, "no contour tells its level")
        self.assertLessEqual(levels, {"270", "275"}, "levels of the contours, every 5 m; one that finds no room is dropped")
        self.assertGreater(len(levels_on()), 4, "Drain's own sheet has finer contours")

    def test_people_are_told_what_was_read(self):
        ran = run("ground", self.yard, "--from", self.source("plane.tif"), "--vertical-unit", "us-ft")
        self.assertEqual((ran.code, ran.err), (0, ""))
        self.assertIn("NAD83 / Tennessee (ftUS)", ran.out)
        self.assertRegex(ran.out, r"holes +none")


if __name__ == "__main__":
    main()
