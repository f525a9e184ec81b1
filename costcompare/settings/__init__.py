"""What to set in this home with an option in place, each setting with what it rests on.

card           the settings card (frozen, units in the names)
bench          an option tried with other settings, its year and its bill
home_settings  the card of an option; a sizing with the cards of all options
"""

from costcompare.settings.card import (
    FurnaceSetting,
    HeadSetting,
    HeaterSetting,
    NightSetting,
    SettingsCard,
    StripSetting,
    Tried,
)
from costcompare.settings.home_settings import NO_DIFFERENCE, settings, sized_with_settings

__all__ = [
    "NO_DIFFERENCE",
    "FurnaceSetting",
    "HeadSetting",
    "HeaterSetting",
    "NightSetting",
    "SettingsCard",
    "StripSetting",
    "Tried",
    "settings",
    "sized_with_settings",
]
