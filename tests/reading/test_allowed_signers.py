"""Who may sign with which key: a strict part of the secure shell's own form."""

from datetime import date

import pytest

from garboard.reading.allowed_signers import read_signers

KEY = "AAAAC3NzaC1lZDI1NTE5AAAAIDTFinFo8WEG42jJrXKdX2JRFXgVh9EmLe3cT5pIZn/W"
PEOPLE = {"lead", "reviewer-1"}


def test_keys_of_every_sort_in_use_are_read_with_comments_and_empty_lines() -> None:
    kinds = ("ssh-ed25519", "ssh-rsa", "ecdsa-sha2-nistp256", "sk-ssh-ed25519@openssh.com")
    text = "# ours\n\n" + "".join(f"lead {kind} {KEY} on the desk\n" for kind in kinds)

    found = read_signers(text, PEOPLE)

    assert [one.kind for one in found.keys] == list(kinds)
    assert found.unread == ()


def test_a_key_handed_to_ssh_keygen_is_of_one_person_and_for_this_use_alone() -> None:
    found = read_signers(f'lead valid-after="20310101" ssh-ed25519 {KEY}', PEOPLE)

    assert found.keys[0].line == f'lead namespaces="garboard" ssh-ed25519 {KEY}'
    assert found.of("reviewer-1", date(2031, 3, 1)) == ()


@pytest.mark.parametrize(
    "line",
    [
        f"* ssh-ed25519 {KEY}",
        f"lead,reviewer-1 ssh-ed25519 {KEY}",
        f"!lead ssh-ed25519 {KEY}",
        f"-lead ssh-ed25519 {KEY}",
        f"lead cert-authority ssh-ed25519 {KEY}",
        f"lead verify-required ssh-ed25519 {KEY}",
        f'lead valid-before="" ssh-ed25519 {KEY}',
        f'lead valid-before="2031-03-12" ssh-ed25519 {KEY}',
        f'lead namespaces="" ssh-ed25519 {KEY}',
        f"nobody ssh-ed25519 {KEY}",
        "lead ssh-ed25519",
        "lead ssh-ed25519 ----",
    ],
)
def test_what_is_not_the_strict_part_gives_no_key_and_is_told(line: str) -> None:
    found = read_signers(line, PEOPLE)

    assert found.keys == ()
    assert [where.line for where, _ in found.unread] == [1]


def test_of_very_many_unreadable_lines_the_first_are_told() -> None:
    assert len(read_signers("what\n" * 10_000, PEOPLE).unread) == 20
