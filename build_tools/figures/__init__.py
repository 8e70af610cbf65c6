"""Figures computed from the content: a ball, its seam, and a hand that holds it."""

from build_tools.figures.grip_figure import GripFigure, HoldError, grip_figures

__all__ = ["GripFigure", "HoldError", "grip_figures"]
