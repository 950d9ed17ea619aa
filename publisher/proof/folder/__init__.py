"""All files of an output folder or a release held against what was worked out: cut files, tables, pictures, records, lists.

Comes in: files as bytes, what they must show, the proofs of the PDFs. Goes out: findings, and how many things were looked at in each file.
Never: read a file from a disk; read an SVG with the library that wrote it.
"""

from publisher.proof.folder.by_record import promises_by_records
from publisher.proof.folder.judge import FolderProof, LookedAt, judge_files, judge_lists
from publisher.proof.folder.listed_files import LISTS, listed_names
from publisher.proof.folder.listed_files import pdf_unknown as PDF_UNKNOWN
from publisher.proof.folder.rules import FOLDER_RULES
from publisher.proof.folder.zips import ZipRead, read_zip
