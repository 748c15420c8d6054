"""The HTML form in a real browser: nothing runs over the edge of a phone, an A4 page or a column of the picture.

Not part of the ordinary tests: set NAMESCREEN_BROWSER to the path of a Chromium to run it.
"""

from __future__ import annotations

import html
import json
import os
import re
import subprocess
import threading
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest

from namescreen.report import Report, to_html

BROWSER = os.environ.get("NAMESCREEN_BROWSER", "")
pytestmark = pytest.mark.skipif(not BROWSER, reason="no browser: set NAMESCREEN_BROWSER to a Chromium")

FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--hide-scrollbars",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
)  # fmt: skip

# The page in a frame of the width asked for, measured from outside, as its own policy allows no script.
MEASURE = """<!DOCTYPE html><body style="margin:0"><iframe src="PAGE" width="WIDTH" height="2000" style="border:0">
</iframe><pre id="found"></pre><script>
document.querySelector("iframe").onload = (event) => {
  const inner = event.target.contentDocument, root = inner.documentElement, over = [], crossed = [];
  for (const one of inner.querySelectorAll("main *:not(.picture *)")) {
    const box = one.getBoundingClientRect(), head = one.closest("thead");
    if (head && getComputedStyle(head).position === "absolute") continue;  // kept for readers that speak
    if (box.width && box.right > root.clientWidth + 0.5)
      over.push(one.tagName + ": " + one.textContent.slice(0, 40));
  }
  const texts = [...inner.querySelectorAll("svg text")].map((one) => [one.textContent, one.getBBox()]);
  const edge = inner.querySelector("svg").viewBox.baseVal.width;
  for (const [text, box] of texts) {
    if (box.x + box.width > edge) crossed.push(text);
    for (const [other, near] of texts)
      if (other !== text && box.x < near.x && box.x + box.width > near.x + 0.5
          && box.y + 2 < near.y + near.height && near.y + 2 < box.y + box.height) crossed.push(text + " | " + other);
  }
  document.getElementById("found").textContent = JSON.stringify(
    {wide: root.scrollWidth, room: root.clientWidth, over, crossed, texts: texts.length});
};
</script>"""


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Path, str]]:
    folder = tmp_path_factory.mktemp("pages")

    class Quiet(SimpleHTTPRequestHandler):
        def log_message(self, format: str, *args: Any) -> None:
            pass

    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=str(folder)))
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield folder, f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()
    thread.join()


def browse(profile: Path, *arguments: str) -> str:
    command = [BROWSER, *FLAGS, f"--user-data-dir={profile}", "--virtual-time-budget=5000", *arguments]
    return subprocess.run(command, capture_output=True, text=True, timeout=60, check=True).stdout


@pytest.mark.parametrize("kind", ["report", "hostile"])
@pytest.mark.parametrize(("medium", "wide"), [("screen", 320), ("screen", 390), ("screen", 1024), ("print", 695)])
def test_nothing_runs_over_the_edge(
    kind: str, medium: str, wide: int, served: tuple[Path, str], request: pytest.FixtureRequest, tmp_path: Path
) -> None:
    """695 CSS pixels are the 184 mm between the margins of an A4 page, laid out by the print style."""
    report: Report = request.getfixturevalue(kind)
    folder, address = served
    page = to_html(report)
    if medium == "print":
        page = page.replace("@media screen", "@media speech").replace("@media print", "@media all")
    (folder / "page.html").write_text(page, "utf-8")
    (folder / "measure.html").write_text(MEASURE.replace("PAGE", "page.html").replace("WIDTH", str(wide)), "utf-8")
    told = browse(tmp_path, "--window-size=1200,2100", "--dump-dom", f"{address}/measure.html")
    found = json.loads(html.unescape(re.findall(r'<pre id="found">(.*?)</pre>', told, re.DOTALL)[0]))
    assert found["room"] == wide
    assert found["wide"] <= wide, found
    assert found["over"] == []
    assert found["texts"] > 20
    assert found["crossed"] == []


def test_prints_a_page_a_name(report: Report, tmp_path: Path) -> None:
    page, printed = tmp_path / "page.html", tmp_path / "page.pdf"
    page.write_text(to_html(report), "utf-8")
    browse(tmp_path / "profile", "--no-pdf-header-footer", f"--print-to-pdf={printed}", page.as_uri())
    pages = len(re.findall(rb"/Type\s*/Page\b", printed.read_bytes()))
    assert len(report.names) < pages <= len(report.names) + 6
