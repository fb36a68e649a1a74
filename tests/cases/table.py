"""Ninety questions that finishers really ask, and which of them finishlog answers.

Each is restated in our own words. What its answer must show line by line, and the trap that a
simple timer falls into, stand as a `Question` above the test that asks it through the real
commands. A question that is not answered yet names the capability that it waits for.
"""

from __future__ import annotations

from typing import NamedTuple

CAPABILITIES = {
    "OBS": "Observation beats clock",
    "UNDER": "What lies underneath",
    "ENV": "Conditions over the whole interval",
    "PLAN": "Planning both ways",
    "PART": "State per part, face and zone",
    "LOG": "Trustworthy history",
    "MAT": "Materials ledger, units and quantity",
    "MILE": "Several milestones, not one 'dry'",
    "UNCERT": "Conflicting or uncertain guidance",
    "WINDOW": "Windows with two ends or a gap, plus prep",
    "RECALL": "Review of past finishes",
    "SAFE": "Event-driven safety by chemistry",
}


class Case(NamedTuple):
    """One question. `waits_for`: a capability; empty when it is answered.

    `said`: what it says of finishes, woods, users and a label's figures (a class stands for the
    finish that it names); its test may type no other. Contrasts of its own lines count.
    """

    id: str
    question: str
    capabilities: str
    waits_for: str = ""
    said: str = ""


