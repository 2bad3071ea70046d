"""Three invented vans with known bands, a drawn brochure, and hostile words wherever words come from outside."""

import hashlib
from pathlib import Path

from tests.dataset.made import settled, write
from tests.reading.drawn import Page

HOSTILE = '<script>window.harmed = 1</script><img src=x onerror="window.harmed = 2"><b>bold</b> "quoted" &amp;'
TITLES = {"ask": "Askerdale 20", "bram": "Bramwith 24", "cold": "Coldbeck 17"}
# as delivered, and with options: low, high. Ask and Bram overlap; Cold lies wholly below both as delivered.
BANDS = {"ask": [(80, 90), (85, 95)], "bram": [(60, 85), (60, 84)], "cold": [(10, 50), (10, 82)]}
DRY = {"ask": (5, 6), "bram": (20, 30), "cold": (40, 50)}
DAYS = {"ask": (4, 3, 6), "bram": (10, 8, 12), "cold": None}
WORDS_AT = (200, 100, 290, 112)  # x0, top, x1, bottom of the words on the drawn page


def brochure(folder: Path) -> Path:
    """Draw a page with a line of specification; nothing else stands near it."""
    page = Page()
    page.row(101, (72, "Fresh water tank"), (202, "100 litres, inside"))
    path = folder / "made.pdf"
    path.write_bytes(page.data())
    return path


def made_db(folder: Path, *, digest: str | None = None, path: Path | None = None) -> Path:
    """Write the dataset; ``digest`` and ``path`` of the brochure can be given wrong."""
    file = path or brochure(folder)
    data = file.read_bytes() if file.is_file() else b""
    documents = [
        {
            "doc_id": "d1", "path": str(file), "name": "made.pdf", "kind": "pdf", "pages": 1, "status": "read",
            "sha256": digest or hashlib.sha256(data).hexdigest(), "message": HOSTILE,
        },
        {"doc_id": "d2", "path": "gone.pdf", "name": "gone.pdf", "kind": "pdf", "status": "unreadable", "sha256": "ab",
         "message": "it is damaged"},
    ]  # fmt: skip
    rows, facts, scores, gaps, names = [], [], [], [], []
    for van, model in TITLES.items():
        names.append({"van_id": van, "doc_id": "d1", "maker": "Tolland", "model": model})
        fact = {"van_id": van, "doc_id": "d1", "page": 1, "availability": "standard", "found_by": "test"}
        x0, top, x1, bottom = WORDS_AT
        facts.append(
            {**fact, "fact_id": f"{van}-1", "field": "fresh_tank_l", "value_num": 100.0, "value_low": 100.0,
             "value_high": 100.0, "unit": "l", "printed": f"Fresh water tank: 100 litres {HOSTILE}", "x0": x0,
             "top": top, "x1": x1, "bottom": bottom, "form": "label_value"}
        )  # fmt: skip
        facts.append({**fact, "fact_id": f"{van}-2", "field": "season_claim", "value_text": HOSTILE,
                      "printed": HOSTILE, "form": "prose"})  # fmt: skip
        for equipment in ("standard", "optioned"):
            more = {"van": van, "equipment": equipment}
            rows += [
                settled("maker", value_text="Tolland", **more),
                settled("model", value_text=model, **more),
                settled("fresh_tank_l", value_num=100.0, value_low=100.0, value_high=100.0, unit="l",
                        availability="standard", **(more | {"fact_ids": [f"{van}-1"]})),
                settled("season_claim", value_text=HOSTILE, **(more | {"fact_ids": [f"{van}-2"]})),
                settled("gray_tank_heat", **(more | {"status": "missing", "reason": "not_stated"})),
            ]  # fmt: skip
            days = DAYS[van]
            known = {"value_num": days[0], "value_low": days[1], "value_high": days[2]} if days else {}
            rows.append(settled("heat_days_at_loss", unit="d", note="12 l over 3 l a day = 4 days.",
                                **(more | {"status": "derived" if days else "missing"} | known)))  # fmt: skip
        scores += _scores(van)
        gaps.append({"van_id": van, "ruleset": "deep_winter_wet", "field": "gray_tank_heat", "reason": "not_stated",
                     "points_at_stake": 9.0, "question": f"Ask the maker: is it heated? {HOSTILE}"})  # fmt: skip
    return write(
        folder / "made.duckdb", *rows, documents=documents, facts=facts, scores=scores, gaps=gaps, van_names=names,
        rulesets=[
            {"ruleset": name, "title": title, "criterion": "tank", "criterion_title": "The tank", "points_max": 100.0,
             "fields": ["fresh_tank_l", "gray_tank_heat"], "source": HOSTILE, "note": "What it asks."}
            for name, title in (("deep_winter_wet", "With water"), ("deep_winter_dry", "Without water"))
        ],
        fields=[
            {"field": name, "type": kind, "unit": unit, "kind": "water", "meaning": meaning}
            for name, kind, unit, meaning in (
                ("maker", "text", "", "who builds it"), ("model", "text", "", "its name"),
                ("fresh_tank_l", "number", "l", "capacity of the fresh-water tank"),
                ("season_claim", "text", "", "claim about the seasons as printed"),
                ("gray_tank_heat", "choice", "", "how the gray-water tank is kept from freezing"),
                ("heat_days_at_loss", "number", "d", "days of heat"),
            )
        ],
    )  # fmt: skip


def _scores(van):
    for ruleset in ("deep_winter_wet", "deep_winter_dry"):
        for place, equipment in enumerate(("standard", "optioned")):
            low, high = BANDS[van][place] if ruleset == "deep_winter_wet" else DRY[van]
            for criterion in ("total", "tank"):
                yield {
                    "van_id": van, "ruleset": ruleset, "equipment": equipment, "criterion": criterion,
                    "points_low": low, "points_high": high, "points_max": 100,
                    "because": f"Not known: gray_tank_heat. {HOSTILE}",
                }  # fmt: skip
