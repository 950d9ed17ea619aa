"""Faults planted into a finished pack, one at a time: what the proof lets through is listed by class."""
