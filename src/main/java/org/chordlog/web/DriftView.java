package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.Sentence;
import org.chordlog.stats.drift.DriftFinding;
import org.chordlog.stats.math.TheilSen;
import org.chordlog.verdict.MachineStatement;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/**
 * Something that moved a machine's level; above 0 its pieces came out tighter in %, below in mm.
 */
record DriftView(
    DriftFinding.Kind kind,
    @JsonPropertyDescription("a sentence without times") Sentence told,
    long sincePiece,
    String since,
    @JsonPropertyDescription("the first piece after it; null while it goes on")
        @Nullable Long untilPiece,
    @Nullable String until,
    @JsonPropertyDescription("in all, of curvature, as it would be without corrections")
        double changePercent,
    @JsonPropertyDescription("in all, of radius at the target of the newest job with two limits")
        @Nullable Double changeMm,
    @JsonPropertyDescription("of curvature, of a creep") @Nullable Double perHundredPiecesPercent,
    @JsonPropertyDescription("lower end of its 95 % interval")
        @Nullable Double perHundredPiecesLowerPercent,
    @JsonPropertyDescription("upper end of its 95 % interval")
        @Nullable Double perHundredPiecesUpperPercent,
    @Nullable Double perHundredPiecesMm,
    @JsonPropertyDescription("of curvature, in 8 hours at the pace of the newest pieces")
        @Nullable Double perShiftPercent,
    @Nullable Double perShiftMm,
    @JsonPropertyDescription("corrections and set-ups meanwhile") int corrections,
    @JsonPropertyDescription("sum of the amounts recorded with them, in the machine's unit")
        @Nullable Double correctedBy,
    @JsonPropertyDescription("that came with it; empty: none") String lot) {
  static DriftView of(MachineStatement machine, DriftFinding found) {
    TheilSen hundred = found.perHundred();
    Double shift = machine.perShift(found);
    return new DriftView(
        found.kind(),
        machine.told(found),
        found.since().piece(),
        Times.iso(found.since().atMicros()),
        found.until() == null ? null : (Long) found.until().piece(),
        found.until() == null ? null : Times.iso(found.until().atMicros()),
        100 * found.change(),
        mm(machine, found.change()),
        hundred == null ? null : (Double) (100 * hundred.slope()),
        hundred == null ? null : (Double) (100 * hundred.lower()),
        hundred == null ? null : (Double) (100 * hundred.upper()),
        hundred == null ? null : mm(machine, hundred.slope()),
        shift == null ? null : (Double) (100 * shift),
        shift == null ? null : mm(machine, shift),
        found.corrections().count(),
        found.corrections().recorded() == 0 ? null : (Double) found.corrections().amount(),
        found.lot());
  }

  private static @Nullable Double mm(MachineStatement machine, double change) {
    Double target = machine.targetMm();
    return target == null ? null : (Double) DriftFinding.radiusMm(change, target);
  }
}
