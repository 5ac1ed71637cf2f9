"""A named area of the layout with its own use pattern."""

import msgspec

from wiring.plan.names import SceneId


class UsePattern(msgspec.Struct, frozen=True, omit_defaults=True):
    """How a scene is used: hours lit per session, sessions a month, months without any, charging.

    24 hours a session and 31 sessions a month mean always on.
    """

    hours_per_session: float = 3.0
    sessions_per_month: float = 4.0
    months_off: tuple[int, ...] = ()  # 1 to 12
    sessions_per_charge: int = 0  # after how many sessions a rechargeable is charged; 0 = when it is empty


class Scene(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A scene: a rectangle on the plan in millimetres, and how often it is lit."""

    id: SceneId
    name: str
    x_mm: float = 0.0
    y_mm: float = 0.0
    width_mm: float = 0.0
    height_mm: float = 0.0
    use: UsePattern = UsePattern()
