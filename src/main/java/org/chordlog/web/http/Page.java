package org.chordlog.web.http;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;

/** A page of a list; {@code next} is the cursor of the next one, null at the end. */
public record Page<T>(
    List<T> items,
    @JsonPropertyDescription("cursor of the next page, null at the end") @Nullable Long next) {

  /** A full page has a next one. */
  public static <S, T> Page<T> of(
      List<S> rows, int limit, ToLongFunction<S> id, Function<S, T> view) {
    Long next = rows.size() < limit ? null : id.applyAsLong(rows.get(rows.size() - 1));
    return new Page<>(rows.stream().map(view).toList(), next);
  }
}
