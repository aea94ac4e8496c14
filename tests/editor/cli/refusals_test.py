#!/usr/bin/env python3
"""What the program refuses, it refuses with exit code 2 and a sentence of what, where and what to do; with --json the
same stands on the output as data. usage: refusals_test.py YARDWRIGHT"""

import json
import os
import tempfile

from program import NEW_YARD, OLD_YARD, Case, main, run

GOOD = {"yardwright": 1, "name": "A", "units": "us", "lot": {"corners": [[0, 0], [660, 0], [660, 660], [0, 660]],
                                                            "edges": ["road", "neighbour", "own-field", "neighbour"]},
        "items": [{"id": 1, "kind": "bin", "name": "North 1", "at": [100, 100], "diameter": 36, "eave": 24}]}


class Refusals(Case):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = folder.name

    def file(self, text, name="bad.yard"):
        path = os.path.join(self.folder, name)
        with open(path, "w" if isinstance(text, str) else "wb") as file:
            file.write(text)
        return path

    def says(self, problems, **parts):
        """One of the problems holds these words, in `where`, `what` and `do`."""
        fits = [p for p in problems if all(words in p[part] for part, words in parts.items())]
        self.assertTrue(fits, "%s not in %s" % (parts, problems))

    def changed(self, **item):
        return self.file(json.dumps(dict(GOOD, items=[dict(GOOD["items"][0], **item)])))

    def test_the_yard_that_the_refused_ones_are_made_from_is_good(self):
        self.assertEqual(run("check", self.file(json.dumps(GOOD))).code, 0)

    def test_a_missing_file(self):
        for verb in ("check", "reach", "turn", "drain", "clear", "pace", "sheet"):
            self.says(self.refused(verb, "no-such.yard", folder=self.folder), where="no-such.yard", what="no file", do="check its name")
        self.says(self.refused("ground", "no-such.yard", "--from", "a.tif", folder=self.folder), where="no-such.yard", what="no file")

    def test_a_folder_is_no_yard(self):
        self.assertTrue(self.refused("check", self.folder))

    def test_broken_json_is_told_with_its_line(self):
        text = json.dumps(GOOD, indent=1).replace('"units": "us",', '"units": "us"')
        problems = self.refused("check", self.file(text))
        self.says(problems, where="bad.yard, line 5", what="no JSON", do="comma")

    def test_bytes_that_are_no_text(self):
        for bytes_ in (b"", b"\0" * 100, bytes(range(256)), b'{"name": "\xff\xfe"}', b"\xef\xbb\xbf"):
            self.assertTrue(self.refused("check", self.file(bytes_)))

    def test_wrong_units_kinds_and_fields(self):
        self.says(self.refused("check", self.changed(diameter="36 kg")), where="item 1 (North 1), diameter", what='"36 kg"', do="ft")
        self.says(self.refused("check", self.changed(diameter=-3)), where="diameter", what="too small", do="give")
        self.says(self.refused("check", self.changed(kind="bim")), what='"bim"', do="bin")
        self.says(self.refused("check", self.changed(diametre=36)), where="diametre", do="diameter")
        self.says(self.refused("check", self.file(json.dumps(dict(GOOD, units="imperial")))), where="units", do="us")

    def test_every_problem_is_told_and_not_only_the_first(self):
        self.assertEqual(len(self.refused("check", self.changed(diameter="36 kg", eave=True, at=[0]))), 3)

    def test_a_newer_format(self):
        self.says(self.refused("check", self.file(json.dumps(dict(GOOD, yardwright=99)))), where="bad.yard", what="version 99", do="newer")

    def test_an_item_that_is_not_there(self):
        spout = {"id": 2, "kind": "spout", "name": "", "from": 7, "to": 1}
        self.says(self.refused("check", self.file(json.dumps(dict(GOOD, items=GOOD["items"] + [spout])))), where="item 2", what="7")

    def test_a_phase_that_is_not_there(self):
        for verb in ("check", "sheet"):
            for phase in ("7", "-1"):
                self.says(self.refused(verb, NEW_YARD, "--phase", phase), where="--phase", what=phase, do="0 to 1")

    def test_usage(self):
        for words in (["--nonsense"], ["frob", "x", "y"], ["check"], ["check", OLD_YARD, "extra"], ["check", OLD_YARD, "--bogus"],
                      ["ask"], ["ask", "frob"], ["ask", "spout", "--run", "3ft"], ["new"], ["ground", OLD_YARD], ["sheet"]):
            self.says(self.refused(*words), do="--help")

    def test_ask_refuses_what_is_no_quantity(self):
        for words, where in (("bin --diameter 36kg --eave 24ft", "--diameter"), ("spout --discharge 80 --inlet x --run 3", "--inlet"),
                             ("turn --vehicle p --radius 5deg", "--radius"), ("line --port 10 --conductor 3V", "--conductor"),
                             ("runoff --area 10ft --cn 80 --rain 5in", "--area"), ("manning --diameter 1ft --slope 1kg --n 0.013", "--slope")):
            self.says(self.refused("ask", *words.split()), where=where, what="is not understood", do="type a number with one of")

    def test_ask_refuses_what_cannot_be(self):
        for words, where in (("bin --diameter 0 --eave 24ft", "--diameter"), ("bin --diameter 36ft --eave 24ft --floor 25ft", "--floor"),
                             ("bin --diameter 36ft --eave 24ft --fill 85", "--fill"), ("bin --diameter 36ft --eave 24ft --grain hops", "--grain"),
                             ("bin --diameter 1e200ft --eave 24ft", "--diameter"), ("spout --discharge 80 --inlet 36 --run -60", "--run"),
                             ("turn --vehicle tank --radius 60ft", "--vehicle"), ("turn --vehicle wb-67 --radius 3ft", "--radius"),
                             ("turn --vehicle wb-67 --radius 60ft --sweep 7200", "--sweep"), ("turn --radius 60ft", "ask turn"),
                             ("line --port 0 --conductor 18ft", "--port"), ("line --port 9 --conductor 18ft --voltage 400kV", "--voltage"),
                             ("runoff --area 10ac --cn 101 --rain 5in", "--cn"), ("runoff --area 10ac --cn nan --rain 5in", "--cn"),
                             ("runoff --area 10ac --cn 80 --rain 5in --type V", "ask runoff"), ("runoff --area 1ac --cn 80 --rain 5in --c 2", "--c"),
                             ("runoff --area 1ac --cn 80 --rain 5in --distribution 0", "--distribution"), ("manning --slope 1% --n 0.013", "ask manning"),
                             ("manning --diameter 1ft --slope 1% --n nan", "--n"), ("manning --bottom -3ft --side 1 --slope 1% --n 1", "ask manning"),
                             ("manning --bottom 3ft --side 1 --slope 1% --n 0.03", "--flow")):
            self.says(self.refused("ask", *words.split()), where=where)

    def test_new_refuses_a_lot_that_is_none_and_a_file_that_is_there(self):
        path = os.path.join(self.folder, "my.yard")
        self.says(self.refused("new", path, "--length", "3kg", "--width", "0"), where="--length", do="ft")
        self.says(self.refused("new", path, "--length", "3kg", "--width", "0"), where="--width", do="1 m")
        self.assertEqual(os.listdir(self.folder), [])
        self.answered("new", path)
        self.says(self.refused("new", path), where="my.yard", what="there already", do="--force")
        self.answered("new", path, "--force")
        self.says(self.refused("new", os.path.join(self.folder, "no", "my.yard")), where="my.yard")

    def test_sheet_refuses_papers_scales_and_files_that_are_none(self):
        out = os.path.join(self.folder, "plan.pdf")
        self.says(self.refused("sheet", NEW_YARD, "-o", out, "--paper", "a7"), where="sheet", what="a7")
        self.says(self.refused("sheet", NEW_YARD, "-o", out, "--scale", "big"), what='"big"', do="1:500")
        self.says(self.refused("sheet", NEW_YARD, "-o", "plan.doc", folder=self.folder), where="plan.doc", do=".pdf")
        self.says(self.refused("sheet", NEW_YARD, "-o", os.path.join(self.folder, "no", "plan.pdf")), what="cannot be written", do="folder")
        self.assertEqual(os.listdir(self.folder), [])

    def test_a_refused_ground_leaves_the_yard_as_it_was(self):
        yard = self.file(json.dumps(GOOD), "my.yard")
        for name, text in (("a.tif", "no raster"), ("a.asc", "ncols 2"), ("a.csv", "x,y\n1,2\n"), ("b.csv", ""), ("a.pdf", "%PDF-1.4")):
            self.says(self.refused("ground", yard, "--from", self.file(text, name)), where=name)
        self.assertTrue(self.refused("ground", yard, "--from", os.path.join(self.folder, "none.tif")))
        self.assertTrue(self.refused("ground", yard, "--from", NEW_YARD.replace(".yard", "-ground.tif"), "--cell", "0"))
        with open(yard) as file:
            self.assertEqual(json.load(file), GOOD)

    def test_a_rain_table_that_is_none(self):
        yard = self.file(json.dumps(GOOD), "my.yard")
        self.says(self.refused("rain", yard), what="no rain table", do="--from")
        self.says(self.refused("rain", yard, "--from", self.file("", "empty.csv")), where="empty.csv", what="empty")
        self.says(self.refused("rain", yard, "--from", self.folder), what="cannot be read")
        self.says(self.refused("rain", yard, "--table", "2 3in, 10 2in"), where="--table", do="rising")
        with open(yard) as file:
            self.assertEqual(json.load(file), GOOD)

    def test_a_cover_that_is_not_known_is_told_with_those_that_are(self):
        yard = self.file(json.dumps(dict(GOOD, storm={"cover": "lava"}, items=[])), "my.yard")
        self.answered("ground", yard, "--from", self.file("x,y,z\n-50,-50,1\n800,-50,2\n-50,800,3\n800,800,4\n", "levels.csv"), "--margin", "0m", "--plan-unit", "ft", "--vertical-unit", "ft")
        self.says(self.refused("storm", yard), what='"lava"', do="gravel")

    def test_a_file_name_of_odd_bytes_is_still_told(self):
        self.says(self.refused("check", b"no-\xff.yard"), where="no-", what="no file")


if __name__ == "__main__":
    main()
