"""A folder of finished files on trial: every PDF, all that lies beside, and whether it is what the design builds today."""

from publisher.brief import Brief
from publisher.pipeline.expecting import expected_by
from publisher.pipeline.model import Expected, ProvedFolder, ProvedPdf
from publisher.proof import identify, identify_files, judge_files, judge_lists, listed_names, promises_by_records, prove


def prove_files(name: str, files: dict[str, bytes], brief: Brief | None = None, rebuild: bool = True) -> ProvedFolder:
    """Judge all files of a set of packs or a release, by their paths below it. With the ``brief`` they are held against what the design
    promises, and, unless ``rebuild`` is False, against what it builds today; without it against the records that the packs carry.

    Raises Refusal when the design has errors, or for an unknown paper.
    """
    listed = listed_names(files)
    expected = None if brief is None else expected_by(brief, listed or frozenset(files), rebuild)
    pdfs = tuple(_proved(path, data, expected) for path, data in sorted(files.items()) if path.endswith(".pdf"))
    promises = promises_by_records(files) if expected is None else expected.files
    proofs = {one.proof.name: one.proof for one in pdfs}
    beside = judge_files(files, promises, proofs, name)
    lists = judge_lists(files, name, promises)
    found = [finding for one in pdfs for finding in one.findings]
    as_built = None
    if expected is not None and rebuild:
        beside_pdfs = {path: data for path, data in expected.built.items() if not path.endswith(".pdf")}
        others = identify_files(files, beside_pdfs)
        found += others
        as_built = len(beside_pdfs.keys() & files.keys()) - len(others)
    return ProvedFolder(
        name,
        pdfs,
        (*beside.looked, *lists.looked),
        (*found, *beside.findings, *lists.findings),
        "records" if expected is None else "design",
        as_built,
    )


def _proved(path: str, data: bytes, expected: Expected | None) -> ProvedPdf:
    proof = prove(data, expected.promises.get(path) if expected else None, path)
    built = expected.built.get(path) if expected else None
    return ProvedPdf(proof, identify(data, built, path) if built is not None and proof.opened else None)
