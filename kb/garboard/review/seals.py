"""What binds a reply to what its writer saw: a digest over a record and all that it rests on."""

import json
from collections.abc import Iterator

from garboard.records.reply import Reply, Seal
from garboard.review.canonical import digest_of
from garboard.review.covers import Cover

__all__ = ["moved_since", "seal_of"]


def seal_of(key: str, cover: Cover) -> Seal:
    """The seal of a record or written page, as it stands.

    Args:
        key: Its id, or the path of the page.
        cover: What a signature on it would cover.
    """
    seen = json.dumps([key, cover.whole, cover.saw], sort_keys=True, ensure_ascii=False)
    return Seal(key, cover.own, digest_of(seen))


def moved_since(reply: Reply, cover: Cover) -> Iterator[str]:
    """What is no longer as the writer of a reply saw it, in words; nothing where all is.

    Args:
        reply: With a seal.
        cover: Of the same record, as it stands now.
    """
    if reply.seal is None:
        yield "the REF line is missing, so nobody can tell what was seen"
        return
    now = seal_of(reply.seal.key, cover)
    if now == reply.seal:
        return
    if now.own != reply.seal.own:
        yield f"the words of {reply.seal.key} changed"
    told = False
    for name in sorted({*reply.saw, *cover.saw}):
        before, after = reply.saw.get(name), cover.saw.get(name)
        if reply.saw and before != after:
            told = True
            yield f"{name}: {before or 'not seen'} -> {after or 'gone'}"
    if now.own == reply.seal.own and not told:
        yield "something that it rests on changed, or the reply was not written to this pack"
