"""One thing of the page makers or of the writers changed at a time: ink and promises of the pages both come from the changed program."""
