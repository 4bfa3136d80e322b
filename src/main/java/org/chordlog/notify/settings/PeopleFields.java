package org.chordlog.notify.settings;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.alert.AlertPriority;
import org.chordlog.notify.people.Escalation;
import org.chordlog.notify.people.Group;
import org.chordlog.notify.people.Hours;
import org.chordlog.notify.people.Person;
import org.chordlog.notify.settings.AlertSettings.Daily;
import org.chordlog.yaml.FieldBinder;
import org.jspecify.annotations.Nullable;

/** The keys that say who is told, and when; every fault goes to the binder. */
final class PeopleFields {
  private static final LocalTime USUAL_DAILY = LocalTime.of(7, 0);

  private final FieldBinder binder;
  private final JsonNode root;
  private final PartList parts;

  PeopleFields(FieldBinder binder, JsonNode root) {
    this.binder = binder;
    this.root = root;
    this.parts = new PartList(binder, root);
  }

  Map<String, Hours> shifts() {
    Map<String, Hours> shifts = new LinkedHashMap<>();
    parts.each(
        "shifts",
        ShiftFields.class,
        shift -> {
          PartList.unique(shifts, shift.name());
          shifts.put(KeyValues.required("name", shift.name()), shift.hours());
          return shift;
        });
    return shifts;
  }

  @Nullable Hours quiet() {
    ShiftFields.@Nullable Quiet quiet =
        binder.bind("quietHours", root.get("quietHours"), ShiftFields.Quiet.class);
    return quiet == null ? null : binder.under("quietHours", quiet::hours);
  }

  Map<String, Person> people(Map<String, Hours> shifts) {
    Map<String, Person> people = new LinkedHashMap<>();
    if (shifts.size() < root.path("shifts").size()) {
      return people; // what is wrong with a shift is not told of its people once more
    }
    parts.each(
        "people",
        PersonFields.class,
        person -> {
          PartList.unique(people, person.name());
          people.put(KeyValues.required("name", person.name()), person.person(shifts));
          return person;
        });
    return people;
  }

  List<Group> groups(Map<String, Person> people) {
    if (people.size() < root.path("people").size()) {
      return List.of();
    }
    List<Group> groups = parts.each("groups", GroupFields.class, fields -> fields.group(people));
    if (!people.isEmpty() && !root.hasNonNull("groups")) {
      binder.add("groups", "", "is missing", "groups of people with their audiences");
    }
    return groups;
  }

  Escalation escalation() {
    Escalation all = Escalation.USUAL;
    @Nullable JsonNode given = root.get("escalation");
    @Nullable EscalationFields fields = binder.bind("escalation", given, EscalationFields.class);
    if (fields == null) {
      return all;
    }
    for (AlertPriority each : AlertPriority.values()) {
      EscalationFields.@Nullable Times times = fields.of(each);
      if (times != null) {
        Escalation before = all;
        @Nullable Escalation with =
            binder.under(
                "escalation." + KeyValues.lower(each), () -> before.with(each, times.waits(each)));
        all = with == null ? all : with;
      }
    }
    return all;
  }

  Daily daily(Map<String, Person> people) {
    Daily usual = new Daily(USUAL_DAILY, List.copyOf(people.values()));
    if (people.size() < root.path("people").size()) {
      return usual;
    }
    @Nullable DailyFields fields = binder.bind("daily", root.get("daily"), DailyFields.class);
    @Nullable Daily daily =
        fields == null ? null : binder.under("daily", () -> fields.daily(usual, people));
    return daily == null ? usual : daily;
  }
}
