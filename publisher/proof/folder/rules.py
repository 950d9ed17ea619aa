"""The catalogue of checks of a folder. ``CONTENT`` needs the promises of the files, ``AS_A_WHOLE`` the lists that lie there,
``BY_PROMISES`` both."""

from publisher.basics import Check
from publisher.proof.folder import beside_pages, cut_files, listed_files, yield_table
from publisher.proof.folder.case import FolderCase

CONTENT: tuple[Check[FolderCase], ...] = (
    cut_files.cut_file_read, cut_files.cut_file_lines, cut_files.cut_file_words, cut_files.sheet_file, yield_table.yield_table,
    beside_pages.record_attached, beside_pages.previews,
)  # fmt: skip

AS_A_WHOLE: tuple[Check[FolderCase], ...] = (listed_files.as_listed, listed_files.unlisted, listed_files.zip_content)

BY_PROMISES: tuple[Check[FolderCase], ...] = (listed_files.pdf_unknown,)

FOLDER_RULES: tuple[Check[FolderCase], ...] = (*CONTENT, *AS_A_WHOLE, *BY_PROMISES)
