package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.chordlog.account.Right;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.SignalAnswer;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** What was found and done about signals: an answered one no longer holds the verdict of a job. */
final class SignalAnswerRoutes {
  private static final String PATH = "/api/jobs/{job}/signal-answers";
  private static final int MOST = 50;
  private final Store store;
  private final Clock clock;

  SignalAnswerRoutes(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  /** An answer to the signals of one point. */
  record AnswerForm(
      @Needed @Nullable String characteristic,
      @Needed @Nullable ChartKind chart,
      @JsonPropertyDescription("the last reading of the point") @Needed @Nullable Long readingId,
      @JsonPropertyDescription("what was the cause") @Needed @Nullable String cause,
      @JsonPropertyDescription("what was done about it") @Nullable String action) {}

  /** An answer as recorded. */
  record AnswerView(
      long id,
      String characteristic,
      String chart,
      long readingId,
      String cause,
      String action,
      String at,
      String by) {
    static AnswerView of(SignalAnswer a) {
      return new AnswerView(
          a.id(),
          a.characteristic(),
          a.chart(),
          a.readingId(),
          a.cause(),
          a.action(),
          Times.iso(a.atMicros()),
          a.by());
    }
  }

  /** A cause that was found on a machine, and in which of its jobs. */
  record MachineCauseView(
      long id, long jobId, String job, String cause, String action, String at, String by) {}

  List<Route> routes() {
    return List.of(
        Route.get(
                "/api/machines/{machine}/signal-answers",
                "Causes found for signals in a machine's jobs, the newest first, at most " + MOST)
            .answersList(MachineCauseView.class, this::onMachine),
        Route.get(PATH, "Answers to signals of a job, in order")
            .answersList(AnswerView.class, this::list),
        Route.post(Right.ANSWER, PATH, "Says what caused a signal and what was done")
            .body(AnswerForm.class)
            .creates(AnswerView.class, this::answer));
  }

  private List<AnswerView> list(Call call) {
    long job = JobRoutes.find(store.jobs(), call).id();
    return store.signalAnswers().ofJob(job, 0).stream().map(AnswerView::of).toList();
  }

  private List<MachineCauseView> onMachine(Call call) {
    String machine = call.name("machine");
    return store.signalAnswers().ofMachine(machine, MOST).stream().map(this::found).toList();
  }

  private MachineCauseView found(SignalAnswer a) {
    String job = store.jobs().readable(a.jobId()).map(each -> each.name()).orElse("");
    return new MachineCauseView(
        a.id(), a.jobId(), job, a.cause(), a.action(), Times.iso(a.atMicros()), a.by());
  }

  private AnswerView answer(Call call) {
    long job = JobRoutes.find(store.jobs(), call).id();
    AnswerForm form = call.body(AnswerForm.class);
    Faults faults = new Faults();
    faults.needed(
        "characteristic",
        form.characteristic(),
        "a position, the whole piece, or a measure along the pieces");
    faults.needed("chart", form.chart(), Call.names(ChartKind.class));
    faults.needed("readingId", form.readingId(), "the last reading of the point");
    faults.text("cause", form.cause());
    faults.refuse();
    return AnswerView.of(
        store
            .signalAnswers()
            .add(
                new SignalAnswer(
                    0,
                    job,
                    new SignalAnswer.PointName(
                        Objects.requireNonNull(form.characteristic()),
                        Objects.requireNonNull(form.chart()).name(),
                        Objects.requireNonNull(form.readingId())),
                    Objects.requireNonNull(form.cause()).strip(),
                    Objects.requireNonNullElse(form.action(), "").strip(),
                    new Recorded(Times.micros(Instant.now(clock)), call.by()))));
  }
}
