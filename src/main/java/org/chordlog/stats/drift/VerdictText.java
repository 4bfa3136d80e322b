package org.chordlog.stats.drift;

import java.util.Locale;
import java.util.Objects;
import org.chordlog.measure.Decimals;
import org.chordlog.stats.math.TheilSen;
import org.jspecify.annotations.Nullable;

/** A verdict as a sentence. */
final class VerdictText {
  private VerdictText() {}

  static String of(@Nullable DriftFinding finding, boolean enough, @Nullable Double reach) {
    if (finding == null) {
      return enough
          ? "Steady."
          : "Fewer than " + MachineVerdict.LEAST + " pieces since the last event.";
    }
    String since = " since piece " + finding.since().piece();
    return switch (finding.kind()) {
      case CREEP -> creeping(finding, since) + forecast(reach);
      case JUMP -> "Jumped by " + percent(finding.change()) + since + ".";
      case MOVE ->
          "Moved by about "
              + percent(finding.change())
              + since
              + "; whether at once or piece by piece can't be told yet.";
      case LOT ->
          "Moved by "
              + percent(finding.change())
              + " with lot "
              + finding.lot()
              + ","
              + since
              + ".";
    };
  }

  private static String creeping(DriftFinding finding, String since) {
    TheilSen per = Objects.requireNonNull(finding.perHundred());
    String range = " (" + percent(per.lower()) + " to " + percent(per.upper()) + ")";
    int corrected = finding.corrections().count();
    String through =
        corrected == 0
            ? ""
            : ", through " + corrected + (corrected == 1 ? " correction" : " corrections");
    return "Creeping by " + percent(per.slope()) + " per 100 pieces" + range + since + through;
  }

  private static String forecast(@Nullable Double reach) {
    return reach == null
        ? "."
        : String.format(Locale.ROOT, "; tolerance reached in about %.0f pieces.", reach);
  }

  private static String percent(double part) {
    return Decimals.withMinus(String.format(Locale.ROOT, "%+.3f %%", 100 * part));
  }
}
