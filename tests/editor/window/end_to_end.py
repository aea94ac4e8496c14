#!/usr/bin/env python3
"""Drives the real window under a virtual display with the pointer and the keys that a person uses: a new yard from
its lot's size, a leg and three bins placed and joined, a bin dragged away and the drag undone, saved, opened again.
What it believes is the saved file. Usage: end_to_end.py EDITOR. Exit 77 (skipped) where a tool is missing."""
import json
import os
import shutil
import subprocess
import sys
import tempfile
import time

TOOLS = ["Xvfb", "xdotool"]
SIZE = (1400, 900)
TRAY = {"bin": (31, 139), "leg": (84, 139), "spout": (31, 318)}


class Display:
    """A virtual display of its own, on the number that the server picks."""

    def __enter__(self):
        reading, writing = os.pipe()
        self.server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(writing), "-noreset", "-screen", "0", "%dx%dx24" % SIZE],
            pass_fds=[writing], stderr=subprocess.DEVNULL)
        os.close(writing)
        with os.fdopen(reading) as number:
            self.name = ":" + number.readline().strip()
        return self

    def __exit__(self, *_):
        self.server.terminate()
        self.server.wait()


class Window:
    """The editor, worked from outside."""

    def __init__(self, editor, display, folder, *arguments):
        self.environment = dict(os.environ, DISPLAY=display.name, XDG_STATE_HOME=folder, YARDWRIGHT_UI_SCALE="1")
        self.process = subprocess.Popen([editor, *arguments], cwd=folder, env=self.environment, stderr=subprocess.DEVNULL)
        self.id = self.wait_for_window()
        self.x("windowmove", self.id, "0", "0")
        self.x("windowfocus", self.id)
        time.sleep(1)

    def x(self, *words):
        done = subprocess.run(["xdotool", *words], env=self.environment, capture_output=True, text=True)
        return done.stdout.strip()

    def wait_for_window(self):
        for _ in range(100):
            found = self.x("search", "--onlyvisible", "--name", "^yardwright$")
            if found:
                return found.splitlines()[0]
            time.sleep(0.2)
        raise SystemExit("the window did not open")

    def move(self, x, y):
        self.x("mousemove", str(x), str(y))
        time.sleep(0.15)

    def click(self, x, y):
        self.move(x, y)
        self.x("mousedown", "1")
        time.sleep(0.1)
        self.x("mouseup", "1")
        time.sleep(0.2)

    def keys(self, *names):
        for name in names:
            self.x("key", name)
            time.sleep(0.2)

    def type(self, text):
        self.x("type", "--delay", "40", text)
        time.sleep(0.2)

    def place(self, kind, x, y):
        self.click(*TRAY[kind])
        self.click(x, y)

    def drag(self, start, end):
        self.move(*start)
        self.x("mousedown", "1")
        for part in (0.3, 0.7, 1):
            self.move(*(round(a + (b - a) * part) for a, b in zip(start, end)))
        self.x("mouseup", "1")
        time.sleep(0.3)

    def end(self):
        self.process.terminate()
        self.process.wait()


def saved(path, wanted=lambda yard: True):
    """The yard of the file, once it is there and as wanted; saving takes a moment."""
    yard = None
    for _ in range(50):
        if os.path.exists(path):
            with open(path) as file:
                yard = json.load(file)
            if wanted(yard):
                return yard
        time.sleep(0.2)
    raise SystemExit("%s is not as it should be: %s" % (path, json.dumps(yard)))


def of_kind(yard, kind):
    return [item for item in yard["items"] if item["kind"] == kind]


def draw_yard(window):
    window.keys("ctrl+n")
    window.keys("ctrl+a")
    window.type("500 ft")
    window.keys("Return")
    window.place("leg", 560, 380)
    for x, y in ((520, 340), (610, 340), (560, 440)):
        window.place("bin", x, y)
    window.click(*TRAY["spout"])
    window.click(560, 380)
    window.click(610, 340)
    window.keys("Escape", "Escape", "Escape")


def main(editor):
    with tempfile.TemporaryDirectory() as folder, Display() as display:
        path = os.path.join(folder, "drawn.yard")
        window = Window(editor, display, folder)
        try:
            draw_yard(window)
            window.keys("ctrl+s", "ctrl+a")
            window.type("drawn")
            window.keys("Return")
            drawn = saved(path, lambda yard: len(yard["items"]) == 5)
            assert drawn["lot"]["corners"][1] == [500, 0], drawn["lot"]
            assert len(of_kind(drawn, "bin")) == 3 and len(of_kind(drawn, "leg")) == 1, drawn["items"]
            assert of_kind(drawn, "spout")[0]["from"] == of_kind(drawn, "leg")[0]["id"]

            window.drag((560, 440), (800, 560))
            window.keys("ctrl+s")
            away = saved(path, lambda yard: yard != drawn)
            assert of_kind(away, "bin")[2]["at"] != of_kind(drawn, "bin")[2]["at"]

            window.keys("ctrl+z", "ctrl+s")
            saved(path, lambda yard: yard == drawn)
        finally:
            window.end()

        again = Window(editor, display, folder, path)
        try:
            again.keys("ctrl+a", "Delete", "ctrl+s")
            empty = saved(path, lambda yard: not yard["items"])
            assert empty["lot"] == drawn["lot"]
        finally:
            again.end()
    print("a yard was drawn, dragged, undone, saved and opened again")


if __name__ == "__main__":
    if any(shutil.which(tool) is None for tool in TOOLS):
        sys.exit(77)
    main(os.path.abspath(sys.argv[1]))
