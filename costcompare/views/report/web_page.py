"""Documents as one HTML file that needs nothing else: no network, no script, no font file."""

from __future__ import annotations

from html import escape
from importlib.resources import files

from costcompare.views.figures import look
from costcompare.views.report.pieces import Cell, Document, Figure, Mark, Picture, Point, Section
from costcompare.views.report.pieces import Table as SheetTable

COLOURS = {
    look.NOW: "now",
    look.CHOSEN: "chosen",
    look.DEEP: "cold",
    look.OTHER: "other",
    look.INK: "ink",
    look.QUIET: "quiet",
    look.GRID: "grid",
    "#ffffff": "card",
    "#d9dde3": "duct",
    "#fdfaf3": "room",
    "#eef0f2": "space",
    "#e3e1db": "ground",
}
"""Colours of the drawings and the names under which the style sheet has them, light and dark"""
WIDE, HIGH = 100, 12
"""Size of a bar in its own units"""


def html_page(document: Document) -> str:
    """The document as one file: headings in order, tables with captions, drawings in place."""
    style = (files(__package__) / "templates" / "document.css").read_text(encoding="utf-8")
    body = [
        "<header>",
        f'<p class="overline">{escape(document.overline)}</p>',
        f"<h1>{escape(document.title)}</h1>",
        f'<p class="quiet">{escape(document.subtitle)}</p>',
        "</header>",
        "<main>",
        f'<p class="lead">{escape(document.lead)}</p>' if document.lead else "",
        _figures(document.figures),
        *(_section(section) for section in document.sections),
        "</main>",
        f'<footer><p>{escape(document.notice)}</p><p class="quiet">{escape(document.footer)}</p>'
        "</footer>",
    ]
    title = escape(f"{document.title} – {document.overline}")
    return "\n".join(
        (
            "<!DOCTYPE html>",
            f'<html lang="{escape(document.language)}">',
            "<head>",
            '<meta charset="utf-8">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            # Nothing may be fetched or run, whatever a text may hold.
            '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; '
            "style-src 'unsafe-inline'; img-src data:\">",
            f"<title>{title}</title>",
            f"<style>\n{style}</style>",
            "</head>",
            "<body>",
            *(line for line in body if line),
            "</body>",
            "</html>",
            "",
        )
    )


def _figures(figures: tuple[Figure, ...]) -> str:
    if not figures:
        return ""
    tiles = "".join(
        f'<div class="figure tone-{figure.tone}"><dt>{escape(figure.label)}</dt>'
        f"<dd><strong>{escape(figure.value)}</strong> <span>{escape(figure.note)}</span></dd></div>"
        for figure in figures
    )
    return f'<dl class="figures">{tiles}</dl>'


def _section(section: Section) -> str:
    identity = f"part-{section.key}"
    answers = "".join(
        f'<p class="{"answer" if number == 0 else "quiet"}">{escape(answer)}</p>'
        for number, answer in enumerate(section.answers)
    )
    pictures = "".join(_picture(picture) for picture in section.pictures)
    tables = "".join(_table(table) for table in section.tables)
    points = _points(section.points)
    more = "".join(f'<p class="quiet">{escape(text)}</p>' for text in section.more)
    return (
        f'<section aria-labelledby="{identity}" class="part {section.key}">'
        f'<h2 id="{identity}">{escape(section.heading)}</h2>'
        f"{answers}{pictures}{tables}{points}{more}</section>"
    )


def _picture(picture: Picture) -> str:
    """The drawing with its words as its title, in the colours of the page."""
    svg = picture.svg
    for colour, name in COLOURS.items():
        svg = svg.replace(f'"{colour}"', f'"var(--{name})"')
    opening, rest = svg.split(">", 1)
    titled = f'{opening} role="img"><title>{escape(picture.alt)}</title>{rest}'
    return f"<figure>{titled}</figure>"


def _points(points: tuple[Point, ...]) -> str:
    if not points:
        return ""
    items = []
    for point in points:
        because = f' <span class="quiet">{escape(point.because)}</span>' if point.because else ""
        mark = f"{_mark(point.mark)} " if point.mark else ""
        head = f"<strong>{escape(point.head)}</strong> " if point.head else ""
        items.append(f"<li>{mark}{head}{escape(point.text)}{because}</li>")
    return f"<ul>{''.join(items)}</ul>"


def _table(table: SheetTable) -> str:
    head = "".join(_head(cell) for cell in table.head)
    rows = "".join(
        f'<tr><th scope="row">{_words(row[0])}</th>'
        f"{''.join(f'<td>{_cell(cell)}</td>' for cell in row[1:])}</tr>"
        for row in table.rows
    )
    note = f'<p class="quiet">{escape(table.note)}</p>' if table.note else ""
    return (
        f'<div class="wide" tabindex="0" role="group" aria-label="{escape(table.caption)}">'
        f'<table class="{table.key}"><caption>{escape(table.caption)}</caption>'
        f"<thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table></div>{note}"
    )


def _head(cell: Cell) -> str:
    """A column's head; a column that only repeats a figure as a bar has none."""
    words = _words(cell)
    return f'<th scope="col">{words}</th>' if words else "<td></td>"


def _words(cell: Cell) -> str:
    text = escape(cell.text)
    if cell.strong and text:
        text = f"<strong>{text}</strong>"
    if cell.detail:
        text += f' <span class="detail">{escape(cell.detail)}</span>'
    return f"{_mark(cell.mark)} {text}".strip() if cell.mark else text


def _mark(mark: Mark) -> str:
    return f'<span class="mark tone-{mark.tone}">{escape(mark.letter)}</span>'


def _cell(cell: Cell) -> str:
    if cell.spark:
        return _spark(cell)
    if cell.bar is not None:
        return f"{_words(cell)}{_bar(cell)}"
    return _words(cell)


def _bar(cell: Cell) -> str:
    """A bar that repeats a figure beside it, so that nobody needs to hear it."""
    first, last = cell.bar or (0.0, 0.0)
    wide = f"{WIDE * max(last - first, 0.006):.2f}" if last > first else "0"
    shape = (
        f'<rect class="fill-{cell.tone}" x="{WIDE * first:.2f}" width="{wide}" height="{HIGH}"/>'
    )
    return (
        f'<svg class="bar" viewBox="0 0 {WIDE} {HIGH}" preserveAspectRatio="none" '
        f'aria-hidden="true">{shape}</svg>'
    )


def _spark(cell: Cell) -> str:
    high, step, wide = 26.0, 9.0, 7.0
    bars = "".join(
        f'<rect class="fill-{cell.tone}" x="{number * step:.0f}" '
        f'y="{high - max(share * high, 0.6):.1f}" width="{wide:.0f}" '
        f'height="{max(share * high, 0.6):.1f}"/>'
        for number, share in enumerate(cell.spark)
    )
    return (
        f'<svg class="spark" viewBox="0 0 {len(cell.spark) * step:.0f} {high:.0f}" '
        f'aria-hidden="true">{bars}</svg>'
    )
