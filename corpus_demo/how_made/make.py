"""Rebuild the brochures from their sources: python make.py OUT_FOLDER [name ...]

Needs soffice, chromium, pdflatex, xelatex, pdftoppm and ImageMagick, and a Python with reportlab, typst, pypdf and pillow.
No network is used. PDFs carry dates and identifiers, so a rebuild is equal on the page, not byte by byte.
"""
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

import art

HERE = Path(__file__).parent
FONTS = ["/usr/share/fonts", "/usr/share/texmf/fonts/opentype"]
CHROMIUM = ("chromium --headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking "
            "--disable-component-update --disable-sync --no-pdf-header-footer").split()
ART = {
    "ebbingford.svg": art.scene(840, 300, "plateau", "#eef3ea", "#2f5d50").replace("#f6dcb8", "#e6efe9").replace("#b4623f", "#7ba08f")
    .replace("#8f4a31", "#4e7a68").replace("#f08a4b", "#f5d76e"),
    "ebbingford2.svg": art.scene(840, 150, "forest", "#2f5d50", "#e8d8a8"),
    "brackmere.svg": art.scene(640, 300, "shore", "#5b3a62", "#d9b45a"),
    "brackmere2.svg": art.scene(640, 420, "night", "#d9b45a", "#5b3a62"),
    "otterby.svg": art.scene(700, 320, "shore", "#dddddd", "#555555"),
}


def run(*command, cwd=None):
    subprocess.run([str(part) for part in command], check=True, cwd=cwd, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def python(script, out):
    run(sys.executable, HERE / script, out)
    return out


def office(script, ending, work):
    source = python(script, work / f"{Path(script).stem}.{ending}")
    run("soffice", "--headless", "--convert-to", "pdf", "--outdir", work, source)
    return source.with_suffix(".pdf")


def browser(script, work):
    source = python(script, work / f"{Path(script).stem}.html")
    with tempfile.TemporaryDirectory() as profile:
        run(*CHROMIUM, f"--user-data-dir={profile}", f"--print-to-pdf={source.with_suffix('.pdf')}", f"file://{source}")
    return source.with_suffix(".pdf")


def latex(engine, name, work):
    for _ in range(2):
        run(engine, "-interaction=nonstopmode", f"-output-directory={work}", HERE / name)
    return work / Path(name).with_suffix(".pdf")


def typeset(name, work):
    import typst
    source = Path(shutil.copy(HERE / name, work))
    for picture, svg in ART.items():
        (work / picture).write_text(svg)
    typst.compile(str(source), output=str(source.with_suffix(".pdf")), font_paths=FONTS)
    return source.with_suffix(".pdf")


def scan(source, out, work, dpi=120, angles=(0.7, -0.5)):
    """Pages as a copier's grey pictures, a little askew, without any text layer."""
    from PIL import Image
    run("pdftoppm", "-r", dpi, "-gray", "-png", source, work / "scan")
    pictures = []
    for number, page in enumerate(sorted(work.glob("scan-*.png"))):
        grey = page.with_suffix(".jpg")
        run("convert", page, "-background", "#e9e9e9", "-rotate", angles[number % 2], "+repage", "-seed", 7, "-attenuate", 0.25, "+noise", "Gaussian",
            "-blur", "0x0.5", "+level", "9%,93%", "-colorspace", "Gray", "-quality", 42, grey)
        pictures.append(Image.open(grey).convert("L"))
        page.unlink()
    pictures[0].save(out, save_all=True, append_images=pictures[1:], resolution=dpi, quality=42)
    return out


def ebbingford(work):
    """Three pages from the typesetter, a fourth that somebody scanned in."""
    from pypdf import PdfWriter
    both = PdfWriter()
    both.append(typeset("ebbingford_sallowby.typ", work))
    both.append(scan(typeset("ebbingford_slip.typ", work), work / "slip_scan.pdf", work))
    both.write(work / "ebbingford.pdf")
    return work / "ebbingford.pdf"


def brackmere(work):
    """The sheet keeps its bleed; the crop box shows the trimmed page."""
    from pypdf import PdfReader, PdfWriter
    from pypdf.generic import RectangleObject
    writer = PdfWriter(clone_from=PdfReader(typeset("brackmere_sedgewren.typ", work)))
    bleed = 14 / 25.4 * 72
    for page in writer.pages:
        page.cropbox = page.trimbox = RectangleObject((bleed, bleed, bleed + 612, bleed + 792))
    writer.write(work / "brackmere.pdf")
    return work / "brackmere.pdf"


def damaged(work):
    """A download that broke off: a head, half a stream, nothing else."""
    whole = browser("oldersund_ravnkol.py", work).read_bytes()
    start = whole.index(b"stream")
    (work / "damaged.pdf").write_bytes(whole[:start + 5200])
    return work / "damaged.pdf"


def as_is(name):
    return lambda work: Path(shutil.copy(HERE / name, work))


DOCUMENTS = {
    "thornquay_wendle_2026.pdf": lambda work: office("thornquay_wendle.py", "fodt", work),
    "oldersund_ravnkol_2026.pdf": lambda work: browser("oldersund_ravnkol.py", work),
    "murrinjal_range_2026.pdf": lambda work: python("murrinjal_range.py", work / "m.pdf"),
    "ebbingford_sallowby_2026.pdf": ebbingford,
    "halvenny_skerrow_pricelist_2026.pdf": lambda work: office("halvenny_skerrow.py", "fods", work),
    "brackmere_sedgewren_19.pdf": brackmere,
    "tarnsted_pipwell_545_data_2026.pdf": lambda work: latex("pdflatex", "tarnsted_pipwell.tex", work),
    "tarnsted_pipwell_545_webpage.html": as_is("tarnsted_pipwell_webpage.html.src"),
    "tarnsted_pipwell_545_pricelist_2024.txt": as_is("tarnsted_pipwell_2024.txt.src"),
    "launwerk_rauhreif_2026.pdf": lambda work: latex("xelatex", "launwerk_rauhreif.tex", work),
    "tressault_gelinotte_2026.pdf": lambda work: browser("tressault_gelinotte.py", work),
    "kettlerigg_snowhaw_22_2025.pdf": lambda work: latex("pdflatex", "kettlerigg_snowhaw.tex", work),
    "dalverrin_kestle_6_listing.md": as_is("dalverrin_kestle_listing.md.src"),
    "haddle_road_offer.txt": as_is("haddle_road_offer.txt.src"),
    "ossvane_tamarsk_webpage.html": as_is("ossvane_tamarsk_webpage.html.src"),
    "wolmering_otterby_20_scan.pdf": lambda work: scan(typeset("wolmering_otterby.typ", work), work / "w.pdf", work),
    "oldersund_ravnkol_2025_damaged.pdf": damaged,
    "tamarsk_landing_winter_sites_flyer.pdf": lambda work: python("tamarsk_landing_flyer.py", work / "f.pdf"),
}


def main(out, *names):
    for name in names or DOCUMENTS:
        with tempfile.TemporaryDirectory() as folder:
            made = DOCUMENTS[name](Path(folder))
            shutil.copyfile(made, Path(out) / name)
            print(name, (Path(out) / name).stat().st_size)


if __name__ == "__main__":
    main(*sys.argv[1:])
