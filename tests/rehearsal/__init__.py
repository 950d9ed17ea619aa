"""The rehearsal: a pack is built from what its printed pages show, and from nothing else.

Comes in: a finished PDF, of which only the picture of each page at 600 dots an inch is looked at. Goes out: the parts as they would be cut,
what the pages say of each, and what could not be read. No module here but ``compare`` and those that it names may know the tool.
"""
