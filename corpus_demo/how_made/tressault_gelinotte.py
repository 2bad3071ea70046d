"""tressault_gelinotte_2026.pdf: French brochure, one column per van with its own list, printed by Chromium."""
import sys

import art

CSS = """
@page{size:A4;margin:0}*{box-sizing:border-box}body{margin:0;font:9.2pt/1.42 'P052','TeX Gyre Pagella',serif;color:#2a2622}
.p{width:210mm;height:297mm;padding:18mm;page-break-after:always;position:relative;overflow:hidden}.p:last-child{page-break-after:auto}
.m{font:700 10pt 'Lato';letter-spacing:.4em;color:#9c3d2b}h1{font:italic 54pt 'P052';margin:0;line-height:1.1}h1+p{margin-top:0;font-size:12pt;color:#6b6259}
svg{display:block;width:174mm;height:74mm;margin:6mm 0}.txt{column-count:2;column-gap:9mm;text-align:justify}.txt p{margin:0 0 2mm;text-indent:4mm}
.duo{display:flex;gap:8mm}.duo>div{flex:1;border-top:2pt solid #9c3d2b;padding-top:2mm}h2{font:italic 20pt 'P052';margin:0 0 1mm;color:#9c3d2b}
h3{font:700 8pt 'Lato';text-transform:uppercase;letter-spacing:.15em;margin:3.2mm 0 .8mm;color:#6b6259}
ul{list-style:none;margin:0;padding:0}li{padding:.25mm 0}li b{font-weight:normal;color:#6b6259}.opt li{display:flex}.opt i{flex:1;border-bottom:1px dotted #999;margin:0 2mm 1mm}
small{position:absolute;left:18mm;right:18mm;bottom:14mm;font-size:7.4pt;color:#6b6259}
"""
VANS = {
    "Gélinotte 541": [
        ("Porteur", ["Jarvelle Colporteur 33 L2H2", "Diesel 2,2 l, 120 ch, traction", "L 5,41 m, l 2,05 m, H 2,58 m", "Hauteur sous plafond : 1,89 m",
                     "Empattement : 3,45 m", "PTAC : 3 300 kg", "Poids à vide en ordre de marche : 2 740 kg", "Places carte grise : 4", "Places nuit : 2", "Réservoir de gazole : 75 l"]),
        ("Eau", ["Eau propre : 80 l, dans la cellule, sous le lit", "Eaux grises : 70 l, sous le châssis", "Chauffage des eaux grises : aucun", "Toilettes sèches à séparation",
                 "Tuyaux dans la cellule", "Vanne de vidange sous le châssis, à l’air libre", "Eau chaude : 6 l", "Kit de mise hors gel : de série"]),
        ("Chaleur", ["Air pulsé, gazole", "Puissance restituée : 2,0 kW", "Consommation à plein régime : 0,24 l/h", "Consommation électrique : 28 W", "Plancher chauffant : indisponible", "Gaz : aucun gaz à bord"]),
        ("Électricité", ["Batterie auxiliaire : AGM 100 Ah", "Panneau solaire : 130 W, en option", "Convertisseur : 1 000 W, en option", "Prise de quai 230 V : 16 A"]),
        ("Enveloppe", ["Parois : coton recyclé, 25 mm", "Isolés : parois, pavillon", "Résistance thermique des parois : 0,6 m²·K/W", "Rupture de pont thermique : non", "Baies de la cellule : simple vitrage",
                       "Volets isothermes de cabine : en option", "Volets isothermes des portes arrière : indisponibles", "EN 1646-1 : grade 1"]),
    ],
    "Gélinotte 599 Hiver": [
        ("Porteur", ["Jarvelle Colporteur 40 L3H2", "Diesel 2,2 l, 165 ch, quatre roues motrices", "L 5,99 m, l 2,05 m, H 2,79 m", "Hauteur sous plafond : 1,90 m",
                     "Empattement : 4,04 m", "PTAC : 3 950 kg", "Poids à vide en ordre de marche : 3 260 kg", "Places carte grise : 4", "Places nuit : 2", "Réservoir de gazole : 90 l"]),
        ("Eau", ["Eau propre : 110 l, dans la cellule, sous la dînette", "Eaux grises : 95 l, dans le double plancher", "Chauffage des eaux grises : serpentin d’eau glycolée", "WC à cassette, 17 l",
                 "Tuyaux dans le double plancher, calorifugés", "Vanne de vidange dans un coffre chauffé", "Eau chaude : 10 l", "Kit de mise hors gel : de série"]),
        ("Chaleur", ["Chauffage central à eau, gazole", "Puissance restituée : 5,0 kW", "Consommation à plein régime : 0,61 l/h", "Consommation électrique : 84 W", "Plancher chauffant : de série", "Gaz : aucun gaz à bord"]),
        ("Électricité", ["Batteries auxiliaires : lithium 2 × 125 Ah, 12,8 V, autochauffantes", "Panneaux solaires : 2 × 170 W", "Convertisseur : 2 500 W", "Prise de quai 230 V : 16 A"]),
        ("Enveloppe", ["Parois : mousse polyuréthane projetée, 40 mm", "Isolés : parois, pavillon, plancher, portes", "Résistance thermique des parois : 1,5 m²·K/W", "Rupture de pont thermique : oui",
                       "Baies de la cellule : double vitrage", "Volets isothermes de cabine : de série", "Volets isothermes des portes arrière : en option", "EN 1646-1 : grade 3"]),
    ],
}
OPTIONS = [
    ("Tapis chauffant 12 V, réservoir d’eaux grises (541)", "320 €"), ("Isolation du réservoir d’eaux grises (541)", "160 €"),
    ("Panneau solaire 130 W (541)", "690 €"), ("Convertisseur 1 000 W (541)", "540 €"), ("Batterie lithium 125 Ah à la place de l’AGM (541)", "980 €"),
    ("Volets isothermes de cabine (541)", "210 €"), ("Volets isothermes des portes arrière (599 Hiver)", "240 €"),
    ("Toit relevable, 4 places nuit au total (599 Hiver)", "6 400 €"), ("Troisième panneau, 510 W au total (599 Hiver)", "490 €"), ("Traçage électrique des tuyaux d’eau (599 Hiver)", "380 €"),
    ("Store extérieur (541 et 599 Hiver)", "820 €"), ("Porte-vélos (541 et 599 Hiver)", "430 €"),
]


