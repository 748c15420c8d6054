"""A cache folder of its own for every test, so that none depends on what the user's holds."""

from __future__ import annotations

from pathlib import Path

import pytest


@pytest.fixture(autouse=True)
def own_cache(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path_factory.mktemp("cache")
    monkeypatch.setattr("namescreen.register.store.user_cache", lambda: folder)
    return folder
