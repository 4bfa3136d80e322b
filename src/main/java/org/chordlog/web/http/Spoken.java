package org.chordlog.web.http;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** Whether a record says sentences, in itself or in any record within it. */
final class Spoken {
  private final Set<Type> seen = new HashSet<>();

  private Spoken() {}

  static boolean says(@Nullable Class<?> answer) {
    return answer != null && new Spoken().holds(answer);
  }

  private boolean holds(Type type) {
    if (type == Sentence.class) {
      return true;
    }
    if (type instanceof ParameterizedType of) {
      return Arrays.stream(of.getActualTypeArguments()).anyMatch(this::holds);
    }
    return type instanceof Class<?> record
        && record.isRecord()
        && seen.add(type)
        && Arrays.stream(record.getRecordComponents())
            .map(RecordComponent::getGenericType)
            .anyMatch(this::holds);
  }
}
