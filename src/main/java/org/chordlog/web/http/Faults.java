package org.chordlog.web.http;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Fault;
import org.jspecify.annotations.Nullable;

/** Gathers every fault of a form, so that a page can show each at its field at once. */
public final class Faults {
  /** What a field for a length wants; its unit is that of the field. */
  public static final String A_LENGTH = "a length";

  private final List<Fault> faults = new ArrayList<>();

  public void add(String field, Object value, String problem, String allowed) {
    faults.add(new Fault(field, String.valueOf(value), problem, allowed));
  }

  /** The value, or null with a fault when it is missing. */
  public <T> @Nullable T needed(String field, @Nullable T value, String allowed) {
    if (value == null) {
      faults.add(new Fault(field, "", "is missing", allowed));
    }
    return value;
  }

  /** A text as {@link Check#name} has it. */
  public void text(String field, @Nullable String value) {
    if (value == null || value.isBlank()) {
      add(field, "", "is missing", Check.NAME);
    } else {
      var unused = made("", () -> Check.name(field, value));
    }
  }

  /** What the maker gives, or null with its faults under that prefix. */
  public <T> @Nullable T made(String prefix, Supplier<T> maker) {
    try {
      return maker.get();
    } catch (BadInput e) {
      for (Fault f : e.faults()) {
        faults.add(f.at(prefix + f.field()));
      }
      return null;
    }
  }

  boolean any() {
    return !faults.isEmpty();
  }

  /** Throws {@link BadInput} with all faults so far; returns where there are none. */
  public void refuse() {
    if (any()) {
      throw new BadInput(faults);
    }
  }

  /** The value; throws {@link BadInput} that names the field where it is missing. */
  public static double number(@Nullable Double value, String field) {
    if (value == null) {
      throw new BadInput(field, "", "is missing", A_LENGTH);
    }
    return value;
  }
}
