"""oldersund_ravnkol_2026.pdf: Nordic export brochure, borderless matrix over two pages, printed by Chromium.

The matrix is set with a CSS grid, so that the PDF has no rules at all. ~ stands for a no-break space.
"""
import sys

import art

HEADS = ("541", "599", "636 Kuling", "636 e")
ROWS = [
    ("Car", [
        ("Base vehicle", "Pallavro Trotter 33", "Pallavro Trotter 35", "Pallavro Trotter 42", "Pallavro e-Trotter 42"),
        ("Engine", "2.3 diesel, 103~kW", "2.3 diesel, 132~kW", "2.3 diesel, 132~kW", "Electric, 150~kW; traction battery 86~kWh"),
        ("Driven wheels", "Front", "Front", "All four", "Front"),
        ("Length over all", "5.41~m / 17~ft 9~in", "5.99~m / 19~ft 8~in", "6.36~m / 20~ft 10~in", "6.36~m / 20~ft 10~in"),
        ("Width without mirrors", "2.05~m / 6~ft 9~in", "2.05~m / 6~ft 9~in", "2.05~m / 6~ft 9~in", "2.05~m / 6~ft 9~in"),
        ("Height with roof vent", "2.59~m / 8~ft 6~in", "2.66~m / 8~ft 9~in", "2.79~m / 9~ft 2~in", "2.66~m / 8~ft 9~in"),
        ("Room to stand", "1.88~m / 6~ft 2~in", "1.92~m / 6~ft 4~in", "1.92~m / 6~ft 4~in", "1.86~m / 6~ft 1~in"),
        ("Axle to axle", "3.45~m / 136~in", "4.04~m / 159~in", "4.04~m / 159~in", "4.04~m / 159~in"),
        ("Permitted total mass", "3~300~kg / 7~275~lb", "3~500~kg / 7~716~lb", "4~250~kg / 9~370~lb", "4~250~kg / 9~370~lb"),
        ("Left for people and things", "520~kg / 1~146~lb", "455~kg / 1~003~lb", "840~kg / 1~852~lb", "590~kg / 1~301~lb"),
        ("Belted seats", "4", "4", "4", "2"),
        ("Places to sleep", "2", "2 + 1 child", "2", "2"),
        ("Road fuel tank", "75~L / 19.8~gal", "90~L / 23.8~gal", "90~L / 23.8~gal", "does not apply"),
    ]),
    ("Water", [
        ("Fresh water", "70~L / 18~gal", "100~L / 26~gal", "115~L / 30~gal", "100~L / 26~gal"),
        ("Fresh tank sits", "Indoors, rear bench", "Indoors, rear bench", "Indoors, rear bench", "In the heated double floor"),
        ("Grey water", "60~L / 16~gal", "85~L / 22~gal", "95~L / 25~gal", "80~L / 21~gal"),
        ("Grey tank sits", "Under the car", "Under the car", "In the double floor", "In the double floor"),
        ("Grey tank heating", "None", "12~V element", "Hot-water coil from the heater", "230~V element"),
        ("Grey tank lagged", "No", "Yes", "Yes", "Yes"),
        ("Toilet", "Dry, separating", "Cassette, 17~L / 4.5~gal", "Cassette, 17~L / 4.5~gal", "Cassette, 17~L / 4.5~gal"),
        ("Pipe run", "Part indoors, part under the floor", "Indoors", "In the double floor", "In the double floor"),
        ("Pipes lagged", "No", "Yes", "Yes", "Yes"),
        ("Pipes trace-heated", "No", "No", "Extra cost", "Yes"),
        ("Emptying valve", "Open to the weather", "Under a foam hood", "In a heated box", "In a heated box"),
        ("Frost drain set", "Extra cost", "Included", "Included", "Included"),
        ("Hot-water boiler", "None", "6~L / 1.6~gal", "10~L / 2.6~gal", "10~L / 2.6~gal"),
    ]),
    None,
    ("Warmth", [
        ("Heater", "Diesel air heater", "Diesel unit for air and water in one", "Diesel, water-borne, with convectors", "Heat pump with fan coils"),
        ("Heat delivered", "0.9 to 2.2~kW / 3~070 to 7~500~Btu/h", "4.0~kW / 13~600~Btu/h", "5.2~kW / 17~700~Btu/h", "3.5~kW / 11~900~Btu/h"),
        ("Fuel burnt at full heat", "0.28~L/h / 0.07~gal/h", "0.51~L/h / 0.13~gal/h", "0.66~L/h / 0.17~gal/h", "does not apply"),
        ("Own power at full heat", "29~W", "61~W", "88~W", "1~280~W"),
        ("Warm floor", "No", "No", "Yes, water loops", "Extra cost"),
        ("Bottled gas", "One bottle, 5~kg / 11~lb, for the cooker", "No gas on board", "No gas on board", "No gas on board"),
    ]),
    ("Electricity", [
        ("Living battery", "105~Ah gel", "150~Ah LFP, 12.8~V", "2 × 150~Ah LFP, 12.8~V, self-heating", "8.6~kWh LFP, self-heating"),
        ("Solar panels", "1 × 115~W", "2 × 115~W", "2 × 200~W", "2 × 200~W"),
        ("Inverter", "800~W, extra cost", "1~500~W", "2~500~W", "3~000~W"),
        ("Shore inlet, 230~V", "16~A", "16~A", "16~A", "16~A"),
        ("Charger from the alternator", "25~A", "50~A", "50~A", "does not apply"),
    ]),
    ("Skin", [
        ("Wall filling", "Hemp, 25~mm / 1~in", "Hemp, 25~mm / 1~in", "Hemp over reflective foil, 40~mm / 1.6~in", "Sprayed polyurethane foam, 45~mm / 1.8~in"),
        ("Wall resistance", "0.6~m²K/W", "0.6~m²K/W", "0.95~m²K/W", "1.6~m²K/W"),
        ("Where it is filled", "Walls, roof", "Walls, roof, floor", "Walls, roof, floor, doors", "Walls, roof, floor, doors"),
        ("Thermal break, ribs to lining", "No", "No", "Yes", "Yes"),
        ("Windows of the living room", "Single, tinted glass", "Double, acrylic", "Double, acrylic", "Double, acrylic"),
        ("Insulating mats, cab glass", "Extra cost", "Included", "Included", "Included"),
        ("Insulating mats, rear doors", "Not offered", "Extra cost", "Included", "Included"),
        ("Thermal grade, EN 1646-1", "1", "2", "3", "3"),
        ("Made for outside temperatures to", "0~°C / 32~°F", "−8~°C / 18~°F", "−27~°C / −17~°F", "−22~°C / −8~°F"),
    ]),
]
CSS = """
@page{size:A4;margin:0}*{box-sizing:border-box}body{margin:0;font:8.6pt/1.35 'Liberation Sans Narrow','Nimbus Sans Narrow',sans-serif;color:#24303a}
.page{width:210mm;height:297mm;padding:17mm 16mm;page-break-after:always;position:relative;overflow:hidden}
.page:last-child{page-break-after:auto}
.cover{padding:0}.cover svg{display:block;width:210mm;height:120mm}.cover .in{padding:9mm 24mm 0}
h1{font:300 62pt 'Lato',sans-serif;margin:0;color:#24303a}.maker{letter-spacing:.55em;font-size:11pt;color:#3b6f7d}
.cover p{font:11pt/1.6 'Lato',sans-serif;margin:8pt 0}
h2{font:300 24pt 'Lato',sans-serif;margin:0 0 7mm;color:#3b6f7d}
.g{display:grid;grid-template-columns:43mm repeat(4,1fr);column-gap:4mm;row-gap:1.35mm}
.g .h{font:700 12pt 'Lato',sans-serif;color:#24303a;padding-bottom:1mm}
.g .t{grid-column:1/6;text-transform:uppercase;letter-spacing:.3em;font-size:8pt;color:#3b6f7d;margin-top:3.2mm}
.g .l{color:#6a7780}.note{position:absolute;left:16mm;right:16mm;bottom:12mm;font-size:7.2pt;color:#6a7780}
"""


