"""What a household can say of itself, its well and its water. Every field may be left out."""

from __future__ import annotations

from datetime import date
from enum import StrEnum

from pydantic import Field

from wellchem.models.base import Model
from wellchem.models.codes import SamplingPoint


class WellType(StrEnum):
    """How the well was made."""

    DRILLED = "drilled"
    DUG = "dug"
    DRIVEN = "driven"
    BORED = "bored"
    SPRING = "spring"


class Observation(StrEnum):
    """What people notice."""

    ROTTEN_EGG_COLD = "rotten_egg_cold"
    ROTTEN_EGG_HOT = "rotten_egg_hot"
    ROTTEN_EGG_BOTH = "rotten_egg_both"
    ORANGE_STAINING = "orange_staining"
    BLACK_STAINING = "black_staining"
    BLUE_GREEN_STAINING = "blue_green_staining"
    SCALE = "scale"
    CLOUDINESS = "cloudiness"
    SLIME = "slime"
    COLOR_ON_STANDING = "color_on_standing"
    TEA_COLOR = "tea_color"
    METALLIC_TASTE = "metallic_taste"
    SALTY_TASTE = "salty_taste"
    SEDIMENT = "sediment"
    CHANGES_AFTER_RAIN = "changes_after_rain"
    ILLNESS = "illness"


class Nearby(StrEnum):
    """Sources of contamination near the well."""

    SEPTIC = "septic"
    FUEL = "fuel"
    FARM = "farm"
    LANDFILL = "landfill"
    MINE = "mine"
    AIRPORT = "airport"
    ROAD_SALT = "road_salt"
    SEA = "sea"


class Plumbing(StrEnum):
    """Main material of the household's pipes."""

    COPPER = "copper"
    PLASTIC = "plastic"
    GALVANISED = "galvanised"
    LEAD = "lead"


class Household(Model):
    """The household and its well; None means not said."""

    people: int | None = Field(default=None, ge=0)
    infants: bool | None = None
    children: bool | None = None
    pregnancy: bool | None = None
    immunocompromised: bool | None = None
    sodium_restricted: bool | None = None
    well_type: WellType | None = None
    well_depth: float | None = Field(default=None, ge=0, description="metres")
    well_age: float | None = Field(default=None, ge=0, description="years")
    well_cap_sound: bool | None = None
    flooded: bool | date | None = Field(
        default=None, description="whether the well was ever under water, or the day on which it last was"
    )
    surface_influenced: bool | None = None
    bacteria_return: bool | None = Field(default=None, description="found again after the well was disinfected")
    bacteria_after_rain: bool | None = Field(default=None, description="found after rain or thaw, and less in between")
    pump_flow: float | None = Field(default=None, gt=0, description="litres per minute")
    peak_demand: float | None = Field(default=None, gt=0, description="litres per minute")
    daily_use: float | None = Field(default=None, gt=0, description="litres per day")
    plumbing: Plumbing | None = None
    plumbing_age: float | None = Field(default=None, ge=0, description="years")
    treatment: tuple[str, ...] | None = None
    chlorinated: bool | None = None
    sampling_point: SamplingPoint | None = Field(default=None, description="where the report does not say it")
    nearby: tuple[Nearby, ...] | None = None
    observations: tuple[Observation, ...] | None = None
    last_bacteria_test: date | None = None
