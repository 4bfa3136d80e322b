package org.chordlog.cli.study;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.study.StudyKind;

/** Kinds of studies as they are typed: {@code one-operator}. */
final class StudyKinds {
  private StudyKinds() {}

  static StudyKind parse(String text) {
    return Arrays.stream(StudyKind.values())
        .filter(kind -> typed(kind).equalsIgnoreCase(text.strip()))
        .findFirst()
        .orElseThrow(() -> new BadInput("--kind", text, "is not a study", all()));
  }

  static String typed(StudyKind kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static String all() {
    return Arrays.stream(StudyKind.values())
        .map(StudyKinds::typed)
        .collect(Collectors.joining(", "));
  }
}
