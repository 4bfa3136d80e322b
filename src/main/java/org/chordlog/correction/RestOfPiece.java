package org.chordlog.correction;

import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * What the rest of a piece will be after a reading near its start, and what to change for that rest
 * (null: leave it). The change belongs to this piece: it is to be taken back, or recorded as a
 * correction, before the next.
 */
public record RestOfPiece(
    double radiusMm,
    double standardUncertaintyMm,
    @Nullable Double amount,
    double outBefore,
    double outAfter,
    MachineScale scale) {
  /** One or two plain sentences. */
  public Sentence text() {
    Double by = amount;
    Sentence what =
        Sentence.of(
            "Rest of this piece: %s expected (± %s).",
            Quantity.of(radiusMm, 2 * standardUncertaintyMm),
            AdviceText.expanded(standardUncertaintyMm));
    if (by == null) {
      return what.and(Sentence.plain("Go on."));
    }
    return Sentence.of(
        "%s Change the %s by %s%s for the rest (out of tolerance: %s, then %s); take it back, or"
            + " record it, before the next piece.",
        what,
        scale.name(),
        AdviceText.signed(by, scale.step()),
        AdviceText.unit(scale.unit()),
        AdviceText.percent(outBefore),
        AdviceText.percent(outAfter));
  }
}