CASES = (
    Case(
        "FC001",
        "hours past the label a film still grabs the finger: strip it or wait",
        "OBS UNDER ENV MAT",
        said="boiled-linseed-oil oil-polyurethane recoat",
    ),
    Case(
        "FC003",
        "one wood of a piece is dry, the oily one beside it is not",
        "OBS UNDER PLAN PART",
        said="due maple method oil-polyurethane oil-varnish-blend shellac-1lb",
    ),
    Case(
        "FC005",
        "the can speaks of a warm room, the basement is cool",
        "OBS ENV PLAN",
        said="label-air method recoat wiping-varnish",
    ),
    Case(
        "FC006",
        "a label gives its time at one temperature, the night was colder",
        "OBS ENV RECALL",
        said="recoat spar-varnish",
    ),
    Case(
        "FC008",
        "oil finish from a can ten years old stays oily",
        "OBS LOG MAT",
        said="oil-varnish-blend",
    ),
    Case(
        "FC009",
        "stripped once, tacky again with a fresh can: not a matter of time",
        "OBS UNDER LOG MAT",
        said="oil-polyurethane",
    ),
    Case(
        "FC011",
        "raw oil laid on like varnish, a coat a day",
        "OBS UNDER WINDOW",
        said="cherry paste-wax tung-oil",
    ),
    Case(
        "FC012",
        "second coat wrinkles after a damp, cool night",
        "OBS ENV LOG WINDOW",
        said="oil-polyurethane",
    ),
    Case(
        "FC013",
        "two days between coats were not enough on one of two woods",
        "OBS UNDER ENV PART",
        said="oak oil-polyurethane pine",
    ),
    Case(
        "FC014",
        "catalysed varnish wrinkles on some days only",
        "OBS UNDER WINDOW RECALL",
        said="conversion-varnish method wiping-stain",
    ),
    Case(
        "FC016",
        "waterborne sealer over oil that is two days old",
        "OBS UNDER PLAN MILE",
        said="cherry due oil-varnish-blend waterborne-clear wiping-varnish",
    ),
    Case(
        "FC018",
        "a week away between two coats",
        "PLAN WINDOW",
        said="oil-polyurethane poplar wiping-stain",
    ),
    Case(
        "FC019",
        "recoat within two hours, or wait a day and sand",
        "PLAN WINDOW",
        said="oil-polyurethane window",
    ),
    Case(
        "FC021",
        "a workplace for weekends only, two coats a visit",
        "PLAN WINDOW",
        said="due spar-varnish",
    ),
    Case(
        "FC022",
        "waterborne sealer scrapes off an oil stain of one day",
        "OBS UNDER PART",
        said="oak waterborne-clear wiping-stain",
    ),
    Case(
        "FC023",
        "oil under waterborne: blisters on the solid parts, none on the veneer",
        "UNDER PART RECALL",
        said="cherry oil-varnish-blend waterborne-clear",
    ),
    Case(
        "FC026",
        "the heater goes off for the night",
        "ENV PLAN",
        said="spar-varnish",
    ),
    Case(
        "FC027",
        "a garage below the least temperature of waterborne",
        "ENV PLAN MILE",
        said="waterborne-clear",
    ),
    Case(
        "FC028",
        "oil finish in a garage at 4 °C",
        "ENV UNCERT RECALL",
        said="cherry oil-varnish-blend shellac-2lb waterborne-clear wiping-varnish",
    ),
    Case(
        "FC029",
        "the cold comes tonight, the delivery stands",
        "ENV PLAN MILE",
        waits_for="PLAN",
    ),
    Case(
        "FC032",
        "too hot: it skins before it flows",
        "ENV PLAN",
        said="spar-varnish",
    ),
    Case(
        "FC033",
        "hot, damp, and the house heated to help",
        "OBS ENV PLAN",
        said="due oil-polyurethane",
    ),
    Case(
        "FC035",
        "blush can be put right for a few hours only",
        "OBS UNDER ENV WINDOW",
        said="birch film lacquer-precatalysed method pine wiping-stain",
    ),
    Case(
        "FC036",
        "coated outdoors, cured in the cooled garage",
        "ENV PLAN",
        said="spar-varnish",
    ),
    Case(
        "FC038",
        "finished today, handed over tomorrow",
        "PLAN MILE",
        waits_for="PLAN",
    ),
    Case(
        "FC039",
        "polyurethane over linseed oil: two days or a week",
        "UNDER PLAN",
        said="boiled-linseed-oil cherry oil-polyurethane",
    ),
    Case(
        "FC041",
        "the old oil rule: every hour, day, week, month",
        "PLAN LOG UNCERT SAFE",
        waits_for="PLAN",
    ),
    Case(
        "FC042",
        "a top cups after one face was coated a day before the other",
        "UNDER ENV PART UNCERT",
        said="oil-polyurethane walnut",
    ),
    Case(
        "FC043",
        "a batch of tops, coated on one side",
        "UNDER PART",
        said="beech conversion-varnish",
    ),
    Case(
        "FC045",
        "both faces of two dozen tops in one sitting",
        "PLAN PART MILE",
        waits_for="PLAN",
    ),
    Case(
        "FC046",
        "many doors and fronts: in which order the coats",
        "PLAN PART WINDOW",
        said="conversion-varnish method",
    ),
    Case(
        "FC048",
        "two woods at two stages, to be packed in the morning",
        "PLAN PART MILE",
        said="lacquer-sprayed maple walnut wiping-varnish",
    ),
    Case(
        "FC050",
        "a dozen parts, two faces, three coats: what is missing before the glue-up",
        "PART LOG MILE",
        said="lacquer-sprayed",
    ),
    Case(
        "FC051",
        "wrapped and shipped: when",
        "ENV MILE",
        said="glaze lacquer-precatalysed wiping-stain",
    ),
    Case(
        "FC053",
        "furniture back on the same evening",
        "OBS MILE UNCERT",
        said="oil-polyurethane recoat",
    ),
    Case(
        "FC054",
        "it felt hard after two days and took a mug ring",
        "MILE",
        said="oak oil-polyurethane",
    ),
    Case(
        "FC055",
        "a cot: when may a child sleep in it",
        "PART MILE UNCERT SAFE",
        said="child oil-polyurethane",
    ),
    Case(
        "FC057",
        "when to rub out and wax",
        "OBS MILE UNCERT",
        said="alkyd-varnish ash paste-wax shellac-2lb waterborne-clear",
    ),
    Case(
        "FC059",
        "one oily rag on a ledge",
        "SAFE",
        said="oil-varnish-blend",
    ),
    Case(
        "FC060",
        "rags that felt dry after five hours outdoors",
        "SAFE",
        said="gel-stain wiping-stain",
    ),
    Case(
        "FC061",
        "gloves on the ground, a day later",
        "SAFE",
        said="wiping-stain",
    ),
    Case(
        "FC063",
        "only linseed does that?",
        "UNDER UNCERT SAFE",
        said="alkyd-varnish gel-stain lacquer-sprayed method oil-polyurethane oil-varnish-blend"
        " shellac-2lb tung-oil unknown waterborne-clear wiping-stain",
    ),
    Case(
        "FC064",
        "scrapings of half-cured urethane in the bin",
        "LOG SAFE",
        said="oil-polyurethane",
    ),
    Case(
        "FC065",
        "sanding off a coat that never dried",
        "OBS SAFE",
        said="oil-polyurethane",
    ),
    Case(
        "FC068",
        "a heater to hurry the drying",
        "ENV SAFE",
        said="oil-polyurethane",
    ),
    Case(
        "FC069",
        "somebody pregnant two rooms away",
        "MILE UNCERT SAFE",
        said="oil-polyurethane",
    ),
    Case(
        "FC070",
        "mixed on one day, used on the next, another mix on top",
        "OBS MAT WINDOW",
        said="lacquer-postcatalysed",
    ),
    Case(
        "FC072",
        "old shellac that does not harden",
        "OBS PLAN MAT UNCERT",
        said="made shellac-2lb",
    ),
    Case(
        "FC073",
        "cans that froze over the winter",
        "ENV MAT",
        said="alkyd-varnish waterborne-clear",
    ),
    Case(
        "FC075",
        "end grain tacky, long grain dry",
        "OBS UNDER PART",
        said="cocobolo wiping-varnish",
    ),
    Case(
        "FC077",
        "stain over conditioner: at once or next day",
        "UNDER UNCERT WINDOW RECALL",
        said="cherry pine washcoat wiping-stain",
    ),
    Case(
        "FC078",
        "which oil went on table one",
        "UNDER PART LOG RECALL",
        said="cherry paste-wax tung-oil wiping-varnish",
    ),
    Case(
        "FC079",
        "a dye mix and a stain time to be made again",
        "MAT RECALL",
        said="oak oil-polyurethane pine poplar water-dye wiping-stain",
    ),
    Case(
        "FC080",
        "does a spread rate count once or for three coats",
        "MAT",
        waits_for="MAT",
    ),
    Case(
        "FC082",
        "how much film is too much",
        "PART LOG MAT",
        said="conversion-varnish film",
    ),
    Case(
        "FC084",
        "a dozen doors left and a litre in the can",
        "PART MAT WINDOW",
        waits_for="MAT",
    ),
    Case(
        "FC085",
        "flakes measured by volume",
        "LOG MAT",
        said="shellac-2lb",
    ),
    Case(
        "FC086",
        "from a 2 lb cut to a 1 lb cut",
        "MAT UNCERT",
        said="shellac-2lb",
    ),
    Case(
        "FC088",
        "the clocks change while it dries",
        "LOG",
        said="oil-polyurethane recoat",
    ),
    Case(
        "FC090",
        "a coat written down two days late, between two others",
        "LOG WINDOW",
        said="oil-polyurethane",
    ),
    Case(
        "FC091",
        "30m was not 30 minutes",
        "LOG MAT",
        said="due oil-polyurethane recoat",
    ),
    Case(
        "FC092",
        "sorted as text, in the wrong order",
        "LOG",
        said="oil-polyurethane",
    ),
    Case(
        "FC095",
        "another system after a topcoat that failed",
        "UNDER ENV LOG",
        said="gel-stain latex-enamel pigmented-shellac waterborne-clear",
    ),
    Case(
        "FC096",
        "stripped after a month, done again in another finish",
        "LOG MILE UNCERT RECALL",
        said="lacquer-sprayed method waterborne-clear",
    ),
    Case(
        "FC098",
        "gluing faces that were once oiled",
        "PLAN PART LOG",
        said="boiled-linseed-oil",
    ),
    Case(
        "FC099",
        "before or after assembly, in a cold shop",
        "UNDER ENV PLAN",
        said="oil-varnish-blend shellac-2lb",
    ),
    Case(
        "FC101",
        "back after weeks: where was I",
        "PLAN LOG WINDOW",
        said="oil-polyurethane waterborne-clear",
    ),
    Case(
        "FC102",
        "a restriction that never ends",
        "UNDER MILE",
        said="food lacquer-sprayed soap",
    ),
    Case(
        "FC104",
        "a stain coat given up half-way",
        "OBS UNDER PART LOG WINDOW",
        said="oil-polyurethane wiping-stain",
    ),
    Case(
        "FC105",
        "what the first coat really took",
        "OBS ENV PLAN MILE",
        said="due oil-polyurethane",
    ),
    Case(
        "FC221",
        "wax over cured polyurethane over stain",
        "UNDER MILE PART",
        said="oil-polyurethane paste-wax water-dye",
    ),
    Case(
        "FC222",
        "lacquer over yesterday's shellac",
        "UNDER UNCERT",
        said="conversion-varnish lacquer-sprayed method oil-polyurethane shellac-2lb thin",
    ),
    Case(
        "FC223",
        "oil over milk paint, and no paint over the oil",
        "UNDER PART SAFE",
        said="milk-paint oil-varnish-blend",
    ),
    Case(
        "FC224",
        "a rough-turned bowl gained weight: wet, or fit to turn",
        "OBS ENV LOG",
        said="maple tung-oil",
    ),
    Case(
        "FC225",
        "an unwashed epoxy seal under a glaze that dried late",
        "OBS UNDER ENV LOG",
        said="alkyd-varnish epoxy-seal glaze",
    ),
    Case(
        "FC226",
        "the first doors from a satin can that was not stirred",
        "PART LOG MAT RECALL",
        said="waterborne-clear",
    ),
    Case(
        "FC227",
        "waterborne brushed over a water dye pulls its colour",
        "UNDER MAT UNCERT",
        said="alkyd-varnish method shellac-2lb water-dye waterborne-clear",
    ),
    Case(
        "FC228",
        "epoxy weighed by the ratio for volumes",
        "MAT LOG PART OBS",
        waits_for="MAT",
    ),
    Case(
        "FC229",
        "a floor in two halves, the piano in between",
        "PLAN PART MILE",
        waits_for="PLAN",
    ),
    Case(
        "FC230",
        "four pours of epoxy in a weekend",
        "PLAN WINDOW MAT",
        said="epoxy-pour film recoat window",
    ),
    Case(
        "FC231",
        "walnut oil now, a film on it by Christmas",
        "PLAN UNDER UNCERT WINDOW",
        waits_for="PLAN",
    ),
    Case(
        "FC232",
        "the wiping towels have been washed",
        "SAFE LOG",
        said="boiled-linseed-oil shellac-2lb",
    ),
    Case(
        "FC233",
        "mask cartridges that hung open for months",
        "SAFE LOG MAT",
        said="method oil-polyurethane organic-vapour",
    ),
    Case(
        "FC234",
        "a bird in the house while it dries",
        "SAFE PLAN MILE UNCERT",
        said="oil-polyurethane",
    ),
    Case(
        "FC235",
        "pale strips beside the panels in January: who else will call",
        "RECALL ENV LOG PART",
        said="cherry conversion-varnish maple oak veneer water-dye",
    ),
    Case(
        "FC236",
        "touching up a seat that was waxed two years ago",
        "RECALL UNDER PART",
        said="cherry oil-varnish-blend paste-wax",
    ),
    Case(
        "FC237",
        "gloss twice and satin last: what will satin alone look like",
        "RECALL UNDER LOG",
        said="oil-polyurethane walnut",
    ),
    Case(
        "FC238",
        "a pint and a half: which pint, how much to buy, when due",
        "MAT RECALL PLAN UNCERT",
        waits_for="MAT",
    ),
    Case(
        "FC239",
        "which poly was it",
        "LOG UNCERT UNDER SAFE",
        said="oil-polyurethane poly polyurethane-unknown waterborne-clear waterborne-oil-modified"
        " wiping-stain",
    ),
    Case(
        "FC240",
        "one line for six doors, one of them sanded back",
        "LOG PART UNCERT",
        said="unknown",
    ),
)
