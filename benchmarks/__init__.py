"""Measurements: how fast, how it grows, how sure (``python -m benchmarks``); how right (``validation.py``)."""
