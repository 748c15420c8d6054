"""Search by scoring every mark: slow and sure, the measure of every faster way."""

from __future__ import annotations

import heapq
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from .hit import Hit, Scorer
from .reading import Progress

if TYPE_CHECKING:
    from .register import Register

__all__ = ["search"]


def search(
    register: Register,
    names: Iterable[str],
    top: int = 50,
    *,
    scorer: Scorer | None = None,
    progress: Progress | None = None,
) -> Iterator[tuple[str, list[Hit]]]:
    """For each name, the `top` closest of all marks, each of which is scored."""
    if scorer is None:
        from .scoring import standard

        scorer = standard()
    wanted = list(names)
    marks = [(mark, scorer.features(mark.text)) for mark in register.marks]
    for done, name in enumerate(wanted, 1):
        features = scorer.features(name)
        hits = (Hit(mark, scorer.score(features, other)) for mark, other in marks)
        # nsmallest keeps equal ones in the order they came, so in the order of the register.
        yield name, heapq.nsmallest(top, hits, key=lambda hit: -hit.closeness.overall)
        if progress:
            progress(done, len(wanted))
