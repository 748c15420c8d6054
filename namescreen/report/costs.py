"""The costs worksheet: sums of the figures that the maker entered, against the budget.

No fee is shipped: fees change, and differ by office, class and way of filing. Currencies are never converted.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from decimal import Decimal

from .model import CostItem, Report

__all__ = ["Line", "Worksheet", "money", "worksheet"]

OLD_AFTER = 365
"""Days after which a figure is called old (common practice, no source: offices revise fees about once a
year)."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the worksheet: its amount, and what the maker should see to before relying on it."""

    item: CostItem
    currency: str
    amount: Decimal
    remark: str


@dataclass(frozen=True, slots=True)
class Worksheet:
    """Lines, totals by currency in the order of their first use, and what is left of the budget.

    `left` is None without a budget, or when some figure is in another currency than the budget.
    """

    lines: tuple[Line, ...]
    totals: tuple[tuple[str, Decimal], ...]
    left: Decimal | None


def worksheet(report: Report) -> Worksheet:
    """The sums of the report's cost figures."""
    costs = report.costs
    lines = []
    totals: dict[str, Decimal] = {}
    for item in costs.items:
        currency = item.currency or costs.currency
        amount = Decimal(item.figure) * Decimal(item.times)
        totals[currency] = totals.get(currency, Decimal(0)) + amount
        lines.append(Line(item, currency, amount, _remark(item, report.date)))
    left = None
    if costs.budget and set(totals) <= {costs.currency}:
        left = Decimal(costs.budget) - totals.get(costs.currency, Decimal(0))
    return Worksheet(tuple(lines), tuple(totals.items()), left)


def money(amount: Decimal, currency: str = "") -> str:
    """An amount in figures: whole, or with two decimals; thousands set apart, the currency's code before
    it."""
    amount = amount.quantize(Decimal("0.01"))
    shown = f"{amount:,.0f}" if amount == amount.to_integral_value() else f"{amount:,.2f}"
    return f"{currency} {shown}".strip()


def _remark(item: CostItem, today: str) -> str:
    missing = [word for word, value in (("date", item.dated), ("source", item.source)) if not value]
    if missing:
        return f"no {' and no '.join(missing)} stated"
    age = (datetime.date.fromisoformat(today) - datetime.date.fromisoformat(item.dated)).days
    if age < 0:
        return "dated after this report"
    return "more than a year old: look again" if age > OLD_AFTER else ""
