"""Turn labels/*.lab into gold.csv, gold_scanned.csv and expected.csv.

A label file holds what is printed, in the units printed; the arithmetic is done here. Lines:

    doc FILE                     the document
    status WORD                  the status it should get
    gold scanned                 these labels go to gold_scanned.csv (image-only pages)
    vans A=Model; B=Model        only where the document has more than one van
    field page [VANS] [availability] : value | value ...

VANS are letters (default: all); one value stands for all of them, else one value per van, `-` for none.
Availability: std (default), opt, na, uns. `page` is `.` for text.
"""
import csv
import re
from pathlib import Path

HERE = Path(__file__).parent
AVAILABILITY = {"std": "standard", "opt": "optional", "na": "not_available", "uns": "unstated"}
FACTORS = {
    "gal": 3.785411784, "igal": 4.54609, "l": 1, "m": 1000, "mm": 1, "cm": 10, "in": 25.4, "lb": 0.45359237,
    "kg": 1, "btu": 0.2930710702, "kw": 1000, "w": 1, "ah": 1, "wh": 1, "kwh": 1000, "a": 1, "galh": 3.785411784,
    "lh": 1, "r": 0.1761101837, "rsi": 1, "c": 1, "": 1,
}
TEXT = {"maker", "model", "chassis", "season_claim"}


def number(text):
    """`2*175 w`, `19ft7.5`, `-4 F`, `1.75 in` in the canonical unit, 4 significant figures."""
    text = text.strip().replace(",", "")
    if feet := re.fullmatch(r"(\d+)ft([\d.]*)", text):
        value = int(feet[1]) * 304.8 + float(feet[2] or 0) * 25.4
    else:
        found = re.fullmatch(r"(-?[\d.]+(?:\*[\d.]+)*)\s*([A-Za-z]*)", text)
        if not found:
            raise ValueError(f"no number: {text!r}")
        value = 1.0
        for factor in found[1].split("*"):
            value *= float(factor)
        unit = found[2].lower()
        value = (value - 32) / 1.8 if unit == "f" else value * FACTORS[unit]
    return f"{float(f'{value:.4g}'):g}" if abs(value) < 1e4 else f"{float(f'{value:.4g}'):.0f}"


def canonical(field, value):
    value = value.strip()
    if field in TEXT or re.fullmatch(r"[a-z_+]+", value):
        return "+".join(sorted(value.split("+"))) if field not in TEXT else value
    return number(value)


def read(path):
    """(document, status, scanned?, rows) of one label file."""
    doc, status, scanned, vans, rows = None, "read", False, {"": ""}, []
    for line_number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        line = line.strip()
        if not line or line.startswith("#"):
            continue
        word, _, rest = line.partition(" ")
        if word == "doc":
            doc = rest
        elif word == "status":
            status = rest
        elif word == "gold":
            scanned = rest == "scanned"
        elif word == "vans":
            vans = dict(pair.strip().split("=", 1) for pair in rest.split(";"))
        else:
            try:
                head, _, values = line.partition(" : ")
                field, page, *more = head.split()
                availability = "standard"
                letters = list(vans)
                for item in more:
                    if item in AVAILABILITY:
                        availability = AVAILABILITY[item]
                    else:
                        letters = list(item)
                values = values.split(" | ")
                if len(values) == 1:
                    values = values * len(letters)
                if len(values) != len(letters):
                    raise ValueError("values do not match the vans")
                for letter, value in zip(letters, values):
                    if value.strip() != "-":
                        rows.append([doc, vans[letter], field, canonical(field, value), availability,
                                     "" if page == "." else page])
            except (ValueError, KeyError) as problem:
                raise SystemExit(f"{path.name}:{line_number}: {problem}: {line}")
    return doc, status, scanned, rows


def write(path, head, rows):
    with open(path, "w", newline="", encoding="utf-8") as out:
        csv.writer(out, lineterminator="\n").writerows([head, *rows])


def main():
    head = ["doc", "van", "field", "value", "availability", "page"]
    gold, scans, expected = [], [], {}
    for path in sorted((HERE / "labels").glob("*.lab")):
        doc, status, scanned, rows = read(path)
        (scans if scanned else gold).extend(rows)
        expected.setdefault(doc, status)
    for rows in (gold, scans):
        keys = [tuple(row[:5]) for row in rows]
        for key in {key for key in keys if keys.count(key) > 1}:
            print("twice:", *key)
    write(HERE.parent / "gold.csv", head, gold)
    write(HERE.parent / "gold_scanned.csv", head, scans)
    write(HERE.parent / "expected.csv", ["doc", "status"], sorted(expected.items()))
    print(f"{len(gold)} gold rows, {len(scans)} for scans, {len(expected)} documents")


if __name__ == "__main__":
    main()
