package org.chordlog.decode;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.chordlog.measure.LengthUnit;

/**
 * A profile that fits a stream.
 *
 * @param name of the built-in profile it is, or {@code own}
 * @param confidence 0 to 1: the share of bytes it explains, times how sure what the bytes do not
 *     say (unit, scale) can be taken
 * @param assumptions what the bytes do not say and the operator has to confirm
 * @param frames how many frames were read
 * @param refused how many were not
 * @param moved whether the plunger was seen to move: a standing value does not show its form
 * @param values the newest it would read, at most {@value #SHOWN}
 */
public record Proposal(
    String name,
    FrameProfile profile,
    double confidence,
    List<String> assumptions,
    long frames,
    long refused,
    boolean moved,
    List<Decoded.Value> values) {
  public static final String OWN = "own";
  static final int SHOWN = 10;

  /** The channels of the newest values, in order. */
  public List<Integer> channels() {
    return values.stream().map(Decoded.Value::channel).distinct().sorted().toList();
  }

  /** The unit of the newest value; mm where nothing was read. */
  public LengthUnit unit() {
    return values.isEmpty() ? LengthUnit.MM : values.get(values.size() - 1).unit();
  }

  /** What a person sees of it: the newest values of each channel. */
  Map<Integer, List<Long>> reading() {
    return values.stream()
        .collect(
            Collectors.groupingBy(
                Decoded.Value::channel,
                Collectors.mapping(Decoded.Value::valueNm, Collectors.toList())));
  }

  public Proposal {
    assumptions = List.copyOf(assumptions);
    values = List.copyOf(values);
  }
}
