"""May a zone be handled so far: the same rules, asked once for each stage, as it is asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from finishlog.core.findings import Act
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation
from finishlog.core.rules.film.observed import check_failed
from finishlog.core.verdict.fold import decide, fold
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked, work_asked
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Verdict

# What a stage of the film is asked for; a recoat by the coat that is due (`ZoneState.recoat`).
# Fully hard is asked of use, by its own stage.
_ASKED: Mapping[Stage, Asked] = {
    Stage.SAND: work_asked(Operation.SAND),
    Stage.TURN: Asked(Act.TURN),
    Stage.CLAMP: Asked(Act.CLAMP),
    Stage.STACK: work_asked(Operation.STACK),
    Stage.PACK: work_asked(Operation.PACK),
    Stage.CLOSE: Asked(Act.CLOSE),
    Stage.LIGHT_USE: work_asked(Operation.USE),
    Stage.RUB: work_asked(Operation.RUB),
    Stage.CURED: Asked(Act.USE, toward=Stage.CURED),
}
# It is a touch that tells, whatever else the film is good for.
_TOUCHED = Asked(Act.WORK, toward=Stage.TACK_FREE)


class Handling(Mapping[Stage, Verdict]):
    """The verdict on each stage of one zone, worked out as it is asked for."""

    def __init__(self, zone: ZoneState, around: Around) -> None:
        self._zone, self._around = zone, around
        self._known: dict[Stage, Verdict] = {}

    def __getitem__(self, stage: Stage) -> Verdict:
        if stage not in self._known:
            self._known[stage] = self._work_out(stage)
        return self._known[stage]

    def _work_out(self, stage: Stage) -> Verdict:
        if stage is Stage.TACK_FREE:
            return fold([*check_failed.find(self._zone, _TOUCHED, self._around)], _TOUCHED)
        return decide(self._zone, _ASKED[stage], self._around)

    def __iter__(self) -> Iterator[Stage]:
        return iter((Stage.TACK_FREE, *_ASKED))

    def __len__(self) -> int:
        return 1 + len(_ASKED)
