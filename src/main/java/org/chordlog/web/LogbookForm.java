package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Objects;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Recorded;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Work on a machine, as somebody writes it into the log book. */
record LogbookForm(
    @Needed LogbookEntry.@Nullable Kind kind,
    @JsonPropertyDescription("which roller; empty: the machine") @Nullable String roller,
    @JsonPropertyDescription("in words or figures") @Nullable String before,
    @JsonPropertyDescription("in words or figures") @Nullable String after,
    @JsonPropertyDescription("needed for OTHER: what was done") @Nullable String note,
    @JsonPropertyDescription("left out: just now; " + Times.AT) @Nullable String doneAt,
    @JsonPropertyDescription("left out: who writes it down") @Nullable String doneBy,
    @JsonPropertyDescription(
            "whether the job in progress gets a set-up with it, so that its charts and the"
                + " judgement on the machine begin anew; false if left out")
        @Nullable Boolean setUp,
    @JsonPropertyDescription(
            "whether the repair is over: alerts of the machine and its stations that are out of"
                + " service end; false if left out")
        @Nullable Boolean backInService) {

  /** Refuses each field that can't be so. */
  LogbookEntry entry(
      String machine, LogbookEntry.@Nullable Correction correction, Recorded recorded) {
    Faults faults = new Faults();
    LogbookEntry.Kind told = faults.needed("kind", kind, Call.names(LogbookEntry.Kind.class));
    if (told == LogbookEntry.Kind.OTHER && text(note).isEmpty()) {
      faults.add("note", "", "is missing", "what was done");
    }
    faults.refuse();
    String who = text(doneBy);
    return new LogbookEntry(
        0,
        machine,
        new LogbookEntry.Work(
            Objects.requireNonNull(told), text(roller), text(before), text(after), text(note)),
        new Recorded(done(recorded), who.isEmpty() ? recorded.by() : who),
        correction,
        recorded);
  }

  private long done(Recorded recorded) {
    String at = text(doneAt);
    return at.isEmpty() ? recorded.atMicros() : Times.read("doneAt", at);
  }

  boolean setsUp() {
    return Boolean.TRUE.equals(setUp);
  }

  boolean endsRepair() {
    return Boolean.TRUE.equals(backInService);
  }

  private static String text(@Nullable String given) {
    return given == null ? "" : given.strip();
  }
}
