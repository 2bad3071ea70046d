"""Flat OpenDocument text, written by hand: just what the two LibreOffice brochures need."""
import base64
from xml.sax.saxutils import escape

SPACES = " ".join(f'xmlns:{key}="urn:oasis:names:tc:opendocument:xmlns:{tail}:1.0"' for key, tail in (
    ("office", "office"), ("style", "style"), ("text", "text"), ("table", "table"), ("draw", "drawing"),
    ("fo", "xsl-fo-compatible"), ("svg", "svg-compatible"), ("number", "datastyle"))) + \
    ' xmlns:xlink="http://www.w3.org/1999/xlink"'


def run(text):
    """Plain text with `^x^` for a superscript, `**x**` for bold and `\\n` for a line break."""
    out, bold, high = "", False, False
    for piece in text.replace("**", "\x01").replace("^", "\x02").replace("\n", "\x03"):
        if piece == "\x01":
            out += "</text:span>" if bold else '<text:span text:style-name="Bold">'
            bold = not bold
        elif piece == "\x02":
            out += "</text:span>" if high else '<text:span text:style-name="High">'
            high = not high
        else:
            out += "<text:line-break/>" if piece == "\x03" else escape(piece)
    return out


def para(style, text):
    return f'<text:p text:style-name="{style}">{run(text)}</text:p>'


def picture(svg, width, height):
    """An SVG set into the text as a picture."""
    data = base64.b64encode(svg.encode()).decode()
    return (f'<text:p text:style-name="Picture"><draw:frame svg:width="{width}" svg:height="{height}" '
            f'text:anchor-type="as-char"><draw:image draw:mime-type="image/svg+xml"><office:binary-data>{data}'
            f'</office:binary-data></draw:image></draw:frame></text:p>')


def style(name, paragraph="", text="", family="paragraph", extra=""):
    inner = (f"<style:paragraph-properties {paragraph}/>" if paragraph else "") + \
            (f"<style:text-properties {text}/>" if text else "")
    return f'<style:style style:name="{name}" style:family="{family}" {extra}>{inner}</style:style>'


def cell_style(name, properties):
    return (f'<style:style style:name="{name}" style:family="table-cell"><style:table-cell-properties {properties}/>'
            f'</style:style>')


def column_style(name, width):
    return (f'<style:style style:name="{name}" style:family="table-column"><style:table-column-properties '
            f'style:column-width="{width}"/></style:style>')


def cell(text, style_name, paragraph="Cell", columns=1, rows=1):
    span = (f' table:number-columns-spanned="{columns}"' if columns > 1 else "") + \
           (f' table:number-rows-spanned="{rows}"' if rows > 1 else "")
    return f'<table:table-cell table:style-name="{style_name}"{span}>{para(paragraph, text)}</table:table-cell>'


def covered(count):
    return "<table:covered-table-cell/>" * count


def table(name, widths, rows, head_rows=0):
    columns = "".join(f'<table:table-column table:style-name="{width}"/>' for width in widths)
    rows = [f"<table:table-row>{row}</table:table-row>" for row in rows]
    head = "<table:table-header-rows>" + "".join(rows[:head_rows]) + "</table:table-header-rows>" if head_rows else ""
    return f'<table:table table:name="{name}">{columns}{head}{"".join(rows[head_rows:])}</table:table>'


def document(body, automatic, styles, page="8.5in", height="11in", margin="0.75in", footer=""):
    foot = f"<style:footer>{footer}</style:footer>" if footer else ""
    return (f'<?xml version="1.0" encoding="UTF-8"?><office:document {SPACES} office:version="1.3" '
            f'office:mimetype="application/vnd.oasis.opendocument.text"><office:styles>{styles}</office:styles>'
            f'<office:automatic-styles>{automatic}<style:page-layout style:name="PL"><style:page-layout-properties '
            f'fo:page-width="{page}" fo:page-height="{height}" fo:margin="{margin}"/></style:page-layout>'
            f'</office:automatic-styles><office:master-styles><style:master-page style:name="Standard" '
            f'style:page-layout-name="PL">{foot}</style:master-page></office:master-styles><office:body><office:text>'
            f'{body}</office:text></office:body></office:document>')
