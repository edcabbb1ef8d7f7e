"""The rules of site_changes.py, or of another program, with one number or operator changed, to find states that tell the difference.

Used by the programs of limits beside this one. Knows nothing of the library. Python 3.11.
"""

import ast
import types
from pathlib import Path

import site_changes

SOURCE = Path(site_changes.__file__).read_text()
SWAPPED = {ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.Lt: ast.GtE, ast.GtE: ast.Lt, ast.Gt: ast.LtE, ast.LtE: ast.Gt}


class Other(ast.NodeTransformer):
    """Counts the numbers and operators of some functions, and changes one."""

    def __init__(self, functions, which=-1):
        self.functions, self.which, self.count, self.inside = functions, which, 0, False

    def visit_FunctionDef(self, node):
        before, self.inside = self.inside, self.inside or node.name in self.functions
        self.generic_visit(node)
        self.inside = before
        return node

    def visit_Subscript(self, node):
        return node

    def turn(self):
        self.count += self.inside
        return self.inside and self.count - 1 == self.which

    def visit_Constant(self, node):
        if isinstance(node.value, bool) or not isinstance(node.value, (int, float)) or not self.turn():
            return node
        v = node.value
        return ast.copy_location(ast.Constant(v + 1 if isinstance(v, int) else v * 1.05), node)

    def visit_BinOp(self, node):
        self.generic_visit(node)
        if type(node.op) in SWAPPED and self.turn():
            node.op = SWAPPED[type(node.op)]()
        return node

    def visit_Compare(self, node):
        self.generic_visit(node)
        if type(node.ops[0]) in SWAPPED and self.turn():
            node.ops[0] = SWAPPED[type(node.ops[0])]()
        return node


def changed(source, functions, which):
    other = Other(functions, which)
    tree = ast.fix_missing_locations(other.visit(ast.parse(source)))
    made = types.ModuleType("changed")
    exec(compile(tree, "changed", "exec"), made.__dict__)
    return made, other.count


def module(functions, which):
    made, count = changed(SOURCE, functions, which)
    fit = made.shape_of
    made.shape_of = lambda x, last: guarded(fit, x, last)
    return made, count


def guarded(fit, x, last):
    """A change may ask for a fit of a hundred years."""
    if len(x) > 1000:
        raise ValueError(len(x))
    return fit(x, last)
