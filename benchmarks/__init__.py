"""Measurements: how fast, how it grows, how sure (``python -m benchmarks``) and how right (``validation.py``)."""
