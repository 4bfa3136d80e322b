package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Objects;
import org.chordlog.measure.JobEvent;
import org.chordlog.station.Happening;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.jspecify.annotations.Nullable;

/** What happened, told by the operator. */
record JobEventForm(
    @Needed JobEvent.@Nullable Kind kind,
    @JsonPropertyDescription("CORRECTION: roll setting before it, in the machine's own unit")
        @Nullable Double settingBefore,
    @JsonPropertyDescription("CORRECTION: roll setting after it; SET_UP: roll setting then")
        @Nullable Double settingAfter,
    @JsonPropertyDescription("MATERIAL_LOT") @Nullable String materialLot,
    @JsonPropertyDescription("NOTE; welcome with all") @Nullable String note,
    @JsonPropertyDescription(
            "where it was forgotten: the last reading of the job before it, 0 before the first;"
                + " left out: just now")
        @Nullable Long afterReadingId,
    @JsonPropertyDescription(
            "an event of this kind that was recorded wrongly: it is taken back in the same commit,"
                + " note is the reason; afterReadingId is then that event's, if left out")
        @Nullable Long replaces) {
  private static final int LONGEST = 1_000;

  /** Beyond any scale of rollers, so that a slip of the keyboard is seen. */
  private static final double FARTHEST = 1e6;

  private JobEvent.Kind checkedKind() {
    Faults faults = new Faults();
    JobEvent.Kind told = faults.needed("kind", kind, Call.names(JobEvent.Kind.class));
    if (told == JobEvent.Kind.ZERO) {
      faults.add("kind", told, "is recorded by taking a zero", "POST …/zero");
    }
    if (told == JobEvent.Kind.BRIDGE) {
      faults.add("kind", told, "is recorded by choosing a bridge", "POST …/bridge");
    }
    if (told == JobEvent.Kind.MATERIAL_LOT && blank(materialLot)) {
      faults.add("materialLot", "", "is missing", "the name of the new lot");
    }
    if (told == JobEvent.Kind.NOTE && blank(note)) {
      faults.add("note", "", "is missing", "a text");
    }
    if (replaces != null && blank(note)) {
      faults.add("note", "", "is missing", "why the event was wrong");
    }
    if (told == JobEvent.Kind.CORRECTION && (settingBefore == null) != (settingAfter == null)) {
      faults.add(
          "settingAfter",
          settingAfter == null ? "" : settingAfter,
          "lacks its pair",
          "both or none");
    }
    if (told == JobEvent.Kind.CORRECTION
        && settingAfter != null
        && settingAfter.equals(settingBefore)) {
      faults.add("settingAfter", settingAfter, "is the setting before", "another setting, or none");
    }
    finite(faults, "settingBefore", settingBefore);
    finite(faults, "settingAfter", settingAfter);
    longest(faults, "note", note);
    longest(faults, "materialLot", materialLot);
    faults.refuse();
    return Objects.requireNonNull(told);
  }

  /** What happened, after each field was found to fit it. */
  Happening happening() {
    return new Happening(
        checkedKind(),
        settingBefore,
        settingAfter,
        Objects.requireNonNullElse(materialLot, ""),
        Objects.requireNonNullElse(note, ""),
        afterReadingId,
        replaces);
  }

  private static void finite(Faults faults, String field, @Nullable Double setting) {
    if (setting != null && !(Math.abs(setting) <= FARTHEST)) {
      faults.add(field, setting, "is no number that a scale shows", "within ± 1,000,000");
    }
  }

  private static void longest(Faults faults, String field, @Nullable String text) {
    if (text != null && text.length() > LONGEST) {
      faults.add(field, text.length() + " characters", "is too long", "at most " + LONGEST);
    }
  }

  private static boolean blank(@Nullable String text) {
    return text == null || text.isBlank();
  }
}
