"""Pages as plain text and on a terminal, and the bar that waits."""

from __future__ import annotations

import io
import time

import pytest

from costcompare.views.terminal import (
    Heading,
    Points,
    Sentences,
    Table,
    Waiting,
    is_terminal,
    plain_lines,
    say,
    show,
)

PAGE = [
    Heading("A made-up household"),
    Sentences("Two sentences. No more."),
    Heading("Choices"),
    Table(("choice", "bill"), (("today", "$2,950"), ("[red]two heads[/red]", "−$40"))),
    Points(("first", "second")),
]


class Terminal(io.StringIO):
    """A stream that says it is a terminal."""

    encoding = "utf-8"

    def isatty(self) -> bool:
        return True


@pytest.fixture(autouse=True)
def _clean_environment(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm-256color")


def test_plain_text_has_aligned_columns_and_nothing_else() -> None:
    assert list(plain_lines(PAGE)) == [
        "A made-up household",
        "Two sentences. No more.",
        "",
        "Choices",
        "choice                  bill",
        "--------------------  ------",
        "today                 $2,950",
        "[red]two heads[/red]    −$40",
        "",
        "- first",
        "- second",
    ]


def test_plain_text_is_never_cut_however_long() -> None:
    name = "a name " * 60
    assert name.strip() in "\n".join(plain_lines([Table(("choice",), ((name,),))]))


def test_a_pipe_gets_plain_text() -> None:
    stream = io.StringIO()
    show(PAGE, stream)
    assert stream.getvalue() == "\n".join(plain_lines(PAGE)) + "\n"


def test_a_terminal_gets_bold_headings_and_every_cell() -> None:
    stream = Terminal()
    show(PAGE, stream)
    written = stream.getvalue()
    assert "\x1b[1m" in written
    for text in ("A made-up household", "[red]two heads[/red]", "$2,950", "second"):
        assert text in written


@pytest.mark.parametrize(("name", "value"), [("NO_COLOR", "1"), ("TERM", "dumb")])
def test_no_colours_where_none_are_wanted(
    monkeypatch: pytest.MonkeyPatch, name: str, value: str
) -> None:
    monkeypatch.setenv(name, value)
    stream = Terminal()
    assert not is_terminal(stream)
    show(PAGE, stream)
    assert "\x1b" not in stream.getvalue()


def test_control_characters_of_a_title_do_not_reach_the_terminal() -> None:
    page = [Heading("a\x1b[2Jb"), Table(("c\x07",), (("d\x1b]0;e",),))]
    for stream in (io.StringIO(), Terminal()):
        show(page, stream)
        assert "\x1b[2J" not in stream.getvalue()
        assert "\x1b]0" not in stream.getvalue()
        assert "\x07" not in stream.getvalue()


@pytest.mark.parametrize(
    ("encoding", "expected"),
    [
        ("ascii", "-$980, 68 F, 'so'"),
        ("cp1252", "-$980, 68 F, 'so'"),
        ("utf-8", "−$980, 68 °F, ’so’"),
    ],
)
def test_a_minus_sign_is_never_lost(encoding: str, expected: str) -> None:
    raw = io.BytesIO()
    stream = io.TextIOWrapper(raw, encoding=encoding)
    say("−$980, 68 °F, ’so’", stream)
    stream.flush()
    assert raw.getvalue().decode(encoding).strip() == expected


def test_quick_work_shows_no_bar() -> None:
    stream = Terminal()
    with Waiting(stream) as progress:
        progress("Working out 8,760 hours", 0.5)
    time.sleep(0.05)
    assert stream.getvalue() == ""


def test_long_work_shows_what_is_done(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Waiting, "AFTER", 0.0)
    stream = Terminal()
    with Waiting(stream) as progress:
        for step in range(50):
            progress(f"Option [{step}]", step / 50)
            time.sleep(0.02)
    assert "Option [" in stream.getvalue()


def test_no_bar_where_nobody_watches(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Waiting, "AFTER", 0.0)
    stream = io.StringIO()
    with Waiting(stream) as progress:
        progress("Working", 0.1)
        time.sleep(0.3)
    assert stream.getvalue() == ""
