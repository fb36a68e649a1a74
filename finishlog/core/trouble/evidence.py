"""One look for each kind of evidence that a log can hold for or against a cause."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.trouble import in_the_air, in_the_film, in_the_mix, in_the_wood, in_the_work
from finishlog.core.trouble.scene import Look, Scene

LOOKS: Mapping[Evidence, Callable[[Scene], Look]] = {
    Evidence.HUMID: in_the_air.humid,
    Evidence.COLD: in_the_air.cold,
    Evidence.HOT: in_the_air.hot,
    Evidence.BELOW_TOO_YOUNG: in_the_film.young_below,
    Evidence.WINDOW_MISSED: in_the_film.window_missed,
    Evidence.NOT_SCUFFED: in_the_film.not_scuffed,
    Evidence.NOT_WIPED: in_the_work.not_wiped,
    Evidence.STOOD_LONGER: in_the_work.stood_longer,
    Evidence.UNSUITED_BELOW: in_the_film.unsuited,
    Evidence.OIL_BELOW: in_the_film.oil_below,
    Evidence.UNWASHED_BELOW: in_the_film.unwashed,
    Evidence.BARRIER_LEFT_OUT: in_the_film.barrier_left_out,
    Evidence.THICK: in_the_film.thick,
    Evidence.FILM_IN_ALL: in_the_film.film_in_all,
    Evidence.HANDLED_EARLY: in_the_work.handled,
    Evidence.SANDED_BEFORE: in_the_work.sanded,
    Evidence.ONE_FACE: in_the_film.one_face,
    Evidence.GLUE_FACE_COATED: in_the_film.glue_face,
    Evidence.SURPLUS_BELOW: in_the_film.surplus_below,
    Evidence.OTHER_SCUFF: in_the_work.other_scuff,
    Evidence.OLD_CONTAINER: in_the_mix.old_can,
    Evidence.DOUBTFUL_CAN: in_the_mix.came_from,
    Evidence.OTHER_CAN: in_the_mix.other_can,
    Evidence.ADDED: in_the_mix.added,
    Evidence.NOT_STIRRED: in_the_mix.not_stirred,
    Evidence.TOOL: in_the_mix.tool,
    Evidence.GRIT_LEFT_OUT: in_the_wood.grit_left_out,
    Evidence.BEGAN_FINER: in_the_wood.began_finer,
    Evidence.OTHER_COATS: in_the_film.other_coats,
    Evidence.NOT_SANDED: in_the_wood.not_sanded,
    Evidence.COLOURED_JOINED: in_the_wood.coloured_joined,
    Evidence.SOLID_WOOD: in_the_wood.solid_wood,
    Evidence.BUFFED_LATE: in_the_work.buffed_late,
    Evidence.BUFFED_EARLY: in_the_work.buffed_early,
    Evidence.GLUED_UP: in_the_wood.glued_up,
    Evidence.OLD_FINISH: in_the_wood.old_finish,
    Evidence.OTHER_AIR: in_the_wood.other_air,
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
