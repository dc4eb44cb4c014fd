"""The tables of treatment: whole, sourced, and true to what the trade holds."""

import pytest

from wellchem.interpretation import practice
from wellchem.interpretation.treatment import sizes
from wellchem.interpretation.treatment.feed import SITE
from wellchem.interpretation.treatment.prediction import _PROCESSES
from wellchem.interpretation.treatment.tables import (
    BEHIND,
    GRIT,
    ORGANISMS,
    answers,
    conditions,
    constant,
    places,
    removal,
    rows,
    source,
    stages,
)
from wellchem.vocabulary import bundled

COMMON = "common practice, no source"
SOURCED = ("stages", "feed_conditions", "removals", "sizing", "first_steps", "plumbing_metals", "customary_units")


@pytest.mark.parametrize("table", SOURCED)
def test_every_row_names_its_document_and_how_it_was_checked(table):
    for row in rows(table):
        found = source(row)
        assert found.title
        if found.title == COMMON:
            assert not row["checked"], row
        else:
            assert row["checked"] in ("page", "memory", "computed"), row


def test_every_document_is_used_and_named_once():
    ids = [row["id"] for row in rows("sources")]
    assert len(ids) == len(set(ids))
    used = {row["source"] for table in SOURCED for row in rows(table)}
    assert set(ids) <= used


def test_stages_and_problems_are_known():
    known = {row.code for row in practice.problems()}
    for stage, codes in answers().items():
        assert stage in stages()
        assert codes <= known
    assert set(places()) <= known
    for row in rows("first_steps"):
        assert row["problems"] == "any" or set(row["problems"].split("|")) <= known
    for kind in stages().values():
        assert kind.process in _PROCESSES
        assert kind.place in ("entry", "tap")
        assert conditions(kind.code), kind.code


def test_analytes_are_known_and_ranges_run_upwards():
    analytes = bundled().analytes
    for row in rows("removals"):
        name = row["analyte"]
        assert name in analytes or name.removeprefix("@") in set(practice.groups().values()), name
        assert 0 <= float(row["low"]) <= float(row["high"]) <= 100
        assert bool(row["leaves"]) == bool(row["challenge"])
    for kind in stages():
        for condition in conditions(kind):
            for name in condition.amounts:
                assert name in analytes or name in (ORGANISMS, GRIT) or name.startswith((BEHIND, SITE)), name
            assert condition.minimum <= condition.maximum
    for row in rows("sizing"):
        assert float(row["low"]) <= float(row["high"])
    assert set(sizes.SIZED) <= set(stages())


def test_units_of_feed_conditions_are_canonical():
    for row in rows("feed_conditions"):
        if row["unit"]:
            for name in row["amounts"].split("+"):
                assert bundled().analytes[name].unit == row["unit"], row


def feed_of(stage, name):
    (found,) = [one for one in conditions(stage) if name in one.amounts]
    return found


def test_common_practice_is_held_and_marked():
    """What the trade does without a document behind it: common practice, no source."""
    order = {code: kind.order for code, kind in stages().items()}
    # softening alone takes up to about 1 mg/L of dissolved iron
    assert feed_of("softening", "iron").maximum == 1
    # more wants oxidation and filtration ahead of it
    assert order["oxidising_filter"] < order["softening"]
    # screens by hand every few days, cartridges once a year and sooner when the flow drops, washing every four days
    for stage, words in (
        ("coarse_screen", "by hand every few days"),
        ("sediment_filter", "at least once a year, sooner when the flow drops"),
        ("sediment_backwash", "about every four days"),
    ):
        assert words in stages()[stage].maintenance
        assert COMMON in stages()[stage].maintenance
    # softener and tannin resins use salt
    assert "Salt" in stages()["softening"].maintenance
    assert "Salt" in stages()["tannin_exchange"].maintenance
    # tannin resin after softening; ultraviolet behind sediment and carbon; reverse osmosis last at one tap
    assert order["softening"] < order["tannin_exchange"]
    assert feed_of("tannin_exchange", "total_hardness").source.title == COMMON
    assert order["sediment_filter"] < order["carbon"] < order["fine_filter"] < order["ultraviolet"]
    assert order["reverse_osmosis"] > max(kind.order for kind in stages().values() if kind.place == "entry")
    assert stages()["reverse_osmosis"].place == "tap"
    # the pressure tank, then screen, cartridge, neutralisation, chlorination, iron, arsenic, softening, anions, carbon
    trade = ["coarse_screen", "sediment_filter", "neutralising_calcite", "chlorination", "oxidising_filter"]
    trade += ["arsenic_adsorption", "softening", "nitrate_exchange", "tannin_exchange", "carbon", "ultraviolet"]
    assert [order[code] for code in trade] == sorted(order[code] for code in trade)


def test_published_limits_of_feed_water():
    # Ten States policy on ultraviolet light, table of feed-water limits (memory)
    for name, maximum in (("iron", 0.3), ("manganese", 0.05), ("total_hardness", 120), ("turbidity", 1)):
        assert feed_of("ultraviolet", name).maximum == maximum
    # Wisconsin NR 811.57(2), page; Louisiana 51:XII.183 A, page; handbook table of remedies, page
    assert feed_of("softening", "iron").source.checked == "page"
    assert feed_of("nitrate_exchange", "iron").maximum == 0.3
    assert feed_of("oxidising_filter", "ph").minimum == 6.7


def test_published_rejection_of_a_membrane():
    # AE-1047, table of typical rejection (memory): chloride 85 to 92 %, calcium 94 to 98 %, arsenic V 92 to 96 %
    for name, low, high in (("chloride", 0.85, 0.92), ("calcium", 0.94, 0.98), ("arsenic", 0.92, 0.96)):
        row = removal("reverse_osmosis", name)
        assert (row.least, row.most) == pytest.approx((low, high))
    # Nebraska Extension G1490: gases pass
    assert removal("reverse_osmosis", "radon_222").most == 0
    assert removal("reverse_osmosis", "hydrogen_sulfide").most == 0


def test_an_unknown_constant_is_an_error():
    with pytest.raises(KeyError):
        constant("wishes")
