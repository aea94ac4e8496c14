#!/usr/bin/env python3
"""`yardwright compare`: versions of a yard side by side, and what it refuses. usage: compare_test.py YARDWRIGHT"""

import json
import os
import shutil
import tempfile

from program import NEW_YARD, OLD_YARD, Case, main, run

QUESTIONS = ["reach", "turn", "drain", "clear", "pace", "grow"]


class Compare(Case):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = folder.name
        shutil.copy(OLD_YARD.replace(".yard", "-ground.tif"), self.folder)
        self.first = self.version("as-it-is", lambda items: items)

    def version(self, name, change):
        with open(OLD_YARD) as file:
            yard = json.load(file)
        yard["items"] = change(yard["items"])
        path = os.path.join(self.folder, name + ".yard")
        with open(path, "w") as file:
            json.dump(yard, file)
        return path

    def moved_and_raised(self):
        def change(items):
            for item in items:
                if item["name"] == "North 1":
                    item["at"] = [item["at"][0] + 10, item["at"][1]]
                if item["kind"] == "leg":
                    item["discharge"] = 120
            return items + [{"id": 900, "kind": "scale", "name": "New scale", "at": [20, 20]}]
        return self.version("moved", change)

    def test_an_option_says_what_the_other_verbs_say_of_it(self):
        second = self.moved_and_raised()
        out = self.answered("compare", self.first, second)
        self.assertEqual([option["file"] for option in out["options"]], ["as-it-is", "moved"])
        for path, option in zip((self.first, second), out["options"]):
            checked = json.loads(run("check", path, "--phase", "1", "--json").out)
            self.assertEqual(list(option["questions"]), QUESTIONS)
            for question, standing in option["questions"].items():
                self.assertEqual(standing["verdict"], checked["verdicts"][question])
                found = [f for f in checked["findings"] if f["question"] == question]
                for verdict in ("fail", "caution", "not_checked", "pass"):
                    self.assertEqual(standing[verdict], sum(f["verdict"] == verdict.replace("_", "-") for f in found))
                measured = [f for f in found if f["verdict"] != "not-checked"]
                self.assertEqual(standing["nearest"], measured[0] if measured else None)
            cost = self.answered("cost", path)
            self.assertEqual(option["all"]["lines"], cost["lines"])
            self.assertEqual(option["all"]["sum"], cost["sum"])
            self.assertEqual(option["built"]["sum"], self.answered("cost", path, "--from-phase", "0", "--to-phase", "1")["sum"])

    def test_the_differences_are_told_in_words(self):
        out = self.answered("compare", self.first, self.moved_and_raised())
        self.assertEqual(out["options"][0]["differences"], [])
        words = [difference["words"] for difference in out["options"][1]["differences"]]
        self.assertEqual(len(words), 3)
        self.assertIn("North 1: moved 10.0 ft to the east", words)
        self.assertIn("New scale (scale) is added", words)
        self.assertTrue(any("discharge height" in one and one.endswith("becomes 120.0 ft") for one in words), words)
        text = run("compare", self.first, self.moved_and_raised()).out
        for one in words:
            self.assertIn(one, text)

    def test_a_yard_beside_itself_does_not_differ(self):
        ran = run("compare", self.first, self.first)
        self.assertEqual((ran.code, ran.err), (0, ""))
        self.assertIn("no difference", ran.out)

    def test_the_picture_is_written(self):
        for ending, head in (("pdf", b"%PDF"), ("svg", b"<?xml"), ("png", b"\x89PNG")):
            path = os.path.join(self.folder, "options." + ending)
            self.assertEqual(self.answered("compare", self.first, self.first, "--picture", path)["picture"], path)
            with open(path, "rb") as file:
                self.assertTrue(file.read(8).startswith(head))

    def test_refusals(self):
        first = lambda *words: self.refused("compare", *words)[0]
        self.assertIn("two files", first(self.first)["do"])
        self.assertIn("6 at most", first(*[self.first] * 7)["do"])
        self.assertIn("none.yard", first(self.first, os.path.join(self.folder, "none.yard"))["where"])
        self.assertEqual(first(self.first, NEW_YARD, "--phase", "7")["where"], "--phase")
        self.assertIn("none.json", first(self.first, self.first, "--prices", "none.json")["where"])
        self.assertIn(".pdf", first(self.first, self.first, "--picture", os.path.join(self.folder, "a.doc"))["do"])
        self.assertEqual(len(self.refused("compare", "a.yard", "b.yard", folder=self.folder)), 2)


if __name__ == "__main__":
    main()
