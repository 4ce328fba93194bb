"""Companions who go by what they are: "the Secretary, who had made four", "our vicar is in the trees"."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence

from reviewkit.language.number_words import words_of

ROLES = frozenset(
    words_of(
        """secretary treasurer captain skipper chairman president vicar curate bishop chaplain rector pastor
        colonel major sergeant commodore brigadier professor headmaster doctor dentist pharmacist accountant
        lawyer solicitor judge mayor landlord butcher baker plumber electrician postman carpenter boss
        foreman manager neighbour neighbor"""
    )
)
_WHOSE = frozenset({"the", "our", "my"})


def roles(told: Iterable[Sequence[str]], acts: Collection[str]) -> set[str]:
    """Roles in sentences, as lists of their words, whose bearers do something; `acts` are words for that."""
    return {
        role
        for texts in told
        for at, word in enumerate(texts)
        if (role := word.removesuffix("'s")) in ROLES and _named(texts, at) and _acts(texts, at, acts)
    }


def _acts(texts: Sequence[str], at: int, acts: Collection[str]) -> bool:
    after = [*texts[at + 1 : at + 4], "", "", ""]
    # "The colonel's whiskers" is nobody's stroke.
    return after[0] in acts or (after[:2] == [",", "who"] and after[2] in acts)


def _named(texts: Sequence[str], at: int) -> bool:
    return at > 0 and texts[at - 1] in _WHOSE


def articles(texts: Sequence[str], names: Collection[str]) -> set[int]:
    """Indices of the "the" before a role that is among the `names`: it belongs to the name."""
    return {
        at - 1
        for at, word in enumerate(texts)
        if (role := word.removesuffix("'s")) in ROLES and role in names and _named(texts, at)
    }
