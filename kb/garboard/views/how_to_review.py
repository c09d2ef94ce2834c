"""The page for reviewers: what they are sent, how they answer, and what becomes of it."""

from garboard.book import Book
from garboard.records.finding import Danger
from garboard.records.reply import SCOPES, Label
from garboard.records.signoff import Verdict
from garboard.views.draft import Draft
from garboard.views.page import Bullets, Facts, Heading, Paragraph

__all__ = ["how_to_review_draft"]

GOT = (
    "In short: what changes, its class, the worst that can come of it, the number that loses most margin.",
    "What and why, in the author's own words, with the decision behind it.",
    "The worst credible outcome: the hazards at the parts it touches, with what stands in between.",
    "Numbers before and after with their limits and margins, most margin lost first; what is assumed"
    " says so.",
    "Whatever rests on it: records, procedures, safety messages, alarms, cards, tests, and the other"
    " parts of the same kind.",
    "Objections and open findings, to the letter; what nobody has checked so far.",
    "Questions to you. You may leave any of them open; say so under NOT CHECKED.",
    "Digests of what you see. Your answer is bound to them.",
)
BECOMES = (
    "Each finding becomes a record of its own, raised, in your words, against what you reviewed.",
    "An objection is shown at once, marked as not confirmed. It can only make things worse.",
    "That you checked something counts only when somebody on board has confirmed your reply. Your"
    " mail is kept as it came.",
    "When something that you saw has moved meanwhile, your reply can no longer be confirmed. You are"
    " told what moved, and get a new pack.",
    "No machine signs for you, and nobody else can take your objection back.",
)
FILL: tuple[tuple[Label, str], ...] = (
    (Label.REF, "leave it as it is: it says what you saw"),
    (Label.NAME, "your key, as the people on board know it; no name and no address"),
    (Label.DATE, "the day you looked at it, such as 2031-10-02"),
    (Label.AS, "in what capacity you judge"),
    (Label.VERDICT, f"one of: {', '.join(Verdict)}"),
    (Label.CHECKED, f"what you looked at: {', '.join(SCOPES)}"),
    (Label.ALSO, "anything else that you looked at, in words"),
    (Label.NOT_CHECKED, "what you did not look at, so that the page can say so"),
    (Label.WORDS, "your objection or comment; an objection counts only with words"),
    (Label.WHERE, "of a finding: tags or ids, and words"),
    (Label.SEEN, "of a finding: what you saw, kept to the letter"),
    (Label.DANGER, f"of a finding: {', '.join(Danger)}"),
    (Label.SAW, "leave it as it is: what it rested on"),
)


def how_to_review_draft(book: Book) -> Draft:
    """What a reviewer gets and how to answer."""
    draft = Draft(book, "manual/how-to-review", "How to review", "manual")
    draft.add(
        Paragraph(
            (
                "You are sent one file by mail, a review pack: plain text for any mail program, or one"
                " page for a browser, with the same words. You need nothing else and install nothing.",
            )
        ),
        Heading("What stands in it, in this order"),
        Bullets(tuple((one,) for one in GOT), ordered=True),
        Heading("How to answer"),
        Paragraph(
            (
                "At its end is a form. Answer the mail, write behind the colons and put an x between the"
                " brackets. Quoting, folded lines and odd spaces do no harm. For one more finding copy a"
                " FINDING block. What cannot be read is kept, and you are asked.",
            )
        ),
        Facts(tuple((str(label), (words,)) for label, words in FILL)),
        Heading("What becomes of your answer"),
        Bullets(tuple((one,) for one in BECOMES)),
        Heading("On board"),
        Facts(
            (
                ("send", ("garboard pack ID --to FILE",)),
                ("take in", ("garboard intake FILE --by PERSON",)),
                ("confirm", ("garboard sign --reply FILE --entered-by PERSON",)),
            )
        ),
    )
    return draft
