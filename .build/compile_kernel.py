"""Compiles namescreen/native/*.c while the package is built, where there is a C compiler.

Without one, or where it fails, the package is built without the kernel: the same results, from numpy and Python, later.
"""

from __future__ import annotations

import hashlib
import os
import shlex
import shutil
import subprocess
import sys
import sysconfig
import tempfile
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

LIBRARY, CHECKSUM = "namescreen/native/native.so", "namescreen/native/native.sha256"
FLAGS = ("-O3", "-std=c11", "-fPIC", "-shared", "-ffp-contract=off")
"""No fused multiply and add: results are those of the other path to the last bit."""


class CompileKernel(BuildHookInterface):  # type: ignore[type-arg]
    """Adds the compiled kernel to a wheel, or puts it into the checkout that is installed as it stands."""

    PLUGIN_NAME = "custom"

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Compile; say so where that fails, and go on."""
        if version == "editable":
            compiled(Path(self.root), Path(self.root, LIBRARY))
            return
        self._folder = tempfile.mkdtemp()
        library = Path(self._folder, "native.so")
        if compiled(Path(self.root), library):
            platform = sysconfig.get_platform().replace("-", "_").replace(".", "_")
            build_data["tag"] = f"py3-none-{platform}"
            build_data["pure_python"] = False
            build_data["force_include"] |= {str(library): LIBRARY, str(library.with_suffix(".sha256")): CHECKSUM}

    def finalize(self, version: str, build_data: dict[str, Any], artifact_path: str) -> None:
        """Remove what was compiled beside the wheel."""
        if version != "editable":
            shutil.rmtree(self._folder, ignore_errors=True)


def compiled(root: Path, library: Path) -> bool:
    """Compile the kernel to `library`, in place of what stood there, and write its sha256 beside it, which is compared
    before it is loaded; False, with a remark, where that cannot be."""
    library.unlink(missing_ok=True)
    sources = sorted(map(str, root.glob("namescreen/native/*.c")))
    beside = library.with_suffix(".part")
    command = [*shlex.split(os.environ.get("CC", "cc")), *FLAGS, "-o", str(beside), *sources, "-lm"]
    try:
        subprocess.run(command, check=True, capture_output=True, text=True)
    except (OSError, subprocess.CalledProcessError) as error:
        sys.stderr.write(f"namescreen is built without its kernel: {getattr(error, 'stderr', '') or error}\n")
        return False
    library.with_suffix(".sha256").write_text(hashlib.sha256(beside.read_bytes()).hexdigest() + "\n", "ascii")
    beside.replace(library)
    return True
