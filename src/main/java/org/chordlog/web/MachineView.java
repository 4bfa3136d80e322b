package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.Sentence;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.stats.math.TheilSen;
import org.chordlog.verdict.MachineStatement;
import org.chordlog.verdict.Statement;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** A machine and what its pieces say of it since its rollers were last set. */
record MachineView(
    String machine,
    MachineVerdict.State state,
    @JsonPropertyDescription("a sentence") String verdict,
    @JsonPropertyDescription("as its stations and jobs say it") Statement statement,
    @JsonPropertyDescription(
            "on its rollers; null where none is recorded, or nothing is to be done")
        @Nullable Statement rollers,
    @JsonPropertyDescription(
            "what the status says beside an open alert that was told on other pieces; empty where"
                + " they agree")
        Sentence besideAlert,
    @JsonPropertyDescription("pieces measured on it that count") long pieces,
    @JsonPropertyDescription("of its newest jobs; null without any") @Nullable String lastReadingAt,
    @JsonPropertyDescription("readings kept that the figures do not hold yet: look again")
        long behind,
    @JsonPropertyDescription("from which it creeps or has jumped") @Nullable Long sincePiece,
    @Nullable String since,
    @JsonPropertyDescription("deviation of curvature from the target now, %")
        @Nullable Double levelPercent,
    @JsonPropertyDescription("% per 1,000 pieces") @Nullable Double slopePercent,
    @JsonPropertyDescription("lower end of its 95 % interval") @Nullable Double slopeLowerPercent,
    @JsonPropertyDescription("upper end of its 95 % interval") @Nullable Double slopeUpperPercent,
    @JsonPropertyDescription("%, of a jump") @Nullable Double stepPercent,
    @JsonPropertyDescription("Mann-Kendall") @Nullable Double trendPValue,
    @JsonPropertyDescription("Pettitt") @Nullable Double changePValue,
    @JsonPropertyDescription("half the tolerance of its newest job with two limits, %")
        @Nullable Double tolerancePercent,
    @JsonPropertyDescription("pieces until the trend reaches it") @Nullable Double piecesLeft,
    @JsonPropertyDescription("hours of bending until then") @Nullable Double hoursLeft,
    @JsonPropertyDescription("in 8 hours at the pace of the newest pieces")
        @Nullable Double piecesPerShift,
    @JsonPropertyDescription("what moves it now, the gravest first") List<DriftView> findings,
    @JsonPropertyDescription("what did and has ended, oldest first") List<DriftView> history) {
  private static final double PERCENT = 100;
  private static final double PIECES = 1000;

  static MachineView of(
      String machine,
      MachineStatement judged,
      Sentence besideAlert,
      long behind,
      @Nullable Double tolerance) {
    MachineVerdict v = judged.verdict();
    TheilSen line = v.slope();
    TheilSen slope = line == null ? null : line.per(PIECES);
    Long since = v.sinceMicros();
    return new MachineView(
        machine,
        v.state(),
        v.text(),
        judged.statement(),
        null,
        besideAlert,
        v.pieces(),
        null,
        behind,
        v.sincePiece(),
        since == null ? null : Times.iso(since),
        percent(v.level()),
        slope == null ? null : percent(slope.slope()),
        slope == null ? null : percent(slope.lower()),
        slope == null ? null : percent(slope.upper()),
        percent(v.step()),
        v.trendPValue(),
        v.changePValue(),
        percent(tolerance),
        v.reachesTolerance(),
        judged.hoursLeft(),
        judged.piecesPerShift(),
        v.findings().stream().map(each -> DriftView.of(judged, each)).toList(),
        v.history().stream().map(each -> DriftView.of(judged, each)).toList());
  }

  /** With what is known of it beside its pieces' deviations. */
  MachineView with(@Nullable Statement ofRollers, @Nullable String readingAt) {
    return new MachineView(
        machine,
        state,
        verdict,
        statement,
        ofRollers,
        besideAlert,
        pieces,
        readingAt,
        behind,
        sincePiece,
        since,
        levelPercent,
        slopePercent,
        slopeLowerPercent,
        slopeUpperPercent,
        stepPercent,
        trendPValue,
        changePValue,
        tolerancePercent,
        piecesLeft,
        hoursLeft,
        piecesPerShift,
        findings,
        history);
  }

  /** Jumped before creeping before the rest; a roller that makes a ripple counts as creeping. */
  int weight() {
    return rollers == null ? ofDrift() : Math.max(2, ofDrift());
  }

  private int ofDrift() {
    return switch (state) {
      case JUMPED -> 3;
      case CREEPING, MOVED, NEW_LOT -> 2;
      case TOO_FEW -> 1;
      case STEADY -> 0;
    };
  }

  private static @Nullable Double percent(@Nullable Double part) {
    return part == null ? null : (Double) (PERCENT * part);
  }
}
