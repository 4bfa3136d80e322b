package org.chordlog.notify.settings;

import java.util.List;
import java.util.Map;
import org.chordlog.notify.people.Person;
import org.chordlog.notify.settings.AlertSettings.Daily;
import org.jspecify.annotations.Nullable;

/** The part {@code daily}; everybody where no people are given. */
record DailyFields(@Nullable String at, @Nullable List<String> people) {
  Daily daily(Daily usual, Map<String, Person> known) {
    return new Daily(
        at == null ? usual.at() : KeyValues.time("at", at),
        people == null ? usual.people() : KeyValues.named("people", people, known, "people"));
  }
}
