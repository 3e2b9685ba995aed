"""Surveys of a hole with a simulated laser: true places, readings with its error, whole yards."""

import math

LASER_SD = 1.0 / 1.96


def laser(truth, rng, error_sd=LASER_SD):
    """Functions that read a range and a gap between true places, in whole yards."""

    def read(a, b):
        exact = math.dist(truth[a], truth[b])
        return max(1, round(exact + rng.normal(0.0, error_sd)))

    def to(stand, point, side=None):
        row = {"to": point, "range_yd": read(stand, point)}
        return row if side is None else {**row, "side": side}

    def gap(a, b):
        return {"gap_yd": read(a, b), "between": [a, b]}

    return to, gap


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

    to, gap = laser(truth, rng, error_sd)
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


def dogleg_data(rng):
    """A random dogleg read from tee and corner, and the true places.

    The pond is short of the corner and right of the first leg: seen from the corner it may lie on either side of
    the sight to the flag. Sand and oak lie right and left of the second leg.
    """
    turn = math.radians(rng.uniform(20, 60)) * rng.choice([-1, 1])
    bend, left = rng.uniform(200, 240), rng.uniform(110, 170)

    def beyond(along, right):
        return (along * math.sin(turn) + right * math.cos(turn),
                bend + along * math.cos(turn) - right * math.sin(turn))  # fmt: skip

    truth = {
        "tee": (0.0, 0.0), "corner": (0.0, bend), "flag": beyond(left, 0.0),
        "sand": beyond(rng.uniform(60, 100), rng.uniform(12, 30)),
        "oak": beyond(rng.uniform(40, 90), -rng.uniform(12, 30)),
        "pond": (rng.uniform(12, 30), rng.uniform(140, 180)),
    }  # fmt: skip
    to, gap = laser(truth, rng)
    tee = [to("tee", "corner"), to("tee", "flag", "right" if turn > 0 else "left"), to("tee", "pond", "right"),
           gap("pond", "corner")]  # fmt: skip
    corner = [to("corner", "flag"), to("corner", "sand", "right"), to("corner", "oak", "left"),
              to("corner", "pond", "right"), gap("sand", "flag"), gap("oak", "flag")]  # fmt: skip
    return {
        "name": "Simulated",
        "par": 4,
        "line": ["corner", "flag"],
        "stand": [{"name": "tee", "readings": tee}, {"name": "corner", "readings": corner}],
    }, truth
