package org.chordlog.notify.people;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.regex.Pattern;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/** Somebody who is told: by mail, and while one of the shifts is under way; none means always. */
public record Person(String name, String mail, List<Hours> shifts) {
  private static final int LONGEST = 254;
  private static final Pattern ADDRESS =
      Pattern.compile(
          "[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+(\\.[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+)*"
              + "@[A-Za-z0-9]([A-Za-z0-9.-]*[A-Za-z0-9])?");

  public Person {
    Check.text("name", name);
    address("mail", mail);
    shifts = List.copyOf(shifts);
  }

  /** The address; refused unless it is a dot-atom and a host (RFC 5321, 4.1.2; at most 254). */
  public static String address(String field, String given) {
    if (given.length() > LONGEST || !ADDRESS.matcher(given).matches()) {
      throw new BadInput(
          field, "'" + given + "'", "is not a mail address", "as fitter@shop.example");
    }
    return given;
  }

  boolean onShift(Instant at, ZoneId zone) {
    return shifts.isEmpty() || shifts.stream().anyMatch(each -> each.hold(at, zone));
  }
}
