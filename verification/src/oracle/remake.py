"""Makes the derived tables again and says which bytes changed.

    python3 verification/src/oracle/remake.py [--keep] [TEXT ...]

Copies the tables to a new folder, runs every program that a descriptor names (or only those whose name holds one of the texts) and
compares each file with the committed one: the same, or how many cells changed and by how much at most. With --keep changed files
are put in the place of the committed ones. Ends with 1 if a byte changed or a program failed, else with 0.

Refused, with 2 and nothing kept: a program that writes a table whose descriptor names another, and two that write one file, since what
stands there would be by which of them ran last. Programs that a descriptor names together may share its table.

A program is called in one of two ways, by how it is written. With a dictionary TABLES: PROGRAM NAME, once for each table that names
it, and its output is NAME.csv. Else: PROGRAM FOLDER, once for each module whose tables name it, and it writes into that folder.
Python programs need NumPy, SciPy and mpmath, R programs nothing but R.
"""

import csv
import math
import os
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[2]
TABLES = HERE.parent / "main/resources/dev/runnel/verification/tables"


def descriptors():
    """Of every table: its path without ending, its provenance and the programs that made it."""
    for path in sorted(TABLES.rglob("*.table")):
        keys = re.findall(r"^(program|provenance)\s*=\s*(.+?)\s*$", path.read_text(encoding="utf-8"), re.M)
        yield path.with_suffix(""), dict(keys).get("provenance", ""), re.split(r",\s*", dict(keys).get("program", "")) if "program" in dict(keys) else []


def run(program, argument, output=None):
    command = ["Rscript" if program.suffix == ".R" else sys.executable, str(program), argument]
    with open(output, "wb") if output else open(tempfile.mkstemp()[1], "wb") as out:
        done = subprocess.run(command, cwd=HERE, stdout=out, stderr=subprocess.PIPE)
    if done.returncode:
        return done.stderr.decode(errors="replace").strip().splitlines()[-1:] or ["no message"]
    return []


def written(folder):
    """The files written since this was last asked: the time of those that were not is the beginning of all time."""
    found = [p for p in folder.rglob("*") if p.is_file() and p.stat().st_mtime_ns]
    for path in found:
        os.utime(path, (0, 0))
    return found


def refused(program, path, made, first):
    """Why a program may not write a file, in words; empty if it may."""
    named = [p for p, tables in made.items() if path.with_suffix("") in tables]
    others = [p for p in named or [first.setdefault(path, program)] if p != program]
    return f"{path} is by {', '.join(others)}" if others and program not in named else ""


def number(cell):
    try:
        return float(cell)
    except ValueError:
        return math.nan


def difference(old, new):
    """What changed between two files, in words; empty if nothing."""
    if old.read_bytes() == new.read_bytes():
        return ""
    before, after = (list(csv.reader(open(p, newline="", encoding="utf-8"))) for p in (old, new))
    if [len(row) for row in before] != [len(row) for row in after]:
        return f"{len(before)} lines before, {len(after)} now, or another count of cells"
    pairs = [(a, b) for r, s in zip(before, after) for a, b in zip(r, s) if a != b]
    if not pairs:
        return "another spelling of the same cells"
    sizes = [abs(number(a) - number(b)) / max(abs(number(a)), 1e-300) for a, b in pairs]
    words = sum(1 for s in sizes if math.isnan(s))
    return f"{len(pairs)} cells, {words} of them words, numbers by {max((s for s in sizes if not math.isnan(s)), default=0):.1e} at most"


def main(arguments):
    keep = "--keep" in arguments
    texts = [a for a in arguments if a != "--keep"]
    copy = Path(tempfile.mkdtemp()) / "tables"
    shutil.copytree(TABLES, copy)
    made, lost = {}, []
    for path, provenance, programs in descriptors():
        for program in programs:
            made.setdefault(program, []).append(path.relative_to(TABLES))
        if not programs and provenance == "derived oracle":
            lost.append(path.relative_to(TABLES))
    written(copy)
    failed, first, stopped, changed = False, {}, [], {}
    for program in sorted(made):
        if texts and not any(t in program for t in texts):
            continue
        source = ROOT / program
        if re.search(r"^TABLES\b", source.read_text(encoding="utf-8"), re.M):
            errors = [e for t in made[program] for e in run(source, t.name, copy / t.with_suffix(".csv"))]
        else:
            errors = [e for module in sorted({t.parent for t in made[program]}) for e in run(source, str(copy / module))]
        print(f"{program}: {len(made[program])} tables{'' if not errors else ', FAILED: ' + '; '.join(errors)}", flush=True)
        failed |= bool(errors)
        files = sorted(written(copy))
        words = [refused(program, p.relative_to(copy), made, first) for p in files]
        stopped += [f"{program} writes what is not its own: {w}" for w in words if w]
        # Told program by program, since the whole takes half an hour and more; of a table of two programs what the last one left counts.
        for path in files:
            old = TABLES / path.relative_to(copy)
            words = difference(old, path) if old.exists() else "new"
            changed.pop(path, None)
            if words:
                changed[path] = old
                print(f"  {path.relative_to(copy)}: {words}", flush=True)
    if stopped:
        print("REFUSED: " + "\nREFUSED: ".join(stopped))
        shutil.rmtree(copy.parent)
        return 2
    # What no program wrote is left alone: somebody may have made it again meanwhile.
    if keep:
        for path, old in changed.items():
            shutil.copyfile(path, old)
    print(f"{len(changed)} files changed{', and were kept' if keep and changed else ''}; {len(lost)} derived tables name no program")
    for path in lost:
        print(f"  {path}")
    shutil.rmtree(copy.parent)
    return 1 if failed or changed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
