"""How the programs beside this one write a table: the CSV file and its descriptor. Knows nothing of the library."""

import math
from pathlib import Path


def text(values):
    return " ".join("NaN" if v != v else str(int(v)) if float(v) == int(v) else repr(float(v)) for v in values)


def cell(value):
    value = str(value) if isinstance(value, (str, int)) else repr(float(value))
    return f'"{value}"' if "," in value or "\n" in value else value


def write(folder, program, name, title, columns, inputs, checks, rows, tolerance="1e-12 relative or 1e-12",
          reason="16 digits are given", source=("Invented inputs", 2026),
          provenance="derived oracle"):
    """columns: (name, unit and meaning); inputs: (name, rule); checks: (column, calculation, lines more ...)."""
    lines = [f"author       = {source[0]}", f"year         = {source[1]}", f"work         = {title}", "locator      = in the program",
             f"provenance   = {provenance}", f"program      = verification/src/oracle/{program}",
             f"values       = {sum(1 for r in rows for c, *_ in checks if r[[n for n, _ in columns].index(c)] != '')}", ""]
    lines += [f"column.{c} = {unit if ', ' in unit else '1, ' + unit}" for c, unit in columns] + [""]
    lines += [f"input.{k} = {v}" for k, v in inputs]
    for column, calculation, *more in checks:
        head = f"check.{column}." if len(checks) > 1 else ""
        lines += ["", f"{head}calculation = {calculation}", f"{head}expected = {column}"] + [head + m for m in more]
    lines += ["", f"tolerance = {tolerance}", f"reason = {reason}"]
    Path(folder, f"{name}.table").write_text("\n".join(lines) + "\n")
    with open(Path(folder, f"{name}.csv"), "w", newline="\n") as out:
        out.write(",".join(c for c, _ in columns) + "\n")
        for row in rows:
            out.write(",".join(cell(v) for v in row) + "\n")
    assert all(not isinstance(v, float) or math.isfinite(v) for r in rows for v in r), name
