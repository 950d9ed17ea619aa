"""Panels: placed in space by their joins, and checked against them."""
