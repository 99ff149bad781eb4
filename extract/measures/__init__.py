"""What each quantity measures, of what, where and when."""

from __future__ import annotations

from spacy.tokens import Doc

from extract.ids import Mint
from extract.measures import inferred, item, said
from extract.measures.figure import Figure, Finding
from extract.measures.lexicon import lexicon_of
from extract.measures.phase import find_phase
from extract.measures.said import usual_measure
from extract.measures.restated import find_followed, find_restated
from extract.measures.scene import Scene
from extract.spans import Measured, Quantity
from extract.trade import Trade

__all__ = ["find_measures"]


def find_measures(doc: Doc, quantities: tuple[Quantity, ...], trade: Trade) -> tuple[Measured, ...]:
    """Quantities tied to attribute, item, place and phase, in order. Linear in the number of tokens."""
    scene = Scene(doc, quantities, lexicon_of(trade))
    return _mint(scene, _find_all(scene))


def _find_all(scene: Scene) -> list[Finding]:
    findings: list[Finding] = []
    for index, quantity in enumerate(scene.quantities):
        findings.append(_find(Figure(scene, index, quantity, findings[:])))
    return findings


def _find(figure: Figure) -> Finding:
    finding = Finding(figure, restates=find_restated(figure), follows=find_followed(figure))
    for name, rule in said.RULES:
        finding.attribute = rule(figure, finding)
        if finding.attribute:
            finding.attribute_rule = name
            break
    for name, rule in item.RULES:
        thing = rule(figure, finding)
        if thing:
            finding.item, finding.item_head, finding.item_role = thing.name, thing.head, thing.role
            finding.item_rule, finding.item_at = name, thing.start
            break
    if finding.attribute == "width" and finding.item and usual_measure(finding.item, figure) == "diameter":
        finding.attribute = "diameter"  # across a round thing
    if not finding.attribute:
        for name, rule in inferred.RULES:
            finding.attribute = rule(figure, finding)
            if finding.attribute:
                finding.attribute_rule = name
                break
    finding.phase, finding.phase_rule = find_phase(figure, finding)
    return finding


def _mint(scene: Scene, findings: list[Finding]) -> tuple[Measured, ...]:
    mint = Mint()
    narration = scene.narration
    ids: dict[int, str] = {}
    measured: list[Measured] = []
    for finding in findings:
        quantity = finding.figure.quantity
        quote = narration.quote(scene.doc, quantity.start, quantity.end)
        cue = narration.transcript.cues[narration.cue[quantity.start]].text
        ids[finding.figure.index] = mint.mint("m", quote, cue)
        measured.append(
            Measured(
                id=ids[finding.figure.index],
                quantity=quantity,
                attribute=finding.attribute,
                item=finding.item,
                where=finding.where,
                phase=finding.phase,
                same_as=ids[finding.restates.figure.index] if finding.restates else None,
            )
        )
    return tuple(measured)
