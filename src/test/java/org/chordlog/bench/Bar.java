package org.chordlog.bench;

import java.util.List;

/** One row of the bars: what was asked, what was found, and whether that meets it. */
record Bar(String what, String bar, String found, boolean met) {
  static String table(List<Bar> bars) {
    StringBuilder text = new StringBuilder("| what | bar | found | |\n|---|---|---|---|\n");
    bars.forEach(bar -> text.append(bar.row()).append('\n'));
    return text.toString();
  }

  private String row() {
    return String.join(" | ", "| " + what, bar, found, met ? "met |" : "**missed** |");
  }
}
