"""After the round: whether strokes went to the choice or to the swing."""

from .adding import RoundReview
from .holes import HoleReview
from .notes import read_notes
from .numbered import read_round
from .working import review, review_round

__all__ = ["HoleReview", "RoundReview", "read_notes", "read_round", "review", "review_round"]
