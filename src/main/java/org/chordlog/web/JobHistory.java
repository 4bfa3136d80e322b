package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.chordlog.measure.Change;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.SignalAnswer;
import org.chordlog.measure.SpecificationRevision;
import org.chordlog.store.Store;
import org.chordlog.verdict.Words;
import org.chordlog.web.http.Times;

/** Everything that was changed in a job, from the records that each kind of change has. */
final class JobHistory {
  private final Store store;
  private final long job;
  private final List<Line> lines = new ArrayList<>();

  /** Who changed what, when, from what to what, and why; in words. */
  record Line(
      String at,
      String by,
      String what,
      Sentence from,
      Sentence to,
      @JsonPropertyDescription("the reason or remark given; empty without one") String why) {}

  private JobHistory(Store store, long job) {
    this.store = store;
    this.job = job;
  }

  /** The newest first. */
  static List<Line> of(Store store, long job) {
    JobHistory history = new JobHistory(store, job);
    store.changes().about("job " + job).forEach(history::change);
    store.jobs().revisions(job).stream().filter(r -> r.from() != null).forEach(history::revision);
    history.events();
    store.readings().exclusionsOfJob(job).forEach(history::exclusion);
    store.signalAnswers().ofJob(job, 0).forEach(history::answer);
    history.lines.sort(Comparator.comparing(Line::at).reversed());
    return List.copyOf(history.lines);
  }

  private void change(Change change) {
    for (JobChange.Part part : JobChange.parts(change.from(), change.to())) {
      add(change.atMicros(), change.by(), part.what(), part.from(), part.to(), change.why());
    }
  }

  private void revision(SpecificationRevision r) {
    Sentence from = r.from() == null ? Sentence.EMPTY : SpecificationWords.of(r.from());
    String what = "Limits, revision " + r.revision();
    add(r.atMicros(), r.by(), what, from, SpecificationWords.of(r.to()), r.why());
  }

  private void events() {
    List<JobEvent> events = store.jobs().eventsOfJob(job);
    events.forEach(this::event);
    Map<Long, JobEvent> byId = events.stream().collect(Collectors.toMap(JobEvent::id, e -> e));
    store
        .jobs()
        .withdrawalsOfJob(job, 0)
        .forEach(
            w -> {
              JobEvent event = byId.get(w.eventId());
              String what = event == null ? "Event" : Words.of(event.kind());
              add(w.atMicros(), w.by(), what + ": taken back", to(event), "", w.reason());
            });
  }

  private void event(JobEvent e) {
    String from = e.settingBefore() == null ? "" : "setting " + e.settingBefore();
    add(e.atMicros(), e.by(), Words.of(e.kind()), from, to(e), e.note());
  }

  private static String to(@org.jspecify.annotations.Nullable JobEvent e) {
    if (e == null) {
      return "";
    }
    return e.settingAfter() == null ? e.materialLot() : "setting " + e.settingAfter();
  }

  private void exclusion(Exclusion e) {
    String reading =
        "Reading of " + store.readings().find(e.readingId()).map(this::place).orElse("");
    String now = e.excluded() ? "excluded" : "counts";
    add(e.atMicros(), e.by(), reading, e.excluded() ? "counts" : "excluded", now, e.reason());
  }

  private String place(Reading reading) {
    return "piece " + reading.piece() + ", " + reading.position();
  }

  private void answer(SignalAnswer a) {
    String what = "Signal answered, " + a.characteristic();
    add(a.atMicros(), a.by(), what, a.cause(), a.action(), "");
  }

  /** In words that hold no length. */
  private void add(long micros, String by, String what, String from, String to, String why) {
    add(micros, by, what, Sentence.plain(from), Sentence.plain(to), why);
  }

  private void add(long micros, String by, String what, Sentence from, Sentence to, String why) {
    lines.add(new Line(Times.iso(micros), by, what, from, to, why.equals("new") ? "" : why));
  }
}
