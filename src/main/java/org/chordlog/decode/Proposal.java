package org.chordlog.decode;

import java.util.List;

/**
 * A profile that fits a stream.
 *
 * @param name of the built-in profile it is, or {@code own}
 * @param confidence 0 to 1: the share of bytes it explains, times how sure what the bytes do not
 *     say (unit, scale) can be taken
 * @param assumptions what the bytes do not say and the operator has to confirm
 * @param frames how many frames were read
 * @param refused how many were not
 * @param values the newest it would read, at most {@value Proposals#SHOWN}
 */
public record Proposal(
    String name,
    FrameProfile profile,
    double confidence,
    List<String> assumptions,
    long frames,
    long refused,
    List<Decoded.Value> values) {
  public static final String OWN = "own";

  /** Whether the values it would read change: a standing value does not show its form. */
  boolean moved() {
    return values.stream().map(Decoded.Value::valueNm).distinct().count() > 2;
  }

  public Proposal {
    assumptions = List.copyOf(assumptions);
    values = List.copyOf(values);
  }
}
