package org.chordlog.simulator;

import java.util.Locale;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/** A fault of a line as typed or as written in a scenario. */
sealed interface LineFault {
  /** A fault of the indicator. */
  record OfDevice(FaultCommand command) implements LineFault {}

  /** The feed stands still for so many seconds. */
  record Stop(double seconds) implements LineFault {
    public Stop {
      Check.within("stop", seconds, 0, 3600);
    }
  }

  /** The piece is run back by so many mm, and on again. */
  record Jog(double backMm) implements LineFault {
    public Jog {
      Check.within("jog", backMm, 0, 10_000);
    }
  }

  /** The ends of the section swing by so many mm; 0: no longer. */
  record Swing(double mm) implements LineFault {
    public Swing {
      Check.within("swing", mm, 0, 100);
    }
  }

  /** What the encoder does from now on. */
  enum OfLength implements LineFault {
    DEAD,
    ALIVE,
    REVERSED,
    FORWARD
  }

  /** Of a line such as {@code stop 5}, {@code length dead}, or any fault of an indicator. */
  static LineFault parse(String line) {
    String[] words = line.trim().toLowerCase(Locale.ROOT).split("\\s+", -1);
    if (words.length != 2) {
      return ofDevice(line);
    }
    return switch (words[0]) {
      case "stop" -> new Stop(number(words[1], line));
      case "jog" -> new Jog(number(words[1], line));
      case "swing" -> new Swing(number(words[1], line));
      case "length" -> ofLength(words[1], line);
      default -> ofDevice(line);
    };
  }

  private static OfDevice ofDevice(String line) {
    try {
      return new OfDevice(FaultCommand.parse(line));
    } catch (BadInput refusal) {
      String device = refusal.faults().get(0).allowed().toString();
      throw new BadInput(
          "fault", "'" + line + "'", "is not known", "stop, jog, swing, length; " + device);
    }
  }

  private static double number(String word, String line) {
    try {
      return Double.parseDouble(word);
    } catch (NumberFormatException e) {
      throw new BadInput("fault", "'" + line + "'", "has no number", "stop 5, jog 200, swing 3");
    }
  }

  private static OfLength ofLength(String word, String line) {
    try {
      return OfLength.valueOf(word.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      throw new BadInput(
          "fault", "'" + line + "'", "is not known", "length dead, alive, reversed, forward");
    }
  }
}
