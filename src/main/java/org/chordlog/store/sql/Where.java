package org.chordlog.store.sql;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Conditions joined by AND, and their arguments in order. */
public final class Where {
  private final List<String> conditions = new ArrayList<>();
  private final List<Object> arguments = new ArrayList<>();

  public Where and(String condition, Object... values) {
    conditions.add(condition);
    arguments.addAll(List.of(values));
    return this;
  }

  /** Only when there is a value. */
  public Where when(@Nullable Object value, String condition) {
    return value == null ? this : and(condition, value);
  }

  /** Empty, or with the word WHERE. */
  public String sql() {
    return conditions.isEmpty() ? "" : "WHERE " + String.join(" AND ", conditions) + " ";
  }

  /** The conditions' arguments, then those given. */
  public Object[] arguments(Object... more) {
    List<Object> all = new ArrayList<>(arguments);
    all.addAll(List.of(more));
    return all.toArray();
  }
}
