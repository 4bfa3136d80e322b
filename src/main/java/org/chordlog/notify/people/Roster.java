package org.chordlog.notify.people;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.chordlog.measure.alert.AlertAudience;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertPriority;
import org.jspecify.annotations.Nullable;

/**
 * Who is told of what, and when. Urgent alerts go out at once, to all of a group where none of it
 * is on shift; others wait for the end of the quiet hours and for the shift, so that who comes on
 * shift is told of what nobody acknowledged.
 */
public record Roster(
    List<Group> groups, ZoneId zone, @Nullable Hours quiet, Escalation escalation) {
  public Roster {
    groups = List.copyOf(groups);
  }

  /** Everybody, each once. */
  public Set<Person> everybody() {
    Set<Person> all = new LinkedHashSet<>();
    groups.forEach(each -> all.addAll(each.people()));
    return all;
  }

  /** Whom to tell now of an alert of that kind that has come to that step. */
  public Set<Person> now(AlertKind kind, Escalation.Step step, Instant at) {
    Set<Person> told = new LinkedHashSet<>();
    for (Set<Person> group : steps(kind, step)) {
      List<Person> there = group.stream().filter(each -> mayTell(each, kind, at)).toList();
      boolean all = there.isEmpty() && kind.priority() == AlertPriority.HIGH;
      told.addAll(all ? group : (Collection<Person>) there);
    }
    return told;
  }

  private boolean mayTell(Person person, AlertKind kind, Instant at) {
    return kind.priority() == AlertPriority.HIGH ? person.onShift(at, zone) : reachable(person, at);
  }

  /** Whether somebody may be told of what is not urgent. */
  public boolean reachable(Person person, Instant at) {
    return person.onShift(at, zone) && (quiet == null || !quiet.hold(at, zone));
  }

  /** The groups of people of each step so far; an audience without people passes on at once. */
  private List<Set<Person>> steps(AlertKind kind, Escalation.Step step) {
    List<Set<Person>> all =
        kind.audiences().stream().map(this::of).filter(people -> !people.isEmpty()).toList();
    Set<Person> last = lastOnes();
    return switch (step) {
      case FIRST -> all.isEmpty() ? List.of(last) : all.subList(0, 1);
      case SECOND -> all.isEmpty() ? List.of(last) : all;
      case LAST -> Stream.concat(all.stream(), Stream.of(last)).toList();
    };
  }

  private Set<Person> of(AlertAudience audience) {
    Set<Person> people = new LinkedHashSet<>();
    groups.stream()
        .filter(each -> each.audiences().contains(audience))
        .forEach(each -> people.addAll(each.people()));
    return people;
  }

  private Set<Person> lastOnes() {
    Set<Person> people = new LinkedHashSet<>();
    groups.stream().filter(Group::last).forEach(each -> people.addAll(each.people()));
    return people;
  }
}
