"""What headings mean: a table of our own with traps, from invented lists in seven languages and
more. Common usage, from memory: no source."""

import pytest

from jigs.reading.headings import Heading, fold, like_heading, read_heading
from tests.listwords import FILES, FOLDER, spellings, write_words

UNDERSTOOD = [
    # exact, folded, with a unit
    ("Width", "width", None), ("WIDTH (mm)", "width", "mm"), ('Height (")', "height", "in"),
    ("Höhe", "height", None), ("Hoehe [cm]", "height", "cm"), ("hohe", "height", None),
    ("Largeur", "width", None), ("Épaisseur (mm)", "thickness", "mm"), ("Qté", "count", None),
    ("Ancho mm", "width", "mm"), ("Alto", "height", None), ("Cant.", "count", None),
    ("Larghezza", "width", None), ("Q.tà", "count", None), ("Spess.", "thickness", None),
    ("Breedte (mm)", "width", "mm"), ("Hoogte", "height", None), ("Aantal", "count", None),
    ("Bredde", "width", None), ("Højde", "height", None), ("Høyde", "height", None),
    ("Höjd i mm", "height", "mm"), ("Antal", "count", None), ("Leveys", "width", None),
    ("Breite (Zoll)", "width", "in"), ("Skåp", "box", None), ("Kast", "box", None),
    # word by word
    ("Finished width", "width", None), ("Door height (mm)", "height", "mm"),
    ("Hinge side", "hinged", None), ("Largeur façade", "width", None),
    ("Breite / Width", "width", None), ("Nombre de pièces", "count", None),
    ("No. of doors", "count", None), ("Höhe der Front in mm", "height", "mm"),
    # by ending, plurals
    ("Fertigbreite", "width", None), ("Fronthöhe (mm)", "height", "mm"),
    ("Türbreite", "width", None),
    ("Breiten", "width", None), ("Heights", "height", None), ("Boxes", "box", None),
    # sizes in one cell
    ("Size (mm)", "size", "mm"), ("Maße", "size", None), ("Afmetingen", "size", None),
    # known, and nothing is read from them
    ("Weight", "other", None), ("Unit price", "other", None), ("Width tolerance", "other", None),
    ("Prix unitaire", "other", None), ("Gesamt", "other", None), ("Tiefe", "other", None),
    ("Depth", "other", None), ("Cut width", "other", None), ("m²", "other", None),
    ("Pos.", "position", None), ("#", "position", None), ("Item no.", "position", None),
    ("Länge", "length", None), ("Length (mm)", "length", "mm"), ("L", "length", None),
]  # fmt: skip
NOT_UNDERSTOOD = [
    "Gesamtbreite", "Total width", "Heigth", "Widht", "Nutbreite", "Korpusbreite", "Griffhöhe",
    "Cabinet width", "Opening height", "Width per leaf pair", "Rahmenbreite", "Lichte Höhe", "mm",
    "Price per width", "St.", "A", "Hinge type", "Breite x Preis", "Cena", "Ilość", "",
    "Width 2", "Gap width", "Weighted", "Height of handle", "Waste", "Wight",
]  # fmt: skip
"""Nothing is guessed: of each somebody is asked, or it is left alone and named."""


@pytest.mark.parametrize(("text", "column", "unit"), UNDERSTOOD)
def test_a_heading_is_understood(text: str, column: str, unit: str | None) -> None:
    """By all of its words, its unit behind them."""
    found = read_heading(text)
    assert found is not None
    assert (found.column, found.unit) == (column, unit)


@pytest.mark.parametrize("text", NOT_UNDERSTOOD)
def test_a_heading_is_not_understood(text: str) -> None:
    """Where one word is not known, or two mean two things."""
    assert read_heading(text) is None


@pytest.mark.parametrize(
    ("text", "order"),
    [
        ("W x H", ("width", "height")),
        ("H x B (mm)", ("height", "width")),
        ("BxHxT", ("width", "height", "thickness")),
        ("Maße B × H × D [mm]", ("width", "height", "thickness")),
        ("Hauteur x Largeur", ("height", "width")),
        ("Ancho x Alto", ("width", "height")),
        ("Bredde * Høyde", ("width", "height")),
        # Beside a height what else there is lies across.
        ("L x H", ("width", "height")),
        ("H x L", ("height", "width")),
        # Longueur by largeur, Länge by Breite: nobody knows which is up.
        ("L x l", ()),
        ("Länge x Breite", ()),
        ("Size", ()),
    ],
)
def test_the_order_of_sizes_in_one_cell(text: str, order: tuple[str, ...]) -> None:
    """The heading says it, or it is open."""
    found = read_heading(text)
    assert found is not None
    assert (found.column, found.order) == ("size", order)


@pytest.mark.parametrize(
    ("text", "like"),
    [
        ("Heigth", "height"), ("Widht", "width"), ("Thikness", "thickness"),
        ("Quanity", "count"), ("Breitte", "width"), ("Hautur", "height"),
        # What is understood is like nothing else, though the letters are near.
        ("Weight", ""), ("Width", ""), ("Cena", ""), ("A", ""), ("Comment on site", "note"),
    ],
)  # fmt: skip
def test_likeness_only_proposes(text: str, like: str) -> None:
    """A misspelt heading is never taken for the one that it is like."""
    assert like_heading(text) == like
    found = read_heading(text)
    assert found is None or not like


def test_plain_letters() -> None:
    """Case, accents, signs and the two ways of writing an umlaut make no difference."""
    assert fold("  Höhe\t(MM): ") == "hohe mm"
    assert spellings("Höhe") == {"hohe", "hoehe"}
    assert read_heading("Tür-Höhe") == read_heading("tuer hoehe") == Heading("height")


@pytest.mark.parametrize("file", FILES)
def test_words_are_looked_up_as_they_are_written(file: str) -> None:
    """The words that are looked up are those of the languages' file."""
    looked_up = (FOLDER / f"{file}.csv").read_text(encoding="ascii")
    assert looked_up == write_words(file), "write them anew: python -m tests.listwords"