def grid(part):
    out = ['<div class="g"><span></span>' + "".join(f'<span class="h">{head}</span>' for head in HEADS)]
    for title, lines in part:
        out.append(f'<span class="t">{title}</span>')
        for label, *values in lines:
            out.append(f'<span class="l">{label}</span>' + "".join(f"<span>{value}</span>" for value in values))
    return "".join(out) + "</div>"


def page():
    cut = ROWS.index(None)
    text = f"""<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>Oldersund Ravnkol 2026</title><style>{CSS}</style></head><body>
<div class="page cover">{art.scene(840, 480, "shore", "#24303a", "#c9a24a")}<div class="in"><div class="maker">OLDERSUND</div><h1>Ravnkol</h1>
<p>Programme for model year 2026. Four vans from the ferry quay at Oldersund: 541, 599, 636 Kuling, 636 e.</p>
<p>A ravnkol is the black hour before the herring boats come in. Nobody here has ever bought a van for July. We have no July. We
have a long blue evening from October to March, a road that is ploughed when Torvald is awake, and a bakery at the far end of it.</p>
<p>The 541 is for those who turn round when it freezes. The 599 is for those who say they will, and then do not. The 636 Kuling and
the 636 e are winter-ready, each in its own manner: one burns a little diesel and asks for nothing else, the other is plugged in at the
quay and goes home silently.</p>
<p>Three of the four carry no gas. The kettle is electric, the oven too, and the space where the bottles were now holds boots.</p></div></div>
<div class="page"><h2>Measured and weighed</h2>{grid(ROWS[:cut])}<div class="note">Metric figures are exact, US figures are rounded from them. Masses for the car
with driver, full road fuel and one filled gas bottle where there is one. Extra cost: not in the price, can be ordered.</div></div>
<div class="page"><h2>Measured and weighed, continued</h2>{grid(ROWS[cut + 1:])}<div class="note">Heaters and gas are serviced by approved workshops and by the rules
of your country. Keep intake and exhaust free of snow, and a carbon monoxide alarm within earshot. Extra cost: not in the price, can be ordered. The temperature in the
last line is ours: it is what the car is made for with the heater running and the tanks filled. Oldersund AS, Ferjekaien 3, Oldersund.
Printed November 2025. Changes reserved.</div></div></body></html>"""
    return text.replace("~", "\u00a0")


if __name__ == "__main__":
    open(sys.argv[1], "w", encoding="utf-8").write(page())
