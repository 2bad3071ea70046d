"""Small vector drawings for the brochures: a side view of a van, a scene around it. No figures, no words."""


def van(x, y, s, body, trim="#333", glass="#cfe0ea", flip=False):
    """A panel van whose wheels stand on (x, y); s is the scale (1 is about 200 units long)."""
    turn = f"translate({x},{y}) scale({-s if flip else s},{s})"
    return (f'<g transform="{turn}"><path d="M0,-20 L0,-84 Q0,-92 8,-92 L140,-92 Q150,-92 156,-84 L176,-52 '
            f'L196,-44 Q202,-42 202,-34 L202,-18 Q202,-14 198,-14 L4,-14 Q0,-14 0,-20 Z" fill="{body}"/>'
            f'<rect x="0" y="-40" width="178" height="5" fill="{trim}"/>'
            f'<path d="M146,-82 L168,-52 L142,-52 L142,-82 Z" fill="{glass}"/>'
            f'<rect x="20" y="-78" width="34" height="20" rx="3" fill="{glass}"/>'
            f'<rect x="88" y="-78" width="40" height="20" rx="3" fill="{glass}"/>'
            f'<rect x="76" y="-86" width="1.6" height="70" fill="{trim}"/>'
            f'<rect x="134" y="-86" width="1.6" height="70" fill="{trim}"/>'
            f'<rect x="30" y="-97" width="46" height="5" rx="2" fill="{trim}"/>'
            f'<circle cx="42" cy="-14" r="14" fill="#222"/><circle cx="42" cy="-14" r="6" fill="#bbb"/>'
            f'<circle cx="164" cy="-14" r="14" fill="#222"/><circle cx="164" cy="-14" r="6" fill="#bbb"/></g>')


def spruce(x, y, h, colour):
    tiers = "".join(f'<path d="M{x},{y - h * top} L{x - h * wide},{y - h * low} L{x + h * wide},{y - h * low} Z" '
                    f'fill="{colour}"/>' for top, low, wide in ((1, .62, .17), (.78, .36, .23), (.55, .08, .3)))
    return tiers + f'<rect x="{x - h * .03}" y="{y - h * .08}" width="{h * .06}" height="{h * .08}" fill="#4b3a2f"/>'


def hut(x, y, s, wall, roof):
    return (f'<g transform="translate({x},{y}) scale({s})"><rect x="0" y="-50" width="80" height="50" fill="{wall}"/>'
            f'<path d="M-10,-48 L40,-90 L90,-48 Z" fill="{roof}"/><rect x="30" y="-28" width="18" height="28" '
            f'fill="#3a2b22"/><rect x="56" y="-38" width="14" height="14" fill="#ffd98a"/></g>')


def scene(width, height, kind, body, trim="#333"):
    """One of four scenes as an SVG document: shore, forest, plateau, night."""
    ground = height * .78
    w, g = width, ground
    parts = []
    if kind == "shore":
        parts += [f'<rect width="{w}" height="{height}" fill="#dfeaf0"/>',
                  f'<rect y="{g * .72}" width="{w}" height="{g * .3}" fill="#8fb4c4"/>',
                  f'<path d="M0,{g * .74} Q{w * .2},{g * .5} {w * .42},{g * .73} T{w},{g * .66} L{w},{g * .76} L0,{g * .76} Z" fill="#6c8b97"/>',
                  f'<rect y="{g}" width="{w}" height="{height - g}" fill="#d9cfb4"/>',
                  hut(w * .78, g + 6, height / 420, "#a8433a", "#40312c")]
    elif kind == "forest":
        parts += [f'<rect width="{w}" height="{height}" fill="#eef1ec"/>',
                  f'<rect y="{g}" width="{w}" height="{height - g}" fill="#fbfbf8"/>']
        parts += [spruce(w * (.03 + .94 * i / 15), g + (i * 7 % 5) * 3, height * (.35 + (i * 37 % 10) / 28),
                         ("#355e4b", "#42705a", "#2b4d3e")[i % 3]) for i in range(16)]
    elif kind == "plateau":
        parts += [f'<rect width="{w}" height="{height}" fill="#f6dcb8"/>',
                  f'<circle cx="{w * .78}" cy="{g * .4}" r="{height * .1}" fill="#f08a4b"/>',
                  f'<path d="M0,{g * .78} L{w * .18},{g * .7} L{w * .36},{g * .7} L{w * .44},{g * .82} L{w * .7},{g * .76} L{w},{g * .84} L{w},{height} L0,{height} Z" fill="#b4623f"/>',
                  f'<rect y="{g}" width="{w}" height="{height - g}" fill="#8f4a31"/>']
    else:
        parts += [f'<rect width="{w}" height="{height}" fill="#1c2340"/>']
        parts += [f'<circle cx="{w * (i * 61 % 100) / 100}" cy="{g * .6 * (i * 29 % 100) / 100}" r="1.2" fill="#fff"/>'
                  for i in range(40)]
        parts += [f'<path d="M0,{g} L{w * .15},{g * .62} L{w * .27},{g * .84} L{w * .45},{g * .5} L{w * .66},{g * .86} L{w * .82},{g * .6} L{w},{g} Z" fill="#46507a"/>',
                  f'<rect y="{g}" width="{w}" height="{height - g}" fill="#dfe4f2"/>']
    parts.append(van(w * .28, ground + height * .1, height / 300, body, trim))
    return (f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" '
            f'viewBox="0 0 {width} {height}">' + "".join(parts) + "</svg>")
