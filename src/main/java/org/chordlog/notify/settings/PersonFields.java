package org.chordlog.notify.settings;

import java.util.List;
import java.util.Map;
import org.chordlog.notify.people.Hours;
import org.chordlog.notify.people.Person;
import org.jspecify.annotations.Nullable;

/** A part of {@code people}; told at any time where no shifts are given. */
record PersonFields(@Nullable String name, @Nullable String mail, @Nullable List<String> shifts) {
  Person person(Map<String, Hours> known) {
    return new Person(
        KeyValues.required("name", name),
        KeyValues.required("mail", mail),
        KeyValues.named("shifts", shifts, known, "shifts"));
  }
}
