package org.chordlog.stats.drift;

import java.util.Locale;
import org.chordlog.stats.math.Blocks.Block;
import org.chordlog.stats.math.TheilSen;
import org.jspecify.annotations.Nullable;

/** A verdict as a sentence. */
final class VerdictText {
  static final String STEADY = "Steady.";
  static final String TOO_FEW =
      "Fewer than " + MachineVerdict.LEAST + " pieces since the last setting.";

  private VerdictText() {}

  static String jumped(double step, Block since) {
    return "Jumped by " + percent(step) + since(since) + ".";
  }

  /** {@code per} is the slope per 1,000 pieces; {@code set} if the rollers were set since then. */
  static String creeping(TheilSen per, Block since, boolean set, @Nullable Double reach) {
    String range = " (" + percent(per.lower()) + " to " + percent(per.upper()) + ")";
    return "Creeping by "
        + percent(per.slope())
        + " per 1,000 pieces"
        + range
        + since(since)
        + (set ? ", although the rollers were set since then" : "")
        + forecast(reach);
  }

  private static String forecast(@Nullable Double reach) {
    return reach == null
        ? "."
        : String.format(Locale.ROOT, "; tolerance reached in about %.0f pieces.", reach);
  }

  private static String since(Block block) {
    return " since piece " + Math.round(block.at());
  }

  private static String percent(double part) {
    return String.format(Locale.ROOT, "%+.3f %%", 100 * part);
  }
}
