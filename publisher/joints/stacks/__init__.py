"""Stacks: layers of board, each turned or shifted against the one below."""
