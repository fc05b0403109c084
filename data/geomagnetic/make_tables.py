#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Makes the coefficient tables of this folder from the published packages.

    npm pack geomagnetism@0.2.0 && tar xf geomagnetism-0.2.0.tgz
    apt-get download casacore-data-igrf && dpkg-deb -x casacore-data-igrf_12-1_all.deb igrf
    make_tables.py package/data igrf/usr/share/casacore/data/geodetic/IGRF/table.f0i .

A line of a table is: epoch, degree, order, g, h, and for a predictive model the yearly changes of g
and h. All are Schmidt semi-normalised, in nanotesla. Nothing runs this when building.
"""
import json
import pathlib
import struct
import sys

# Of table.f0i: one epoch each five years from 1900, little-endian doubles g10 g11 h11 g20 ...
IGRF_EPOCHS = 24
IGRF_FIRST_BYTE = 28
IGRF_BYTES_AN_EPOCH = 3152
IGRF_DEGREE = 13
WMM_DEGREE = 12

WMM = {
    "wmm-2015v2.json": ("wmm2015v2", "World Magnetic Model 2015 version 2"),
    "wmm-2020.json": ("wmm2020", "World Magnetic Model 2020"),
    "wmm-2025.json": ("wmm2025", "World Magnetic Model 2025"),
}


def figure(value):
    """The shortest digits; whole numbers without a point."""
    return repr(int(value)) if value == int(value) else repr(value)


def line(epoch, degree, order, *values):
    return " ".join([str(epoch), str(degree), str(order), *map(figure, values)])


def igrf_lines(data):
    assert len(data) >= IGRF_FIRST_BYTE + (IGRF_EPOCHS - 1) * IGRF_BYTES_AN_EPOCH
    for i in range(IGRF_EPOCHS):
        values = iter(struct.unpack_from(
            f"<{IGRF_DEGREE * (IGRF_DEGREE + 2)}d", data, IGRF_FIRST_BYTE + i * IGRF_BYTES_AN_EPOCH))
        rows = []
        for degree in range(1, IGRF_DEGREE + 1):
            for order in range(degree + 1):
                g = next(values)
                rows.append((degree, order, g, next(values) if order > 0 else 0))
        # The early epochs are published to degree 10 and padded with zeros.
        top = max(degree for degree, _, g, h in rows if g or h)
        for degree, order, g, h in rows:
            if degree <= top:
                yield line(1900 + 5 * i, degree, order, g, h)


def wmm_lines(model):
    assert model["n_max"] == model["n_max_sec_var"] == WMM_DEGREE
    names = ("main_field_coeff_g", "main_field_coeff_h", "secular_var_coeff_g",
             "secular_var_coeff_h")
    for degree in range(1, WMM_DEGREE + 1):
        for order in range(degree + 1):
            place = degree * (degree + 1) // 2 + order
            yield line(model["epoch"], degree, order, *(model[name][place] for name in names))


def write(folder, name, title, columns, lines):
    head = [f"# {title}, in nanotesla. See ../README.md for its origin.", f"# {columns}"]
    (folder / f"{name}.txt").write_text("\n".join(head + list(lines)) + "\n", encoding="ascii")


def main(wmm_folder, igrf_file, out_folder):
    out = pathlib.Path(out_folder)
    write(out, "igrf12", "International Geomagnetic Reference Field, 12th generation",
          "epoch degree order g h", igrf_lines(pathlib.Path(igrf_file).read_bytes()))
    for file, (name, title) in WMM.items():
        model = json.loads((pathlib.Path(wmm_folder) / file).read_text(encoding="ascii"))
        write(out, name, title, "epoch degree order g h g-change-a-year h-change-a-year",
              wmm_lines(model))


if __name__ == "__main__":
    main(*sys.argv[1:])
