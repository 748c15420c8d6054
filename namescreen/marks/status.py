"""The status of a mark from an office's words or codes: live, pending, opposed, dead, or unknown.

The words are the values of MarkCurrentStatusCode in WIPO ST.66 and the everyday words of registers in the languages
that offices publish in (common practice, no single source; those of languages other than English from memory). A
proceeding that is only requested or pending ends no mark."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from ..expressions import expression

__all__ = ["DEAD", "LIVE", "OPPOSED", "PENDING", "STATUSES", "UNKNOWN", "most_informative", "opposed_since", "ran_out",
           "standing"]  # fmt: skip

UNKNOWN, LIVE, DEAD, PENDING, OPPOSED = STATUSES = ("unknown", "live", "dead", "pending", "opposed")
"""Registered and in force; applied for; applied for and opposed; ended or refused; not stated or not understood."""

_ENDED = (
    r"expired?|lapsed?|cancel\w*|refused|rejected|abandoned|removed|surrendered|revoked|invalid\w*|ended|ceased|"
    r"inactive|annulled|struck off|void|deleted|nullified|expunged"
)
_OPPOSITION = r"\b(?:opposed|oppositions?|widerspruch|oposic(?:ao|ion)|opposizione)\b|이의신청|異議"

# The first pattern found in the folded text decides.
_RULES = (
    # Proceedings that leave a registration in force.
    (
        r"\bregistration (?:cancellation|revocation|invalidity|surrender|renewal|merge) "
        r"(?:pending|requested|filed|proceedings?)|"
        r"\b(?:cancellation|revocation|invalidity|surrender|expunge?ment|rectification)s? "
        r"(?:action |proceedings? )?(?:pending|requested|filed|initiated|under way)|"
        r"\bunder (?:cancellation|revocation|invalidity)",
        LIVE,
    ),
    (
        r"\b(?:appeal|refusal|withdrawal) (?:is )?(?:pending|requested|filed)|\bprovisional refusal|\bappealable",
        PENDING,
    ),
    # Opposition that follows registration, as in Germany, Austria, Switzerland and Japan.
    (
        rf"^(?!.*\b(?:{_ENDED}|not registered|nicht eingetragen)\b)(?=.*\b(?:registered|eingetragen|in force|"
        rf"enregistree?|registrad[ao]|registrat[ao])\b)(?=.*{_OPPOSITION}).*",
        LIVE,
    ),
    (
        r"\bunopposed|\bnot opposed|\bopposition (?:dismissed|rejected|withdrawn|terminated|period)|"
        r"\bpara oposicao|\bfor opposition",
        PENDING,
    ),
    (
        r"\b(?:not|non|nicht) (?:registered|protected|filed|renewed|accepted|granted|proceeded|in force|"
        r"eingetragen)\b|"
        rf"\b(?:{_ENDED}|dead|withdrawn?|terminated|linked|merged|defaulted|not renewed)\b",
        DEAD,
    ),
    # French, Portuguese, Spanish, German, Italian.
    (
        r"\b(?:expiree?|radiee?|annulee?|rejetee?|retiree?|abandonnee?|dechue?|renoncee?|refusee?|irrecevable|"
        r"renonciation totale|rejet total|decheance totale)\b|"
        r"\b(?:extint[ao]|extinta|arquivad[ao]|indeferid[ao]|caducad[ao]|caduc[ao]|anulad[ao]|cancelad[ao]|"
        r"denegad[ao]|retirad[ao]|desistid[ao]|desistimiento|vencid[ao]|renunciad[ao]|expirad[ao]|extinguid[ao]|"
        r"nul[ao]|abandonad[ao]|rechazad[ao]|"
        r"extincao|arquivamento|indeferimento|caducidade|nulidade|renuncia)\b|"
        r"\b(?:geloscht|loschung|zuruckgewiesen|zuruckgenommen|erloschen|abgelaufen|nichtig|verfallen)\b|"
        r"\b(?:scadut[ao]|rifiutat[ao]|ritirat[ao]|decadut[ao]|respint[ao]|estint[ao])\b",
        DEAD,
    ),
    (r"거절|소멸|무효|취하|포기|각하|拒絶|消滅|取下|放棄|無効|却下|取消", DEAD),
    (_OPPOSITION, OPPOSED),
    (
        r"\bapplication\b|\bpending\b|\bexamin\w*|\bpublished for opposition|\badvertised\b|\bformali[sz]ed\b|"
        r"\bsearched\b|\ballowed\b|\ballowance\b|\bapproved\b|\baccepted\b|\breceived\b|\bfiled\b|\bnew\b|"
        r"\babeyance\b|\bawaiting\b|\bsuspended\b|\bunder \w+",
        PENDING,
    ),
    (r"\bregistration (?:pending|requested|fee due)|\bdemande\b|\bdeposee?\b|\bpedido\b|\bsolicitud\b|"
     r"\bsolicitad[ao]\b|\ben tramite\b|\bem exame\b|\banmeldung\b|\bangemeldet\b|\bdepositat[ao]\b|\bdomanda\b|"
     r"\bsobrestamento\b|"
     r"\bdeferid[ao]\b|\bdeferimento\b|출원|공고|심사|出願|審査", PENDING),
    (
        r"\b(?:live|alive|active|registered|registration|protected|in force|renewed|granted|protection)\b|"
        r"\b(?:enregistree?|renouvelee?|en vigueur|registrad[ao]|concedid[ao]|concessao|vigente|em vigor|en vigor|"
        r"renovad[ao]|prorrogad[ao]|prorrogacao|registrat[ao])\b|\beingetragen|등록|登録",
        LIVE,
    ),
    (r"\bpublished\b|\bpubliee?\b|\bpublicad[ao]\b|\bpublicacao\b|\bveroffentlicht\b|\bpubblicat[ao]\b", PENDING),
)  # fmt: skip
_CLOSED = r"\bopposition (?:dismissed|rejected|withdrawn|terminated|period)"
_RAN_OUT = expression(
    r"\b(?:expired?|lapsed?|not renewed|renewal due|late renewal|expiree?|caducad[ao]|expirad[ao]|vencid[ao]|"
    r"scadut[ao]|abgelaufen)\b"
)
_ACCENTS = str.maketrans("àâäáãåçéèêëíìîïñóòôöõúùûüýÿ", "aaaaaaceeeeiiiinooooouuuuyy")


def most_informative(statuses: Iterable[str], office: str = "") -> str:
    """The first status text that is understood, else the first."""
    given = [status for status in statuses if status]
    return next((status for status in given if standing(status, office) != UNKNOWN), given[0] if given else "")


@lru_cache(maxsize=4096)
def standing(status: str, office: str = "") -> str:
    """One of `STATUSES` for an office's word or code; `office` is its ST.3 code, for codes that are an office's own.

    Of a status with a reason behind a colon ("Removed: renewal fee not paid") the part before it counts.
    """
    if office == "US":
        from . import uspto  # with all that reads its files

        if known := uspto.standing(status):
            return known
    plain = _plain(status)
    return next((result for pattern, result in _RULES if re.search(pattern, plain)), UNKNOWN)


def _plain(status: str) -> str:
    plain = re.sub(r"(?<=[a-z])(?=[A-Z])", " ", status.partition(":")[0] or status).casefold().translate(_ACCENTS)
    return " ".join(re.sub(r"[_\-–/]+", " ", plain).split())


@lru_cache(maxsize=4096)
def opposed_since(status: str) -> bool:
    """Whether the words of a registered mark's status say that it is opposed."""
    plain = _plain(status)
    return bool(re.search(_OPPOSITION, plain)) and not re.search(r"\b(?:unopposed|not opposed)|" + _CLOSED, plain)


@lru_cache(maxsize=4096)
def ran_out(status: str, office: str = "") -> bool:
    """Whether the words of a dead mark's status say that its term ran out, and nothing else ended it: then it can be
    renewed for some months (Paris Convention, article 5bis)."""
    if office == "US":
        from . import uspto

        if uspto.standing(status):
            return status == uspto.EXPIRED
    return bool(_RAN_OUT.search(_plain(status)))
