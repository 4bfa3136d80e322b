package org.chordlog.stats.drift;

import java.util.List;
import org.chordlog.stats.math.TheilSen;
import org.jspecify.annotations.Nullable;

/**
 * What a machine's deviations say. Deviations are relative and in curvature. {@code findings} are
 * what moves its level now, the gravest first; {@code history} what did and has ended, oldest
 * first, the newest {@value #KEPT}. {@code level} is the mean now, or where the line of a creep is;
 * {@code line} that of the pieces since the last event, per piece; {@code reachesTolerance} the
 * count of pieces until a creep gets there; {@code microsPerPiece} the pace of the newest pieces;
 * {@code scatter} the standard deviation of a piece about whatever moves slowly, by successive
 * differences.
 */
public record MachineVerdict(
    State state,
    String text,
    long pieces,
    List<DriftFinding> findings,
    List<DriftFinding> history,
    @Nullable Double level,
    @Nullable Double ewma,
    @Nullable TheilSen line,
    @Nullable Double trendPValue,
    @Nullable Double changePValue,
    @Nullable Double reachesTolerance,
    @Nullable Double microsPerPiece,
    @Nullable Double scatter) {
  /** Fewest pieces that a verdict is given on. */
  public static final int LEAST = 10;

  static final int KEPT = 20;

  public enum State {
    TOO_FEW,
    STEADY,
    /** A recorded material lot moved the level. */
    NEW_LOT,
    /** The level moved; whether at once or by and by can't be told yet. */
    MOVED,
    CREEPING,
    JUMPED
  }

  public MachineVerdict {
    findings = List.copyOf(findings);
    history = List.copyOf(history);
  }

  /** The gravest, null if nothing moves it. */
  public @Nullable DriftFinding finding() {
    return findings.isEmpty() ? null : findings.get(0);
  }

  /** First piece of what is found, null where nothing is. */
  public @Nullable Long sincePiece() {
    DriftFinding found = finding();
    return found == null ? null : (Long) found.since().piece();
  }

  /** Time of that piece, null where nothing is found. */
  public @Nullable Long sinceMicros() {
    DriftFinding found = finding();
    return found == null ? null : (Long) found.since().atMicros();
  }

  /** Slope of the creep per piece, else that of the pieces since the last event. */
  public @Nullable TheilSen slope() {
    DriftFinding found = finding();
    return found == null || found.slope() == null ? line : found.slope();
  }

  /** Height of the jump, or of the new lot's. */
  public @Nullable Double step() {
    DriftFinding found = finding();
    boolean stepped = state == State.JUMPED || state == State.NEW_LOT;
    return found == null || !stepped ? null : (Double) found.change();
  }
}
