"""Full sequences per second: the engine, the numpy twin of the same golf, and bare random numbers."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from benchmarks.cases import Case, case, plain_case, windy_case
from benchmarks.rows import Row, seconds
from benchmarks.twin import Twin
from simulator import load_hole
from simulator.engine import default_threads

GAUSSIANS_A_STROKE = 4
"""Standard normal numbers of a stroke: speed, start, curve, lie."""


def courses() -> list[Case]:
    """The holes of the demo course; the three demo holes where there is no course."""
    holes = Path(__file__).parents[1] / "holes"
    folders = [f for f in sorted(holes.iterdir()) if f.is_dir() and len(list(f.glob("*.toml"))) >= 9]
    names = sorted(folders[0].glob("*.toml")) if folders else ["withy-drain", "long-sluice", "eel-trap"]
    out = []
    for name in names:
        hole = load_hole(str(name))
        out.append(case(hole.name, hole))
    return out


def race(case: Case, sequences: int, targets: bool) -> list[Row]:
    """One hole, engine against twin against drawing."""
    action, threads = case.start.action, default_threads()
    one_s, one_cpu = seconds(lambda: case.play(action, 5, sequences, threads=1))
    all_s, _ = seconds(lambda: case.play(action, 5, sequences, threads=threads))
    ours = case.play(action, 5, sequences, threads=threads).score
    fewer = max(sequences // 4, 20_000)
    twin = Twin(case.board)
    twin_s, twin_cpu = seconds(lambda: twin.play(case.start, fewer, np.random.default_rng(6)))
    twin.drawn = twin.shots = 0
    theirs = twin.play(case.start, fewer, np.random.default_rng(6))
    twin_a_sequence, twin_cpu = twin_s / fewer, twin_cpu / fewer
    gaussians = GAUSSIANS_A_STROKE * twin.shots / fewer  # strokes but putts, a sequence
    count, generator = int(gaussians * sequences), np.random.default_rng(7)
    drawing_s, drawing_cpu = seconds(lambda: generator.standard_normal(count))
    apart = abs(ours.mean() - theirs.mean()) / np.hypot(
        ours.std() / sequences**0.5, theirs.std() / fewer**0.5
    )
    part = f"speed: {case.name}"
    return [
        Row(part, "sequences a second, one core", sequences / one_s, "/s"),
        Row(part, "the same by processor time", sequences / one_cpu, "/s"),
        Row(part, f"sequences a second, {threads} cores", sequences / all_s, "/s",
            1_000_000 if targets else None, True),
        Row(part, "numpy twin, one core", 1.0 / twin_a_sequence, "/s"),
        Row(part, "engine over twin, one core", twin_a_sequence * sequences / one_s, "times", 5.0, True),
        Row(part, "the same by processor time", twin_cpu * sequences / one_cpu, "times"),
        Row(part, f"engine over twin, {threads} cores", twin_a_sequence * sequences / all_s,
            "times", 9.0, True),
        Row(part, "mean scores of both apart", float(apart), "s.e.", 3.3),
        Row(part, "Gaussian numbers a sequence", gaussians, ""),
        Row(part, "one core over drawing those with numpy", one_s / drawing_s, "times"),
        Row(part, "the same by processor time", one_cpu / drawing_cpu, "times"),
    ]  # fmt: skip


def measure(short: bool) -> list[Row]:
    """Calm and plain, windy and wooded, and the course (not in the short form)."""
    count = 100_000 if short else 1_000_000
    rows = race(plain_case(), count, True)
    rows += race(windy_case(), count // 2, False)
    if short:
        return rows
    holes = courses()
    threads = default_threads()
    for cores in (1, threads):
        spent = 0.0
        for hole in holes:
            spent += seconds(lambda h=hole, k=cores: h.play(h.start.action, 5, count // 4, threads=k), 1)[0]
        part = f"speed: {len(holes)} demo holes"
        rows.append(Row(part, f"sequences a second, {cores} cores, mean over the holes",
                        count // 4 * len(holes) / spent, "/s"))  # fmt: skip
    spent = 0.0
    for hole in holes:
        spent += seconds(lambda h=hole: Twin(h.board).play(h.start, 20_000, np.random.default_rng(1)), 1)[0]
    rate = 20_000 * len(holes) / spent
    rows.append(Row(part, "numpy twin, one core", rate, "/s"))
    rows.append(Row(part, "engine over twin, one core", rows[-3].figure / rate, "times", 5.0, True))
    rows.append(Row(part, f"engine over twin, {threads} cores", rows[-3].figure / rate, "times", 9.0, True))
    return rows
