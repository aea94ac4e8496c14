#!/usr/bin/env python3
"""`yardwright check`, a verb a question, and `sheet`, on the demo yards. usage: check_test.py YARDWRIGHT"""

import os
import re
import subprocess
import tempfile

from program import NEW_YARD, OLD_YARD, Case, main, run

QUESTIONS = ("reach", "turn", "drain", "clear", "pace")
WORST_FIRST = ("fail", "caution", "not-checked", "pass")
FINDING = {"id", "question", "rule", "verdict", "title", "note", "items", "basis", "source", "mends"}
MEASURED = {"measured", "required", "bound", "margin", "unit"}


class Check(Case):
    def test_every_question_of_the_old_yard_fails(self):
        for question in QUESTIONS:
            out = self.answered(question, OLD_YARD, code=1)
            self.assertEqual(out["verdicts"], {question: "fail"})
            self.assertEqual({finding["question"] for finding in out["findings"]}, {question})

    def test_nothing_of_the_new_yard_fails(self):
        for verb in ("check",) + QUESTIONS:
            self.assertNotIn("fail", self.answered(verb, NEW_YARD)["verdicts"].values(), verb)

    def test_the_water_of_every_pit_has_three_peaks(self):
        for yard, code in ((OLD_YARD, 1), (NEW_YARD, 0)):
            pits = self.answered("drain", yard, code=code)["pits"]
            self.assertEqual(len(pits), 2)
            for pit in pits:
                peaks = [pit[way + "_peak_m3_per_s"] for way in ("graphical", "rational", "hydrograph")]
                self.assertLess(max(peaks), 2 * min(peaks))
                self.assertTrue(11.8 < pit["hydrograph_peak_at_s"] / 3600 < 12.5)

    def test_check_is_all_questions_at_once(self):
        whole = self.answered("check", OLD_YARD, code=1)
        self.assertEqual(list(whole["verdicts"]), list(QUESTIONS) + ["grow"])
        for question in QUESTIONS:
            alone = self.answered(question, OLD_YARD, code=1)
            self.assertEqual(alone["findings"], [f for f in whole["findings"] if f["question"] == question])

    def test_a_finding_is_whole(self):
        for yard, code in ((OLD_YARD, 1), (NEW_YARD, 0)):
            with open(yard) as file:
                ids = set(map(int, re.findall(r'"id": (\d+)', file.read())))
            for finding in self.answered("check", yard, code=code)["findings"]:
                wanted = FINDING | (set() if finding["verdict"] == "not-checked" else MEASURED)
                self.assertEqual(set(finding), wanted, finding["id"])
                self.assertLessEqual(set(finding["items"]), ids)

    def test_the_margin_is_measured_against_required(self):
        checked = [f for f in self.answered("check", OLD_YARD, code=1)["findings"] if f["verdict"] != "not-checked"]
        self.assertGreater(len(checked), 20)
        for finding in checked:
            ahead = finding["measured"] - finding["required"]
            self.assertAlmostEqual(finding["margin"], ahead if finding["bound"] == "at-least" else -ahead, msg=finding["id"])
            if finding["verdict"] == "pass":
                self.assertGreaterEqual(finding["margin"], -1e-9, finding["id"])
            else:
                self.assertLess(finding["margin"], 0, finding["id"])

    def test_a_verdict_is_that_of_the_worst_finding(self):
        out = self.answered("check", OLD_YARD, code=1)
        for question, verdict in out["verdicts"].items():
            found = [f["verdict"] for f in out["findings"] if f["question"] == question]
            self.assertEqual(verdict, min(found, key=WORST_FIRST.index), question)

    def test_people_read_the_same_verdicts(self):
        ran, data = run("check", OLD_YARD), self.answered("check", OLD_YARD, code=1)
        self.assertEqual((ran.code, ran.err), (1, ""))
        for question, verdict in data["verdicts"].items():
            self.assertIn("\n%s: %s\n" % (question, verdict), ran.out)
        for finding in data["findings"]:
            if finding["verdict"] == "fail":
                self.assertIn(finding["title"], ran.out)
                self.assertIn("[%s]" % finding["id"], ran.out)
        self.assertIn("Local code, the utility and licensed practice decide", ran.out)

    def test_all_lists_what_passes(self):
        some, every = run("check", NEW_YARD).out, run("check", NEW_YARD, "--all").out
        passing = [f for f in self.answered("check", NEW_YARD)["findings"] if f["verdict"] == "pass"]
        self.assertRegex(some, r"\d+ more \(--all lists them\)")
        for finding in passing:
            self.assertIn(finding["title"], every)

    def test_a_phase_is_the_yard_as_it_stands_then(self):
        """Two stores of four are built first: less is asked, and they hold too little for the harvest."""
        today, later = self.answered("check", NEW_YARD, "--phase", "0", code=1), self.answered("check", NEW_YARD, "--phase", "1")
        self.assertLess(len(today["findings"]), len(later["findings"]))
        capacity = [next(f for f in yard["findings"] if f["rule"] == "pace.capacity") for yard in (today, later)]
        self.assertEqual([f["verdict"] for f in capacity], ["fail", "pass"])
        self.assertAlmostEqual(2 * capacity[0]["measured"], capacity[1]["measured"], delta=1e-6)

    def test_the_same_yard_gives_the_same_bytes(self):
        self.assertEqual(run("check", OLD_YARD, "--json").out, run("check", OLD_YARD, "--json").out)


