#!/usr/bin/env python3
"""Types every command of the manual into a shell and holds what comes back against what the manual prints.
usage: manual_test.py YARDWRIGHT [--refresh]

A page's files stand in fenced blocks behind a comment `<!-- file: NAME -->`; its commands in ```console blocks, each
line behind `$ `, what the program answers below it. A page runs in an empty folder, top to bottom. `--refresh` writes
the answers anew."""

import pathlib
import re
import subprocess
import sys
import tempfile

PAGES = pathlib.Path(__file__).resolve().parents[2] / "docs" / "manual"
BLOCK = re.compile(r"(?:<!-- file: (?P<file>\S+) -->\n)?```(?P<kind>\w*)\n(?P<text>.*?)```", re.S)


def answer(command, folder, program):
    script = 'yardwright() { "%s" "$@"; }\n%s' % (program, command)
    done = subprocess.run(["bash", "-c", script], cwd=folder, capture_output=True, text=True)
    return done.stdout + done.stderr


def typed(text):
    """The commands of a block, each with the answer that the page prints."""
    out = []
    for line in text.splitlines(keepends=True):
        if line.startswith("$ "):
            out.append([line[2:].rstrip("\n"), ""])
        else:
            out[-1][1] += line
    return out


def main():
    program = str(pathlib.Path(sys.argv[1]).resolve())
    refresh = "--refresh" in sys.argv[2:]
    wrong = asked = 0
    for page in sorted(PAGES.glob("*.md")):
        with tempfile.TemporaryDirectory() as folder:
            def run(block):
                nonlocal wrong, asked
                if block["file"]:
                    (pathlib.Path(folder) / block["file"]).write_text(block["text"])
                if block["kind"] != "console":
                    return block[0]
                blank = "```console\n"
                for command, printed in typed(block["text"]):
                    said = answer(command, folder, program)
                    asked += 1
                    if said != printed and not refresh:
                        wrong += 1
                        print(f"{page.name}: $ {command}\n--- the page prints\n{printed}--- the program says\n{said}")
                    blank += f"$ {command}\n{said}"
                return block[0][: block[0].index("```")] + blank + "```"
            text = page.read_text()
            fresh = BLOCK.sub(run, text)
            if refresh and fresh != text:
                page.write_text(fresh)
    print(f"{asked} commands of the manual, {wrong} answered otherwise than it says")
    return 1 if wrong or asked == 0 else 0


sys.exit(main())
