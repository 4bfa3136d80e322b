package org.chordlog.measure;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Collectors;

/** Input that was refused, with one {@link Fault} for each thing that is wrong. */
public final class BadInput extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;
  private static final double WRITTEN_OUT = 1e15;
  private final transient List<Fault> faults;

  public BadInput(List<Fault> faults) {
    super(faults.stream().map(Fault::toString).collect(Collectors.joining("\n")));
    this.faults = List.copyOf(faults);
  }

  /** In words that hold no length. */
  public BadInput(String field, Object value, String problem, String allowed) {
    this(field, value, problem, Sentence.plain(allowed));
  }

  /** Where what is allowed is said with lengths. */
  public BadInput(String field, Object value, String problem, Sentence allowed) {
    this(List.of(new Fault(field, written(value), Sentence.plain(problem), allowed)));
  }

  /** Numbers without a power of ten, but for those that nobody would write out. */
  private static String written(Object value) {
    String text = String.valueOf(value);
    if (!(value instanceof Double number) || !text.contains("E")) {
      return text;
    }
    boolean huge = Math.abs(number) > WRITTEN_OUT;
    return huge
        ? text.replace(".0E", "e").replace('E', 'e')
        : new BigDecimal(text).stripTrailingZeros().toPlainString();
  }

  /** At least one, in the order of the fields. */
  public List<Fault> faults() {
    return faults;
  }

  /** One line a fault. */
  public Sentence said() {
    return Sentence.joined("\n", faults.stream().map(Fault::said).toList());
  }
}
