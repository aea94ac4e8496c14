#!/usr/bin/env python3
"""`yardwright cost`: quantities, prices and sums of the demo yards, and what it refuses. usage: cost_test.py YARDWRIGHT"""

import json
import math
import os
import shutil
import tempfile

from program import NEW_YARD, OLD_YARD, Case, main, run

INVENTED = "invented prices, to be replaced by your own quotes"
CUBIC_YARD_M3 = 0.764554857984  # 27 cubic feet of 0.3048 m


class Cost(Case):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = folder.name

    def path(self, name):
        return os.path.join(self.folder, name)

    def book(self, *prices, name="own.json", **head):
        path = self.path(name)
        with open(path, "w") as file:
            json.dump(dict({"prices": 1, "date": "2026-03-01", "currency": "EUR", "list": list(prices)}, **head), file)
        return path

    def lines(self, out, work):
        return [line for line in out["lines"] if line["work"] == work]

    def test_the_sum_is_that_of_the_lines(self):
        for yard in (OLD_YARD, NEW_YARD):
            out = self.answered("cost", yard)
            self.assertTrue(out["prices"]["invented"])
            self.assertAlmostEqual(out["sum"], sum(line["sum"] for line in out["lines"] if line["sum"] is not None), places=3)
            self.assertEqual(out["without_price"], sum(line["sum"] is None for line in out["lines"]))

    def test_every_line_is_made_of_items_of_the_yard(self):
        with open(OLD_YARD) as file:
            ids = {item["id"] for item in json.load(file)["items"]}
        for line in self.answered("cost", OLD_YARD)["lines"]:
            self.assertAlmostEqual(line["amount"], sum(part["amount"] for part in line["parts"]), places=6)
            self.assertEqual(line["count"], sum(part["count"] for part in line["parts"]))
            for part in line["parts"]:
                self.assertTrue(part["items"] and set(part["items"]) <= ids, line)

    def test_a_slab_is_what_a_slab_is(self):
        """Two bins 11 m across of the new yard's first build, by rules of the yard's own."""
        with open(NEW_YARD) as file:
            yard = json.load(file)
        yard["items"] = [item for item in yard["items"] if item["kind"] == "bin" and item["diameter"] == 11][:2]
        del yard["ground"]
        yard["rules"] = [{"rule": "grow.bin-ring-width", "value": 0, "basis": "local", "reason": "test"},
                         {"rule": "grow.bin-slab", "value": "10 cm", "basis": "local", "reason": "test"},
                         {"rule": "grow.bin-slab-beyond", "value": "50 cm", "basis": "local", "reason": "test"}]
        path = self.path("slab.yard")
        with open(path, "w") as file:
            json.dump(yard, file)
        line, = self.lines(self.answered("cost", path, "--prices", self.book({"work": "bin-foundation", "price": 100, "per": "yd3"})), "bin-foundation")
        self.assertAlmostEqual(line["amount"], 2 * math.pi / 4 * 12**2 * 0.1, places=9)
        self.assertAlmostEqual(line["sum"], 100 * line["amount"] / CUBIC_YARD_M3, places=6)

    def test_what_has_no_price_is_told_so_and_not_as_nothing(self):
        book = self.book({"work": "leg", "price": 100, "per": "each"})
        out = self.answered("cost", OLD_YARD, "--prices", book)
        self.assertEqual(out["without_price"], len(out["lines"]) - 1)
        self.assertEqual(out["sum"], 100 * self.lines(out, "leg")[0]["count"])
        for line in out["lines"]:
            self.assertEqual(line["sum"] is None, line["work"] != "leg")
        text = run("cost", OLD_YARD, "--prices", book).out
        self.assertEqual(text.count("no price"), 2 * out["without_price"])
        self.assertIn("works without a price", text)
        self.assertNotIn("invented", text)

    def test_invented_prices_say_so_wherever_they_are_shown(self):
        for words in (["cost", OLD_YARD], ["compare", OLD_YARD, OLD_YARD]):
            self.assertIn(INVENTED, run(*words).out, words)

    def test_the_shipped_book_is_written_out_and_read_back_beside_the_yard(self):
        yard = self.path("home.yard")
        shutil.copy(NEW_YARD, yard)
        shutil.copy(NEW_YARD.replace(".yard", "-ground.tif"), self.folder)
        shipped = self.answered("cost", yard)
        own = self.path("home.prices.json")
        self.assertEqual(self.answered("cost", yard, "--write-prices", own)["file"], own)
        self.assertEqual(self.answered("cost", yard), shipped)
        with open(own) as file:
            book = json.load(file)
        book.update(invented=False, name="quotes")
        for price in book["list"]:
            price["price"] *= 2
        with open(own, "w") as file:
            json.dump(book, file)
        doubled = self.answered("cost", yard)
        self.assertEqual(doubled["prices"]["name"], "quotes")
        self.assertAlmostEqual(doubled["sum"], 2 * shipped["sum"], places=3)
        self.assertNotIn("invented", run("cost", yard).out)
        problems = self.refused("cost", yard, "--write-prices", own)
        self.assertEqual(problems[0]["what"], "is there already")

    def test_what_a_phase_builds_is_what_its_states_differ_by(self):
        before, after = (self.answered("cost", NEW_YARD, "--phase", phase) for phase in "01")
        built = self.answered("cost", NEW_YARD, "--from-phase", "0", "--to-phase", "1")
        self.assertEqual(built["gone"], [])
        for work in {line["work"] for line in after["lines"]} - {"cut", "fill", "earth-brought", "earth-left-over"}:
            amount = [sum(line["amount"] for line in self.lines(out, work)) for out in (before, after, built)]
            self.assertAlmostEqual(amount[2], amount[1] - amount[0], places=6, msg=work)
        self.assertEqual(sum(line["count"] for line in self.lines(built, "bin")), 2)

    def test_what_is_taken_away_is_listed_and_not_priced(self):
        shutil.copy(OLD_YARD.replace(".yard", "-ground.tif"), self.folder)
        with open(OLD_YARD) as file:
            yard = json.load(file)
        for item in yard["items"]:
            if item["name"] == "Machine shed":
                item["gone-in"] = 1
        path = self.path("gone.yard")
        with open(path, "w") as file:
            json.dump(yard, file)
        words = ("cost", path, "--from-phase", "0", "--to-phase", "1")
        out = self.answered(*words)
        self.assertEqual([(line["work"], line["count"]) for line in out["gone"]], [("farm-building", 1)])
        self.assertEqual(out["sum"], self.answered("cost", OLD_YARD, *words[2:])["sum"])
        self.assertRegex(run(*words).out, r"taken away, not priced:\nfarm buildings, floor +1 +2,400 ft2\n")

    def test_people_read_the_same_amounts_and_what_they_are_made_of(self):
        out, text = self.answered("cost", OLD_YARD), run("cost", OLD_YARD, "--items").out
        for line in out["lines"]:
            self.assertIn(line["words"], text)
        for name in ("North 1", "North 2", "Dryer", "LP tank"):
            self.assertIn(name, text)
        self.assertIn("Local code, the utility and licensed practice decide", text)

    def test_refusals(self):
        first = lambda *words: self.refused("cost", *words)[0]
        self.assertIn("no file", first(self.path("none.yard"))["what"])
        self.assertEqual(first(NEW_YARD, "--phase", "7")["where"], "--phase")
        self.assertEqual(first(NEW_YARD, "--from-phase", "0", "--to-phase", "7")["where"], "--to-phase")
        self.assertIn("earlier", first(NEW_YARD, "--from-phase", "1", "--to-phase", "0")["do"])
        self.assertIn("both", first(NEW_YARD, "--from-phase", "0")["do"])
        self.assertEqual(first(NEW_YARD, "--phase", "0", "--from-phase", "0", "--to-phase", "1")["where"], "--phase")
        self.assertIn("none.json", first(NEW_YARD, "--prices", self.path("none.json"))["where"])
        for price, words in (({"work": "bim", "price": 1, "per": "each"}, "bim"), ({"work": "bin", "price": -1, "per": "each"}, "-1"),
                             ({"work": "bin", "price": 1, "per": "kg"}, "kg")):
            problem = first(NEW_YARD, "--prices", self.book(price))
            self.assertIn("own.json, line 1", problem["where"])
            self.assertIn(words, problem["what"])
            self.assertTrue(problem["do"])
        with open(self.path("broken.json"), "w") as file:
            file.write('{"prices": 1,\n"list": [}')
        self.assertIn("broken.json, line 2", first(NEW_YARD, "--prices", self.path("broken.json"))["where"])


if __name__ == "__main__":
    main()
