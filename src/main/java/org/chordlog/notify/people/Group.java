package org.chordlog.notify.people;

import java.util.List;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.alert.AlertAudience;

/**
 * People who answer for the same; {@code last}: they are told of everything that nobody took on
 * before the last step of escalation.
 */
public record Group(String name, Set<AlertAudience> audiences, boolean last, List<Person> people) {
  public Group {
    Check.text("name", name);
    audiences = Set.copyOf(audiences);
    people = List.copyOf(people);
    if (people.isEmpty()) {
      throw new BadInput("people", "", "are missing", "at least one person");
    }
    if (audiences.isEmpty() && !last) {
      throw new BadInput("audiences", "", "are missing", "at least one, or last: true");
    }
  }
}
