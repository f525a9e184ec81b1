"""What a sizing cannot see: questions to ask on site, and what to look out for.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.comparison import Caution
from costcompare.sizing.choices import Candidate
from costcompare.sizing.results import ChoiceFit


def questions(choices: Sequence[ChoiceFit]) -> tuple[str, ...]:
    """What to ask where heads or ducts are planned; there is no plan of the furniture here."""
    heads = sorted({f.room for fit in choices for f in fit.machines if f.kind == "head"})
    found = []
    if heads:
        found = [
            f"In each room that may get a head ({', '.join(heads)}): where do the bed, the desk "
            "and the favourite chair stand, and would its air blow at them?",
            "Which outside wall has room for a line set and a drain, with a spot outdoors for the "
            "unit that is clear of drifting snow, of a bedroom window and of the neighbour?",
            "Which of the doors that stand open in this reckoning are shut at night?",
        ]
    if any(fit.kind == "ducted heat pump" for choice in choices for fit in choice.machines):
        found.append(
            "What static pressure and what airflow were measured on the ducts? A heat pump needs "
            "more air for its heat than a furnace."
        )
    return tuple(found)


def cautions(candidates: Sequence[Candidate]) -> tuple[Caution, ...]:
    """What stands under every sizing."""
    options = [one for one in candidates if not one.is_today]
    pumps = [one for one in options if one.system.heads or one.system.ducted_unit is not None]
    found = [
        Caution(
            "Electricity",
            "The amperes here are information for a licensed electrician, who decides by the "
            "nameplates, the panel and the local code. The highest hour of the year is a mean over "
            "an hour: for minutes a machine draws more.",
            "circuits go or come with the options" if options else "the heat is electric",
        ),
        Caution(
            "A second opinion on the loads",
            "These loads come from a survey, not from a blower door and a tape on every wall. "
            "Where a permit or a rebate asks for a load calculation, the local rule says which.",
            "the facts that are guessed carry over into every load",
        ),
    ]
    if pumps:
        found += [
            Caution(
                "Refrigerant",
                "Refrigerant is work for a technician with the certificate that the law asks for "
                "(in the United States section 608 of the Clean Air Act).",
                f"“{pumps[0].name}” brings a heat pump",
            ),
            Caution(
                "Mildly flammable refrigerants",
                "Newer machines may hold one. The manual of the unit gives the smallest room that "
                "a head may hang in: check the manual, above all for small bedrooms. Nothing here "
                "works that out.",
                f"“{pumps[0].name}” brings a heat pump",
            ),
            Caution(
                "Generic machines",
                "Capacities are those of a generic class and size unless the case gives points of "
                "a submittal sheet. Hold the sheet of the chosen model against the figures here.",
                "no make or model is behind a class",
            ),
        ]
    return tuple(found)