class Help(Case):
    def test_every_verb_shows_an_example(self):
        verbs = [[verb] for verb in ("check",) + QUESTIONS + ("new", "ground", "sheet", "ask")]
        for verb in verbs + [["ask", question] for question in ("spout", "bin", "turn", "line", "runoff", "manning")]:
            ran = run(*verb, "--help")
            self.assertEqual((ran.code, ran.err), (0, ""))
            self.assertIn("example: yardwright " + verb[0], ran.out)
            self.assertEqual(run(*verb, "--help", "--json").code, 0)

    def test_the_examples_of_ask_run(self):
        for question in ("spout", "bin", "turn", "line", "runoff", "manning"):
            example = re.search(r"example: yardwright (.+)", run("ask", question, "--help").out).group(1)
            self.assertEqual(self.answered(*example.split())["question"], question)


class Sheet(Case):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)

    def path(self, name):
        return os.path.join(self.folder.name, name)

    def made(self, *words):
        out = self.answered("sheet", OLD_YARD, *words)
        self.assertEqual(set(out), {"pages", "files"})
        for file in out["files"]:
            self.assertGreater(os.path.getsize(file), 1000, file)
        return out

    def test_a_pdf_has_the_paper_that_was_asked(self):
        # ISO 216 and ANSI Y14.1 sizes in points of 1/72 in, landscape.
        for paper, size in (("letter", (792, 612)), ("tabloid", (1224, 792)), ("a3", (1190.55, 841.89)), ("ansi-d", (2448, 1584))):
            self.made("-o", self.path("plan.pdf"), "--paper", paper)
            info = subprocess.run(["pdfinfo", self.path("plan.pdf")], capture_output=True, text=True, check=True).stdout
            width, height = map(float, re.search(r"Page size: +([\d.]+) x ([\d.]+)", info).groups())
            self.assertAlmostEqual(width, size[0], delta=0.1)
            self.assertAlmostEqual(height, size[1], delta=0.1)

    def test_a_scale_that_was_asked_is_said(self):
        self.made("-o", self.path("plan.pdf"), "--paper", "ansi-d", "--scale", "1in=50ft")
        text = subprocess.run(["pdftotext", self.path("plan.pdf"), "-"], capture_output=True, text=True, check=True).stdout
        self.assertIn("1 in = 50 ft", text)

    def test_pictures_are_a_file_a_page(self):
        for ending, first in ((".png", b"\x89PNG"), (".svg", b"<?xml")):
            out = self.made("-o", self.path("plan" + ending))
            self.assertEqual(len(out["files"]), out["pages"])
            for file in out["files"]:
                with open(file, "rb") as picture:
                    self.assertTrue(picture.read(8).startswith(first), file)

    def test_the_plan_alone(self):
        self.assertEqual(self.made("-o", self.path("plan.png"), "--picture")["pages"], 1)


if __name__ == "__main__":
    main()
