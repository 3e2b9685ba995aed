"""Measurements: how fast, how it grows, how sure (``python -m benchmarks``); ``validation.py``: how right."""
