package org.chordlog.simulator;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/** A fault as typed or as written in a scenario: a word, mostly with a number behind it. */
public record FaultCommand(Kind kind, double amount) {
  /** Faults, with what their number means. */
  public enum Kind {
    /** Seconds for which the device is gone. */
    UNPLUG(0, 86_400),
    /** The same, and it comes back under another number. */
    RENUMBER(0, 86_400),
    /** Percent of bytes that arrive as others. */
    NOISE(0, 100),
    /** Percent of bytes that don't arrive. */
    LOSE(0, 100),
    /** Percent of bytes that arrive twice. */
    DOUBLE(0, 100),
    /** 1: the value stays as it is; 0: no longer. */
    STUCK(0, 1),
    /** Micrometres a minute by which the zero wanders. */
    DRIFT(-10_000, 10_000),
    /** 1: the battery is low; 0: changed. */
    BATTERY(0, 1),
    /** 1: sends inches; 0: millimetres. */
    INCHES(0, 1),
    /** 1: sends nothing; 0: again. */
    SILENCE(0, 1);

    private final double least;
    private final double most;

    Kind(double least, double most) {
      this.least = least;
      this.most = most;
    }
  }

  public FaultCommand {
    Check.within(kind.name().toLowerCase(Locale.ROOT), amount, kind.least, kind.most);
  }

  /** Of a line such as {@code unplug 5}. */
  public static FaultCommand parse(String line) {
    String[] words = line.trim().split("\\s+", -1);
    try {
      Kind kind = Kind.valueOf(words[0].toUpperCase(Locale.ROOT));
      if (words.length == 2) {
        return new FaultCommand(kind, Double.parseDouble(words[1]));
      }
    } catch (BadInput e) {
      throw e;
    } catch (IllegalArgumentException e) {
      // told below, with what is allowed
    }
    throw new BadInput("fault", "'" + line + "'", "is not known", names() + ", each with a number");
  }

  private static String names() {
    return Arrays.stream(Kind.values())
        .map(kind -> kind.name().toLowerCase(Locale.ROOT))
        .collect(Collectors.joining(", "));
  }
}
