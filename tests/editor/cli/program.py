"""Runs the real program as a person or another program would. Each test of the command line begins with it."""

import collections
import json
import os
import subprocess
import sys
import unittest

PROGRAM = os.path.abspath(sys.argv[1]) if len(sys.argv) > 1 else "yardwright"
YARDS = os.path.abspath(os.path.join(os.path.dirname(__file__), "../../../assets/yards"))
OLD_YARD, NEW_YARD = os.path.join(YARDS, "old-yard.yard"), os.path.join(YARDS, "new-yard.yard")

Ran = collections.namedtuple("Ran", "code out err")


def run(*words, folder=None):
    done = subprocess.run([PROGRAM, *words], cwd=folder, capture_output=True, encoding="utf-8", errors="replace", timeout=60)
    return Ran(done.returncode, done.stdout, done.stderr)


class Case(unittest.TestCase):
    longMessage = True

    def answered(self, *words, folder=None, code=0):
        """What --json prints, of a run that ends in a code and complains of nothing."""
        ran = run(*words, "--json", folder=folder)
        self.assertEqual((ran.code, ran.err), (code, ""), words)
        return json.loads(ran.out)

    def refused(self, *words, folder=None):
        """The problems of a run that is refused: as sentences without --json, the same as data with it."""
        plain, data = run(*words, folder=folder), run(*words, "--json", folder=folder)
        self.assertEqual((plain.code, data.code), (2, 2), words)
        self.assertEqual(plain.out, "", "a refusal answers nothing")
        self.assertEqual(plain.err, data.err)
        problems = json.loads(data.out)["problems"]
        self.assertEqual(len(problems), len(plain.err.splitlines()), "a sentence a problem")
        for problem, line in zip(problems, plain.err.splitlines()):
            self.assertEqual(set(problem), {"where", "what", "do"})
            sentence = (problem["where"] + ": " if problem["where"] else "") + problem["what"]
            self.assertEqual(line, "yardwright: " + sentence + ("; " + problem["do"] if problem["do"] else ""))
        return problems


def main():
    unittest.main(argv=sys.argv[:1], verbosity=0)
