package org.chordlog.forward;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.store.PlantAddress;

/**
 * Which plant this workshop computer belongs to: its name and site there, the plant's database, and
 * how much of the line may be used (kilobytes a second, 0: all of it).
 */
public record PlantSettings(String edge, String site, PlantAddress address, int kilobytesASecond) {
  static final int LEAST_KILOBYTES = 4;
  private static final int MOST_KILOBYTES = 1_000_000;
  private static final int LONGEST = 80;

  public PlantSettings {
    name("edge", edge);
    name("site", site);
    if (kilobytesASecond != 0) {
      Check.within("kilobytesASecond", kilobytesASecond, LEAST_KILOBYTES, MOST_KILOBYTES);
    }
  }

  private static void name(String key, String given) {
    if (given.isBlank()
        || !given.equals(given.strip())
        || given.length() > LONGEST
        || given.chars().anyMatch(Character::isISOControl)) {
      throw new BadInput(
          key,
          "'" + given.replaceAll("\\p{Cntrl}", "?") + "'",
          "is not a name",
          "1 to " + LONGEST + " characters in one line, no blanks at its ends");
    }
  }
}
