"""A small meter file of our own: seven entries of the open standard, with known answers."""

from __future__ import annotations

HREF = "https://meter.invalid/espi/1_1/resource"
POINT = f"{HREF}/UsagePoint/1"
READING = f"{POINT}/MeterReading/1"
STARTS = (1768464000, 1768467600, 1768471200)
VALUES = (4350, 4800, 5250)
COSTS = (58725, 64800, 70875)


def entry(own: str, up: str, content: str, *related: str) -> str:
    links = "".join(f'<link rel="related" href="{one}"/>' for one in related)
    return (
        f'<entry><id>urn:uuid:{abs(hash(own))}</id><link rel="self" href="{own}"/>'
        f'<link rel="up" href="{up}"/>{links}<title>x</title>'
        f"<content>{content}</content></entry>"
    )


def reading(start: int, value: int, cost: int, quality: int | None = None) -> str:
    told = f"<ReadingQuality><quality>{quality}</quality></ReadingQuality>" if quality else ""
    return (
        f"<IntervalReading><cost>{cost}</cost>{told}<timePeriod><duration>3600</duration>"
        f"<start>{start}</start></timePeriod><value>{value}</value></IntervalReading>"
    )


def block(*readings: str) -> str:
    return f'<IntervalBlock xmlns="http://naesb.org/espi">{"".join(readings)}</IntervalBlock>'


def reading_type(unit: int = 72, tens: int = 0, flow: int = 1, behaviour: int = 4) -> str:
    return (
        f'<ReadingType xmlns="http://naesb.org/espi"><accumulationBehaviour>{behaviour}'
        "</accumulationBehaviour><commodity>1</commodity><currency>840</currency>"
        f"<flowDirection>{flow}</flowDirection><intervalLength>3600</intervalLength>"
        f"<kind>12</kind><powerOfTenMultiplier>{tens}</powerOfTenMultiplier><uom>{unit}</uom>"
        "</ReadingType>"
    )


def summary(name: str = "UsageSummary", start: int = 1766044800) -> str:
    """2025-12-18 to 2026-01-18 at local midnight, 31 days."""
    return (
        f'<{name} xmlns="http://naesb.org/espi"><billingPeriod><duration>2678400</duration>'
        f"<start>{start}</start></billingPeriod><billLastPeriod>49275000</billLastPeriod>"
        "<currency>840</currency><overallConsumptionLastPeriod><powerOfTenMultiplier>3"
        "</powerOfTenMultiplier><timeStamp>1768723200</timeStamp><uom>72</uom><value>3650</value>"
        "</overallConsumptionLastPeriod><statusTimeStamp>1768723200</statusTimeStamp>"
        f"</{name}>"
    )


CLOCK = (
    '<LocalTimeParameters xmlns="http://naesb.org/espi"><dstEndRule>B40E2000</dstEndRule>'
    "<dstOffset>3600</dstOffset><dstStartRule>360E2000</dstStartRule><tzOffset>-28800</tzOffset>"
    "</LocalTimeParameters>"
)


def point(kind: int = 0) -> str:
    return (
        '<UsagePoint xmlns="http://naesb.org/espi"><ServiceCategory>'
        f"<kind>{kind}</kind></ServiceCategory></UsagePoint>"
    )


def feed(*entries: str) -> str:
    return (
        '<?xml version="1.0" encoding="UTF-8"?><feed xmlns="http://www.w3.org/2005/Atom">'
        f"<id>urn:uuid:0</id><title>x</title>{''.join(entries)}</feed>"
    )


def example(
    *,
    name: str = "UsageSummary",
    service: int = 0,
    kind: str | None = None,
    readings: tuple[str, ...] | None = None,
    bill: str | None = None,
) -> str:
    """Seven entries; the second block repeats an interval of the first, and its value stands."""
    wrong_third = reading(STARTS[2], 9999, COSTS[2])
    given = readings or (
        reading(STARTS[0], VALUES[0], COSTS[0]),
        reading(STARTS[1], VALUES[1], COSTS[1]),
        wrong_third,
    )
    return feed(
        entry(POINT, f"{HREF}/UsagePoint", point(service), f"{POINT}/MeterReading"),
        entry(f"{HREF}/LocalTimeParameters/1", f"{HREF}/LocalTimeParameters", CLOCK),
        entry(
            READING,
            f"{POINT}/MeterReading",
            '<MeterReading xmlns="http://naesb.org/espi"/>',
            f"{READING}/IntervalBlock",
            f"{HREF}/ReadingType/7",
        ),
        entry(f"{HREF}/ReadingType/7", f"{HREF}/ReadingType", kind or reading_type()),
        entry(f"{READING}/IntervalBlock/1", f"{READING}/IntervalBlock", block(*given)),
        entry(
            f"{READING}/IntervalBlock/2",
            f"{READING}/IntervalBlock",
            block(reading(STARTS[2], VALUES[2], COSTS[2], 8)) if readings is None else block(),
        ),
        entry(f"{POINT}/UsageSummary/1", f"{POINT}/UsageSummary", bill or summary(name)),
    )
