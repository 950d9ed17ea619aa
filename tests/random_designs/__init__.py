"""Whole designs made from seeds, whose truth is decided by solids of our own and never by the tool.

``kinds`` draws designs and says what it means by them, ``judge`` holds that against solids (``solids``), ``tool`` asks the tool,
``search`` compares the two, ``report`` prints. Known failures stand in ``cases``.
Run a search: ``python -m tests.random_designs --seeds 0-199``.
"""
