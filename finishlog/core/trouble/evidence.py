"""One look for each kind of evidence that a log can hold for or against a cause."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.trouble import in_the_air, in_the_film, in_the_wood
from finishlog.core.trouble.scene import Look, Scene

LOOKS: Mapping[Evidence, Callable[[Scene], Look]] = {
    Evidence.HUMID: in_the_air.humid,
    Evidence.COLD: in_the_air.cold,
    Evidence.HOT: in_the_air.hot,
    Evidence.BELOW_TOO_YOUNG: in_the_film.young_below,
    Evidence.WINDOW_MISSED: in_the_film.window_missed,
    Evidence.NOT_SCUFFED: in_the_film.not_scuffed,
    Evidence.NOT_WIPED: in_the_film.not_wiped,
    Evidence.STOOD_LONGER: in_the_film.stood_longer,
    Evidence.UNSUITED_BELOW: in_the_film.unsuited,
    Evidence.OIL_BELOW: in_the_film.oil_below,
    Evidence.THICK: in_the_film.thick,
    Evidence.FILM_IN_ALL: in_the_film.film_in_all,
    Evidence.HANDLED_EARLY: in_the_film.handled,
    Evidence.SANDED_BEFORE: in_the_film.sanded,
    Evidence.ONE_FACE: in_the_film.one_face,
    Evidence.GLUE_FACE_COATED: in_the_film.glue_face,
    Evidence.OLD_CONTAINER: in_the_wood.old_can,
    Evidence.DOUBTFUL_CAN: in_the_wood.came_from,
    Evidence.OTHER_CAN: in_the_wood.other_can,
    Evidence.OTHER_GRIT: in_the_wood.other_grit,
    Evidence.OILY_WOOD: in_the_wood.oily_wood,
    Evidence.RESINOUS_WOOD: in_the_wood.resinous_wood,
    Evidence.BLOTCHY_WOOD: in_the_wood.blotchy_wood,
    Evidence.OPEN_PORES: in_the_wood.open_pores,
    Evidence.WET_WOOD: in_the_wood.wet_wood,
    Evidence.IRON: in_the_wood.iron,
    Evidence.DUSTY: in_the_wood.dusty,
    Evidence.EARLIER_TOO: in_the_wood.earlier_too,
}
