"""The resettable fuse of the catalogue against a maker's sheet."""

from support.networks import kinds

# A maker's sheet of a radial family, 23 °C: hold A, trip A, least Ω when new, most Ω once tripped.
FAMILY = [
    (0.10, 0.20, 2.50, 7.50), (0.25, 0.50, 1.00, 3.00), (0.50, 1.00, 0.41, 1.17), (0.90, 1.80, 0.14, 0.47),
    (1.10, 2.20, 0.10, 0.27), (1.85, 3.70, 0.040, 0.11), (3.00, 6.00, 0.020, 0.08), (5.00, 10.0, 0.010, 0.05),
]  # fmt: skip


def test_the_one_in_the_catalogue_is_of_the_family():
    values = kinds()["resettable-fuse"].values({})
    ((trip_a, least_ohm, most_ohm),) = [row[1:] for row in FAMILY if row[0] == values["hold_a"]]
    assert values["trip_a"] == trip_a
    assert least_ohm < values["cold_ohm"] < most_ohm
