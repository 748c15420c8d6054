"""What reading registers costs, beside what expat alone takes to parse the same XML without a handler.

Run: python -m tests.bench.bench_marks [--files 20000] [--megabytes 40]
"""

from __future__ import annotations

import argparse
import resource
import tempfile
import time
import zipfile
from collections.abc import Callable, Iterable
from pathlib import Path
from xml.parsers import expat

from namescreen.marks import read_marks
from tests.marks.invented import USPTO_BULK, eu, words

# A real record has some fifty of the one and ten to thirty of the other; they make up most of a file.
INDICATORS = "".join(f"<indicator-{number}-in>F</indicator-{number}-in>\n            " for number in range(50))
EVENTS = (
    """
            <case-file-event-statement>
              <code>GNRT</code>
              <type>F</type>
              <description-text>NON-FINAL ACTION E-MAILED</description-text>
              <date>20170424</date>
              <number>6</number>
            </case-file-event-statement>"""
    * 15
)


def spent(work: Callable[[], object]) -> float:
    """Seconds of this process's own time."""
    started = time.process_time()
    work()
    return time.process_time() - started


def parsed(documents: Iterable[bytes]) -> None:
    for document in documents:
        expat.ParserCreate().Parse(document, True)


def many_files(path: Path, count: int) -> None:
    """A zip with one mark a file, as the European Union's."""
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as archive:
        for number in range(1, count + 1):
            archive.writestr(f"{number:09}.xml", eu(f"{number:09}", words(f"POT {number}")))


def bulk(path: Path, megabytes: int) -> None:
    """One file with all marks, as the United States'."""
    start, end = USPTO_BULK.index("<case-file>"), USPTO_BULK.rindex("</case-file>") + len("</case-file>")
    record = USPTO_BULK[start:end].replace("</case-file-header>", f"{INDICATORS}</case-file-header>")
    record = record.replace("</case-file-event-statements>", f"{EVENTS}</case-file-event-statements>")
    with path.open("w") as file:
        file.write(USPTO_BULK[:start])
        for number in range(megabytes * 1_000_000 // len(record)):
            file.write(record.replace("<serial-number>", f"<serial-number>{number:06}"))
        file.write(USPTO_BULK[end:])


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--files", type=int, default=20_000)
    parser.add_argument("--megabytes", type=int, default=40)
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        archive, whole = Path(folder) / "many.zip", Path(folder) / "bulk.xml"
        many_files(archive, given.files)
        bulk(whole, given.megabytes)
        one = eu("000000001", words("POT 1")).encode()
        alone, ours = spent(lambda: parsed(one for _ in range(given.files))), spent(lambda: read_marks([archive]))
        each = ours / given.files * 1e6
        print(f"{given.files:,} files in a zip: {ours:.1f} s, {each:.0f} us a file, {ours / alone:.1f} of expat")
        size = whole.stat().st_size / 1e6
        alone, ours = spent(lambda: parsed([whole.read_bytes()])), spent(lambda: read_marks([whole]))
        print(f"bulk XML of {size:.0f} MB: {size / ours:.0f} MB a second, {ours / alone:.1f} of expat")
    print(f"memory at most {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e3:.0f} MB")


if __name__ == "__main__":
    main()
