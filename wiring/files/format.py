"""The plan file, good enough a description to write one by hand.

A plan file ends in ``.underboard`` and is JSON (RFC 8259) in UTF-8: one object. The program writes each part,
wire, scene and panel on a line of its own, always in the same order, so that two versions of a plan can be
compared line by line; by hand any spacing will do. ::

    {
    "format": "underboard plan",
    "version": 1,
    "written_by": "underboard 0.1.0",
    "title": "Harbour quay",
    "habits": {"units": "us", "wire_size": "22 AWG"},
    "scenes": [
    {"id": "s1", "name": "Quay", "x_mm": 0, "y_mm": 0, "width_mm": 900, "height_mm": 400}
    ],
    "parts": [
    {"id": "p2", "kind": "battery-9v", "designation": "G1", "x_mm": 60, "y_mm": 350},
    {"id": "p3", "kind": "led-warm-white", "designation": "E1", "x_mm": 400, "y_mm": 80, "scene": "s1"}
    ],
    "wires": [
    {"id": "w4", "label": "W1", "start": ["p2", "+"], "end": ["p3", "A"], "colour": "RD"},
    {"id": "w5", "label": "W2", "start": ["p3", "K"], "end": ["p2", "-"], "bends": [[400, 350]]}
    ],
    "next_number": 6
    }

Only ``format`` and ``version`` must be there. A field left out has the value named here; the program leaves
out every field that has it.

Whole plan
    ``title`` ("Untitled plan"), ``author`` (""), ``written_by`` (told, not read), ``habits``, ``use``
    (for parts in no scene), ``board`` (corners of the benchwork, ``[[x, y], ...]`` in mm), ``tracks`` (a
    list of such lines), ``joists`` (a list), ``backdrop`` (none), ``scenes``, ``panels``, ``wireways``,
    ``parts``, ``wires``, ``battery_log`` (lists), ``prices`` (of one battery by the key of its type,
    ``{"alkaline AA": 0.9}``, of the kilowatt-hour as ``"mains kWh"``, and of one part as
    ``"led-warm-white: 20 mA, 470 Ω"``; in any currency), ``circuit_colours`` (by the id of a supply),
    ``next_number`` (the number the next new part, wire, scene, panel, wireway or group gets, as none is
    given twice; left out: one more than the highest used).
Habits
    ``units`` "metric" or "us" ("metric"), ``wire_size`` ("22 AWG"), ``slack_m`` spare length per wire end
    (0.1), ``ambient_c`` (20), ``drop_limit`` share of the source voltage that wires may lose (0.1),
    ``dim_lightness`` CIE 1976 lightness of 100 below which a lamp counts as too dim (50), ``fascia`` edge
    the builder stands at: "bottom", "top", "left", "right" ("bottom"), ``paper`` "A4", "Letter" or "A3"
    ("A4"), ``symbols`` of circuit drawings, "iec" for IEC 60617 or "ieee" for IEEE 315 ("iec"),
    ``currency`` prices are in, any short text ("").
Use
    ``hours_per_session`` (3), ``sessions_per_month`` (4); 24 and 31 mean always on; ``months_off`` without
    any session, 1 to 12 (``[]``); ``sessions_per_charge`` after which a rechargeable battery is charged
    (0: when it is empty). Where scenes on one battery differ, each scene's lamps and motors draw in its own
    sessions; all begin on the first day together.
Scene
    ``id``, ``name``; ``x_mm``, ``y_mm``, ``width_mm``, ``height_mm`` (0) of its rectangle, ``use``.
Panel
    ``id``, ``name``, ``x_mm``, ``y_mm``, ``width_mm``, ``height_mm``; ``spacing_mm`` that parts snap to, from
    the upper left corner (0: the plan's grid), ``room_mm`` clear depth behind the face (0: not known),
    ``lines`` of the track diagram and ``texts`` of the legends on the face (``[]``). Their places are in mm
    from the face's upper left corner, seen from the front; ``colour`` is one of IEC 60757 ("BK").
    A line has ``points`` (two or more) and ``width_mm`` (4); a text has ``text``, ``x_mm``, ``y_mm`` of its
    middle, ``high_mm`` of its capitals (3.5) and ``turn_deg`` clockwise (0).
Wireway
    ``id``, ``name``, ``points`` (its corners in mm, two or more), ``hole_mm`` diameter of its narrowest hole
    (20), ``drop_mm`` from it up to a terminal on the board (80), ``fascia_drop_mm`` from
    it to a terminal on a panel (null: as ``drop_mm``).
Joist
    ``start`` and ``end`` of its middle line in mm, ``width_mm`` as seen from above (20), ``depth_mm`` how far
    it reaches down (70).
Backdrop
    ``media`` "image/png", "image/jpeg" or "image/svg+xml"; ``data`` the picture as base64 (""), or ``path``
    of its file as seen from the plan's folder, with forward slashes (""); ``width_px``, ``height_px``;
    ``x_mm``, ``y_mm`` of its upper left corner (0), ``mm_per_px`` (1), ``turn_deg`` clockwise about that
    corner (0), ``strength`` from 0 to 1 with which it shows (0.45).
Part
    ``id``, ``kind`` (a key of the catalogue: ``underboard kinds`` lists them), ``designation`` without the
    minus sign ("E1"), ``x_mm``, ``y_mm`` of its centre, x to the right and y down as seen from above;
    ``turn_deg`` clockwise (0), ``label`` your own words (""), ``settings`` what differs from the kind's
    typical values, in SI units: ``{"resistance": 470}``, ``position`` while a session runs ("": as the kind
    usually stands), ``scene`` and ``panel`` ids ("": none), ``note`` (""), ``group`` ("": none): an id that
    stands nowhere else; parts with the same one are one thing, to be taken in hand together.
Wire
    ``id``, ``label`` ("W1"), ``start`` and ``end``: part id and terminal, ``["p3", "A"]``; ``size`` "22 AWG"
    or "0.5 mm2" ("22 AWG"), ``colour`` letters of IEC 60757 ("BK"), ``solid`` (false), ``length_m`` measured
    (null: as drawn), ``bends`` corners from start to end (``[]``), ``note`` (""), ``along`` the ids of
    the wireways it was led along, from start to end (``[]``), ``built`` once it is made and in place (false).

Entry of the battery log
    ``battery`` (part id), ``day`` "2026-03-01", ``event`` "fitted", "swapped", "charged" or "measured",
    ``volts_v`` measured (0), ``under_load`` everything of its scenes lit (true), ``note`` (""). Entries of a
    battery that is gone are kept.
Circuit colours
    ``plus`` of the feed or first leg, ``minus`` of the return or second leg, ``switched`` of the feed
    behind a switch: letters of IEC 60757 ("": as usual). Those of a supply that is gone are kept.

Ids are a letter and then letters, digits or underscores. No id, designation or wire label stands twice.
A part whose kind the catalogue lacks is kept, reported and left out of every figure.

History
    1   first version.
"""

FORMAT = "underboard plan"
VERSION = 1
SUFFIX = ".underboard"
LARGEST_BYTES = 64 * 1024 * 1024  # some hundred thousand parts; a file past this is not a home layout
