package org.chordlog.cli;

import java.util.Arrays;
import java.util.List;

/** Which known words somebody may have meant by one that is not known. */
final class Spelling {
  private static final int LETTERS_A_SLIP = 3;

  private Spelling() {}

  /** Those that a slip or two turn into what was given; a word that only looks alike is none. */
  static List<String> near(String given, List<String> known) {
    int most = 1 + given.length() / LETTERS_A_SLIP;
    return known.stream().filter(each -> slips(given, bare(each)) <= most).toList();
  }

  /** Without the value of an option. */
  private static String bare(String name) {
    int end = name.indexOf('=');
    return end < 0 ? name : name.substring(0, end);
  }

  /** Letters put in, left out or changed (Levenshtein). */
  private static int slips(String a, String b) {
    int[] above = new int[b.length() + 1];
    Arrays.setAll(above, i -> i);
    for (int i = 1; i <= a.length(); i++) {
      int[] row = new int[b.length() + 1];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int changed = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(changed, 1 + Math.min(above[j], row[j - 1]));
      }
      above = row;
    }
    return above[b.length()];
  }
}
