"""Rows of text under heads, as a pipe gets them."""

from specscan.cli.consoles import print_rows


def test_piped_rows_stand_under_their_heads_and_nothing_in_them_acts(capsys):
    print_rows(("points", "van", "question"), [("9.5", "Tundra 漢", "How much?"), ("12.0", "A\x1b[2J\nB", "Why?")])
    assert capsys.readouterr().out.splitlines() == [
        "points  van        question",
        "   9.5  Tundra 漢  How much?",
        "  12.0  A␛[2J␊B    Why?",
    ]
