"""From a design folder of hand-cut scenery to printable packs, proved for print scale."""

__version__ = "0.1.0"
