package org.chordlog.store.sqlite;

import java.util.ArrayList;
import java.util.List;

/** Sentences of an audit; after many it counts only. */
final class SealFaults {
  private static final int MOST = 200;

  private final List<String> sentences = new ArrayList<>();
  private int more;

  @SuppressWarnings("AnnotateFormatMethod") // its annotation is in a library of its own
  void add(String form, Object... arguments) {
    if (sentences.size() < MOST) {
      sentences.add(form.formatted(arguments));
    } else {
      more++;
    }
  }

  List<String> all() {
    List<String> all = new ArrayList<>(sentences);
    if (more > 0) {
      all.add("seal: and " + more + " more");
    }
    return all;
  }
}
