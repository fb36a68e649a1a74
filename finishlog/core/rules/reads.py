"""What many rules read of the record, under one name; a test holds each rule to what it reads."""

from __future__ import annotations

# Where a piece stood.
STOOD = "part.room moved.when moved.room moved.pieces"
# What was read there.
MEASURED = "reading.when reading.room reading.air air-import.room"
# A heater that runs for once.
HEATED = "heat.when heat.room heat.temperature_c"
# The air that it met, and will meet.
AIR = f"{STOOD} {MEASURED} {HEATED} room.coldest_night_c room.usual"
WOOD = "part.species zone.species"
# Which coats lie on it.
LAYERS = "coat.when stripped.survives"
# Whether its wood lies open.
BARE = f"{LAYERS} face.kind part.old_finish"
# A coat that was broken off leaves open what is under it, and so does what only fills holes.
BROKEN_OFF = "coat.stopped"
OPEN_WOOD = f"{BARE} {BROKEN_OFF} product.class_key"
# The clock of a film: its label, its air, the pace that was learnt, a mending that wet it again.
WAIT = (
    f"{LAYERS} {AIR} {WOOD} product.class_key product.label coat.product coat.method"
    " coat.container coat.flooded coat.wet_film_um fault.what work.operation work.when"
)
# What is wrong with it, and what answered that, at its place or all over.
FAULTS = (
    "fault.what fault.place product.class_key work.operation work.place check.found check.place"
    " stripped.survives"
)
# The wait, unless a check ends it.
STAGE = f"{WAIT} check.when check.found"
# The coat that comes after work by hand.
TO_COME = "step.operation step.product coat.product product.class_key product.name"
# What comes onto the wood: its product and its sheet, the can or mix it comes from, what was noted
# of these and of the step.
COMES = (
    "step.note product.name product.class_key product.note container.note container.drawn_from"
    " mix-part.name mix-part.product product.own_rules"
)
# What there is to breathe through.
AIR_SUPPLY = "respirator.deed respirator.holds"
# What the person says of the product that comes.
SAYS = "product.own_rules"
