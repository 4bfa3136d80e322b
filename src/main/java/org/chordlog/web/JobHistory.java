package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.chordlog.measure.Change;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.SignalAnswer;
import org.chordlog.measure.SpecificationRevision;
import org.chordlog.store.Store;
import org.chordlog.verdict.Words;
import org.chordlog.web.JobHappening.Kind;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Everything that was changed in a job, from the records that each kind of change has. */
final class JobHistory {
  private final Store store;
  private final long job;
  private final String station;
  private final List<JobHappening> all = new ArrayList<>();

  /** Who changed what, when, from what to what, and why; in words. */
  record Line(
      String at,
      String by,
      String what,
      Sentence from,
      Sentence to,
      @JsonPropertyDescription("the reason or remark given; empty without one") String why) {
    static Line of(JobHappening each) {
      return new Line(
          Times.iso(each.atMicros()), each.by(), each.what(), each.from(), each.to(), each.why());
    }
  }

  /** From what to what, in words. */
  private record Move(Sentence from, Sentence to) {
    static Move plain(String from, String to) {
      return new Move(Sentence.plain(from), Sentence.plain(to));
    }
  }

  /** What it is about. */
  private record About(@Nullable Reading reading, @Nullable JobEvent event) {
    static final About JOB = new About(null, null);
  }

  private JobHistory(Store store, Job of) {
    this.store = store;
    this.job = of.id();
    this.station = of.station();
  }

  /** The newest first. */
  static List<Line> of(Store store, Job job) {
    return happened(store, job).stream()
        .sorted(Comparator.comparingLong(JobHappening::atMicros).reversed())
        .map(Line::of)
        .toList();
  }

  /** The oldest first. */
  static List<JobHappening> happened(Store store, Job of) {
    long job = of.id();
    JobHistory history = new JobHistory(store, of);
    store.changes().about("job " + job).forEach(history::change);
    store.jobs().revisions(job).stream().filter(r -> r.from() != null).forEach(history::revision);
    history.events();
    store.readings().exclusionsOfJob(job).forEach(history::exclusion);
    store.signalAnswers().ofJob(job, 0).forEach(history::answer);
    history.all.sort(Comparator.comparingLong(JobHappening::atMicros));
    return List.copyOf(history.all);
  }

  private void change(Change change) {
    Recorded recorded = new Recorded(change.atMicros(), change.by());
    for (JobChange.Part part : JobChange.parts(change.from(), change.to())) {
      Move move = new Move(part.from(), part.to());
      add(Kind.JOB, recorded, part.what(), move, change.why(), About.JOB);
    }
  }

  private void revision(SpecificationRevision r) {
    Sentence from = r.from() == null ? Sentence.EMPTY : SpecificationWords.of(r.from());
    Recorded recorded = new Recorded(r.atMicros(), r.by());
    String what = "Limits, revision " + r.revision();
    Move move = new Move(from, SpecificationWords.of(r.to()));
    add(Kind.LIMITS, recorded, what, move, r.why(), About.JOB);
  }

  private void events() {
    List<JobEvent> events = store.jobs().eventsOfJob(job);
    EventZeros zeros = EventZeros.of(store.gauges(), station, events);
    events.forEach(each -> event(each, zeros.valueMm(each)));
    Map<Long, JobEvent> byId = events.stream().collect(Collectors.toMap(JobEvent::id, e -> e));
    store.jobs().withdrawalsOfJob(job, 0).forEach(w -> withdrawal(w, byId.get(w.eventId())));
  }

  private void event(JobEvent e, @Nullable Double zeroMm) {
    Sentence to =
        zeroMm == null
            ? Sentence.plain(to(e))
            : Sentence.of("%s on the flat", Quantity.fixed(zeroMm, 4));
    Move move = new Move(Sentence.plain(setting(e.settingBefore(), "")), to);
    add(Kind.EVENT, e.recorded(), Words.of(e.kind()), move, e.note(), about(e));
  }

  private void withdrawal(EventWithdrawal w, @Nullable JobEvent event) {
    String what = event == null ? "Event" : Words.of(event.kind());
    Move move = Move.plain(event == null ? "" : to(event), "");
    Recorded recorded = new Recorded(w.atMicros(), w.by());
    About about = event == null ? About.JOB : about(event);
    add(Kind.EVENT_TAKEN_BACK, recorded, what + ": taken back", move, w.reason(), about);
  }

  private About about(JobEvent event) {
    return new About(store.readings().find(event.afterReadingId()).orElse(null), event);
  }

  private static String to(JobEvent e) {
    return setting(e.settingAfter(), e.materialLot());
  }

  private static String setting(@Nullable Double setting, String otherwise) {
    return setting == null ? otherwise : "setting " + Decimals.setting(setting);
  }

  private void exclusion(Exclusion e) {
    Reading reading = store.readings().find(e.readingId()).orElse(null);
    String what = "Reading of " + (reading == null ? "" : place(reading));
    Move move =
        Move.plain(e.excluded() ? "counts" : "excluded", e.excluded() ? "excluded" : "counts");
    Kind kind = e.excluded() ? Kind.READING_EXCLUDED : Kind.READING_INCLUDED;
    Recorded recorded = new Recorded(e.atMicros(), e.by());
    add(kind, recorded, what, move, e.reason(), new About(reading, null));
  }

  private static String place(Reading reading) {
    return "piece " + reading.piece() + ", " + reading.position();
  }

  private void answer(SignalAnswer a) {
    String what = "Signal answered, " + a.characteristic();
    About about = new About(store.readings().find(a.readingId()).orElse(null), null);
    add(Kind.SIGNAL_ANSWERED, a.recorded(), what, Move.plain(a.cause(), a.action()), "", about);
  }

  private void add(Kind kind, Recorded recorded, String what, Move move, String why, About about) {
    all.add(
        new JobHappening(
            kind,
            recorded.atMicros(),
            recorded.by(),
            what,
            move.from(),
            move.to(),
            why.equals("new") ? "" : why,
            about.reading(),
            about.event()));
  }
}
