"""Cases for temperatures that no air aboard has: degrees typed as kelvin, kelvin as degrees."""

from collections.abc import Iterator, Mapping

from garboard.calc.method import Expect, Proof

__all__ = ["off_deck"]


def off_deck(prefix: str, call: Mapping[str, str], result: str, *names: str) -> Iterator[Proof]:
    """Refusals of each temperature of a call, too cold and too hot.

    Args:
        prefix: What the names of the cases begin with.
        call: A call that is answered as it stands.
        result: The result asked for.
        names: Its temperatures.

    Yields:
        Two refusals for each.
    """
    slips = (("cold", "20 K(a)", "are these degrees?"), ("hot", "293 degC", "are these kelvin?"))
    for name in names:
        for word, text, reason in slips:
            yield Proof(
                name=f"{prefix}-{name.lower().replace('_', '-')}-too-{word}",
                call={**call, name: text},
                result=result,
                value=reason,
                source="definition",
                seen="constructed",
                basis="constructed",
                expect=Expect.REFUSE,
            )
