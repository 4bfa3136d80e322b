package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.JobEvent;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Something that happened between two readings of a job. */
record JobEventView(
    long id,
    long jobId,
    String machine,
    JobEvent.Kind kind,
    long afterReadingId,
    String at,
    @Nullable Double settingBefore,
    @Nullable Double settingAfter,
    String materialLot,
    String note,
    String by,
    boolean startsPhase,
    @JsonPropertyDescription("why it was taken back; null while it counts")
        @Nullable String takenBackReason,
    @Nullable String takenBackBy,
    @JsonPropertyDescription("whether it counts and can be taken back; not so of zero and bridge")
        boolean canBeTakenBack,
    @JsonPropertyDescription(
            "ZERO, in lists of a job: the indicator's value on the flat, signed as a zero's valueMm; else"
                + " null")
        @Nullable Double zeroMm) {
  static JobEventView of(JobEvent e) {
    return of(e, null, null);
  }

  /** Each event with its withdrawal, if there is one, and with the value of its zero. */
  static List<JobEventView> all(
      EventZeros zeros, List<JobEvent> events, List<EventWithdrawal> withdrawals) {
    Map<Long, EventWithdrawal> byEvent =
        withdrawals.stream().collect(Collectors.toMap(EventWithdrawal::eventId, each -> each));
    return events.stream()
        .map(each -> of(each, byEvent.get(each.id()), zeros.valueMm(each)))
        .toList();
  }

  private static JobEventView of(
      JobEvent e, @Nullable EventWithdrawal withdrawal, @Nullable Double zeroMm) {
    return new JobEventView(
        e.id(),
        e.jobId(),
        e.machine(),
        e.kind(),
        e.afterReadingId(),
        Times.iso(e.atMicros()),
        e.settingBefore(),
        e.settingAfter(),
        e.materialLot(),
        e.note(),
        e.by(),
        e.startsPhase(),
        withdrawal == null ? null : withdrawal.reason(),
        withdrawal == null ? null : withdrawal.by(),
        withdrawal == null && e.canBeTakenBack(),
        zeroMm);
  }
}
