"""Surveys of a hole with a simulated laser: true places, readings with its error, whole yards."""

import math

LASER_SD = 1.0 / 1.96


def survey_data(rng, error_sd=LASER_SD, slip=None):
    """A random par 4 read from tee and landing zone, as the data of a readings file, and the true places."""
    truth = {
        "tee": (0.0, 0.0),
        "pine": (0.0, rng.uniform(210, 250)),
        "pond near": (rng.uniform(12, 25), rng.uniform(200, 225)),
        "pond far": (rng.uniform(14, 30), rng.uniform(240, 262)),
        "post": (-rng.uniform(20, 35), rng.uniform(205, 240)),
        "landing": (-rng.uniform(5, 15), rng.uniform(170, 195)),
        "flag": (rng.uniform(-15, 25), rng.uniform(350, 380)),
    }

    def read(a, b):
        exact = math.dist(truth[a], truth[b])
        return max(1, round(exact + rng.normal(0.0, error_sd)))

    def to(stand, point, side=None):
        row = {"to": point, "range_yd": read(stand, point)}
        return row if side is None else {**row, "side": side}

    def gap(a, b):
        return {"gap_yd": read(a, b), "between": [a, b]}

    tee = [to("tee", "pine"), to("tee", "pond near", "right"), to("tee", "pond far", "right"),
           to("tee", "post", "left"), to("tee", "landing", "left"), to("tee", "flag"),
           gap("pond near", "pine"), gap("post", "pine"), gap("pond far", "pine")]  # fmt: skip
    landing = [to("landing", p) for p in ("pine", "pond near", "pond far", "post", "flag")]
    landing[-1]["side"] = "right" if truth["flag"][0] >= 0 else "left"
    landing += [gap("post", "pine"), gap("pond near", "pine")]
    if slip is not None:
        where, row, by = slip
        rows = tee if where == "tee" else landing
        key = "range_yd" if "range_yd" in rows[row] else "gap_yd"
        rows[row][key] += by
    return {
        "name": "Simulated",
        "par": 4,
        "line": ["pine"],  # straight: round a bend many places share one station
        "stand": [{"name": "tee", "readings": tee}, {"name": "landing", "readings": landing}],
    }, truth
