"""What each quantity measures, of what, where and when."""

from __future__ import annotations

from spacy.tokens import Doc

from extract.ids import Mint
from extract.measures.attribute import INFERRED, SAID, Rule, usual_measure
from extract.measures.attribute.weighing import weigh_attribute
from extract.measures.figure import Figure, Finding
from extract.measures.item import find_item
from extract.measures.lexicon import lexicon_of
from extract.measures.phase import by_weight
from extract.measures.place import find_place
from extract.measures.restated import find_followed, find_restated
from extract.measures.scene import Scene
from extract.spans import Measured, Quantity
from extract.trade import Trade

__all__ = ["find_measures"]


def find_measures(doc: Doc, quantities: tuple[Quantity, ...], trade: Trade) -> tuple[Measured, ...]:
    """Quantities tied to attribute, item, place and phase, in order. Linear in the number of tokens."""
    scene = Scene(doc, quantities, lexicon_of(trade))
    return _mint(scene, find_all(scene))


def find_all(scene: Scene) -> list[Finding]:
    """The findings of all quantities, with the rules that gave them; each may lean on those before it."""
    findings: list[Finding] = []
    for index in range(len(scene.quantities)):
        findings.append(_find(Figure(scene, index, findings)))
    return findings


def _find(figure: Figure) -> Finding:
    finding = Finding(figure, restates=find_restated(figure), follows=find_followed(figure))
    _apply(SAID, figure, finding)
    find_item(figure, finding)
    across = finding.attribute == "width" and finding.noun is None
    if across and finding.item and usual_measure(finding.item.name, figure) == "diameter":
        finding.attribute = "diameter"  # what is across a round thing
    if not finding.attribute:
        _apply(INFERRED, figure, finding)
    weigh_attribute(figure, finding, SAID, INFERRED)
    finding.where = find_place(figure, finding)
    finding.phase = by_weight(figure, finding)
    return finding


def _apply(rules: tuple[tuple[str, Rule], ...], figure: Figure, finding: Finding) -> None:
    for name, rule in rules:
        finding.attribute = rule(figure, finding)
        if finding.attribute:
            finding.attribute_rule = name
            return


def _mint(scene: Scene, findings: list[Finding]) -> tuple[Measured, ...]:
    """Gives out ids, made from each quote and the words of its cue."""
    mint, narration = Mint(), scene.narration
    ids: list[str] = []
    measured: list[Measured] = []
    for finding in findings:
        quantity = finding.figure.quantity
        quote = narration.quote(scene.doc, quantity.start, quantity.end)
        ids.append(mint.mint("m", quote, narration.transcript.cues[narration.cue[quantity.start]].text))
        measured.append(
            Measured(
                id=ids[-1],
                quantity=quantity,
                attribute=finding.attribute,
                item=finding.item.name if finding.item else None,
                where=finding.where,
                phase=finding.phase,
                same_as=ids[finding.restates.figure.index] if finding.restates else None,
            )
        )
    return tuple(measured)
