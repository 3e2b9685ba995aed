"""The same golf once more in plain numpy: every ball of a batch plays its stroke at the same time.

It stands beside the compiled engine to be raced against it and to be agreed with. It reads the same tables
(flights, strikes, putts, the solved value map with its plan) and shares no code with the kernels.
"""

from .course import Twin

__all__ = ["Twin"]