def card(name):
    parts = [f"<h3>{title}</h3><ul>" + "".join(f"<li>{line}</li>" for line in lines) + "</ul>" for title, lines in VANS[name]]
    return f"<div><h2>{name}</h2>{''.join(parts)}</div>"


def page():
    options = "".join(f"<li>{what}<i></i>{price}</li>" for what, price in OPTIONS)
    return f"""<!DOCTYPE html><html lang="fr"><head><meta charset="utf-8"><title>Tressault, Gélinotte 2026</title><style>{CSS}</style></head><body>
<div class="p"><div class="m">TRESSAULT</div><h1>Gélinotte</h1><p>Collection 2026 : la 541 et la 599 Hiver</p>{art.scene(700, 300, "forest", "#9c3d2b", "#f3e9d8")}
<div class="txt"><p>La gélinotte des bois passe la nuit dans un trou qu’elle creuse dans la neige. Elle y tient, dit-on, quinze degrés de plus que dehors. Nous avons trouvé
que c’était une bonne définition du fourgon.</p><p>À Orsenne-le-Haut, la route monte encore un peu après la scierie, puis elle renonce. L’atelier est là. On y travaille le mélèze, on y boit
du café trop fort et l’on y reçoit les clients avec des chaussons.</p><p>La 541 est une petite voiture de printemps, vive, sans manières, qui rentre au chaud quand il gèle. La 599 Hiver
est notre fourgon quatre saisons : elle emporte cent trente litres d’eau, ne craint pas le col du Tressault en février et rend la clé du gîte inutile.</p><p>Nous l’avons enfermée au
banc climatique d’Orsenne à −22 °C, réservoirs pleins, le temps d’un dimanche. Au matin, l’évier coulait et le chat dormait.</p></div>
<small>Le monoxyde de carbone est inodore : gardez l’échappement du chauffage dégagé de la neige et le détecteur sous tension. Entretien par un atelier agréé, selon les règles locales.
Tressault SARL, chemin de la Scierie, Orsenne-le-Haut.</small></div>
<div class="p"><div class="duo">{card("Gélinotte 541")}{card("Gélinotte 599 Hiver")}</div>
<small>Année-modèle 2026. Largeur sans rétroviseurs. Capacités au trop-plein. « De série » : compris dans le prix. « En option » : contre supplément. « Indisponible » : ne peut être commandé.</small></div>
<div class="p"><h2>Options et suppléments</h2><ul class="opt">{options}</ul><small>Prix TTC, départ Orsenne-le-Haut, au 1er novembre 2025. Toute option réduit la charge utile. Sous réserve de modifications
et d’erreurs d’impression.</small></div></body></html>"""


if __name__ == "__main__":
    open(sys.argv[1], "w", encoding="utf-8").write(page())
