package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.store.Logbooks;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** An entry of a machine's log book. */
record LogbookView(
    long id,
    LogbookEntry.Kind kind,
    String roller,
    String before,
    String after,
    String note,
    String doneAt,
    String doneBy,
    @JsonPropertyDescription("the entry that it corrects") @Nullable Long corrects,
    @JsonPropertyDescription("why that one was corrected; empty for a first entry") String why,
    @JsonPropertyDescription("that one was recorded by mistake, no such work was done")
        boolean withdraws,
    @JsonPropertyDescription("the entry that replaces this one; null while it holds")
        @Nullable Long correctedBy,
    String at,
    String by) {
  static LogbookView of(Logbooks.Listed listed) {
    LogbookEntry entry = listed.entry();
    LogbookEntry.Work work = entry.work();
    LogbookEntry.Correction correction = entry.correction();
    return new LogbookView(
        entry.id(),
        work.kind(),
        work.roller(),
        work.before(),
        work.after(),
        work.note(),
        Times.iso(entry.done().atMicros()),
        entry.done().by(),
        correction == null ? null : correction.entryId(),
        correction == null ? "" : correction.why(),
        !entry.tellsOfWork(),
        listed.correctedById(),
        Times.iso(entry.recorded().atMicros()),
        entry.recorded().by());
  }
}
