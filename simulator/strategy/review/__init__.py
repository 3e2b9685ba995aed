"""After the round: whether strokes went to the choice or to the swing."""

from .holes import HoleReview, RoundReview, review, review_round
from .notes import read_notes, read_round

__all__ = ["HoleReview", "RoundReview", "read_notes", "read_round", "review", "review_round"]
