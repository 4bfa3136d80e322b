package org.chordlog.notify.settings;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.alert.AlertAudience;
import org.chordlog.notify.people.Group;
import org.chordlog.notify.people.Person;
import org.jspecify.annotations.Nullable;

/** A part of {@code groups}. */
record GroupFields(
    @Nullable String name,
    @Nullable List<AlertAudience> audiences,
    @Nullable Boolean last,
    @Nullable List<String> people) {
  Group group(Map<String, Person> known) {
    return new Group(
        KeyValues.required("name", name),
        audiences == null ? Set.of() : Set.copyOf(audiences),
        last != null && last,
        KeyValues.named("people", people, known, "people"));
  }
}
