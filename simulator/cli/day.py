"""The day as typed: a group of options that several commands share."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from . import options as o

if TYPE_CHECKING:
    from ..conditions import Conditions
    from ..hole import Hole
    from ..strategy.result import Start


class Air(NamedTuple):
    """Wind, air and ground as typed, for a shot on no hole in particular."""

    wind: o.WindOption = None
    wind_at: o.WindAtOption = None
    temperature: o.TemperatureOption = None
    altitude: o.AltitudeOption = None
    pressure: o.PressureOption = None
    humidity: o.HumidityOption = None
    firmness: o.FirmnessOption = None

    def read(self) -> Conditions:
        """Conditions; wind words refer to the shot."""
        from ..conditions import conditions_from

        return conditions_from(**self._asdict())


class Day(NamedTuple):
    """The day as typed, in the order of `conditions_from`."""

    wind: o.WindOption = None
    wind_at: o.WindAtOption = None
    gusts: o.GustsOption = None
    swing: o.SwingOption = None
    temperature: o.TemperatureOption = None
    altitude: o.AltitudeOption = None
    pressure: o.PressureOption = None
    humidity: o.HumidityOption = None
    firmness: o.FirmnessOption = None
    stimp: o.StimpOption = None

    def read(self, hole: Hole, start: Start | None) -> Conditions:
        """Conditions, directions told from the shot (with --from) or from the first leg of the line."""
        from math import atan2, degrees

        from ..conditions import conditions_from

        along = 0.0
        if start is not None:
            along = degrees(atan2(hole.pin.x_yd - start.x_yd, hole.pin.y_yd - start.y_yd))
        return conditions_from(*self, along_deg=along, y_bearing_deg=hole.bearing_deg)
