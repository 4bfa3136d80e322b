package org.chordlog.notify.send;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertPriority;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.notify.channel.Letter;
import org.chordlog.notify.channel.Letter.Part;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.store.Outbox.Counts;
import org.chordlog.store.Outbox.Message;
import org.chordlog.store.Outbox.Topic;
import org.chordlog.store.Store;
import org.chordlog.verdict.AlertStatement;
import org.chordlog.verdict.AlertWords;

/** Writes mails: about one alert in full, about several in a line each, about all being watched. */
final class LetterWriter {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.ENGLISH);
  private static final int MOST_LINES = 60;
  private static final Duration WEEK = Duration.ofDays(7);
  private static final String PAGE = "alerts.html";
  private static final String GOING = "Before anybody goes to a machine";

  private final AlertSettings settings;
  private final Store store;

  LetterWriter(AlertSettings settings, Store store) {
    this.settings = settings;
    this.store = store;
  }

  /** Of at least one message to one person. */
  Letter letter(List<Message> messages, Instant now) {
    Map<Long, Alert> alerts = new LinkedHashMap<>();
    for (Message each : messages) {
      if (each.alertId() > 0) {
        store.alerts().find(each.alertId()).ifPresent(alert -> alerts.put(alert.id(), alert));
      }
    }
    boolean daily = messages.stream().anyMatch(each -> each.topic() == Topic.DAILY);
    if (alerts.size() == 1 && !daily) {
      return single(alerts.values().iterator().next());
    }
    return alerts.isEmpty() ? watching(now) : several(List.copyOf(alerts.values()), daily, now);
  }

  private Letter single(Alert alert) {
    boolean over = !alert.status().present();
    String what = AlertWords.of(alert.subject()) + ": " + new AlertStatement(alert).title();
    List<Part> parts = new ArrayList<>();
    parts.add(
        part("", what + ", since " + time(alert.status().sinceMicros()) + "." + state(alert)));
    String evidence = new AlertStatement(alert).statement().reason().in(settings.site().lengths());
    if (!evidence.isBlank()) {
      parts.add(part("What was found", evidence));
    }
    parts.add(part("Likely cause", AlertWords.cause(alert.kind())));
    parts.addAll(over ? caution(alert) : whatToDo(alert.treatedAs()));
    parts.add(part("", "To acknowledge it, assign it or put it aside, sign in:"));
    return new Letter(
        subject(over ? "Over: " + what : what),
        parts,
        settings.site().link(PAGE + "#" + alert.id()));
  }

  private static List<Part> whatToDo(AlertKind kind) {
    return List.of(
        part("If nobody acts", AlertWords.consequence(kind)),
        part("What to do, within " + within(kind.timeToAct()), AlertWords.whatToDo(kind)));
  }

  private static List<Part> caution(Alert alert) {
    return sendsToAMachine(alert) ? List.of(part(GOING, AlertWords.CAUTION)) : List.of();
  }

  private String state(Alert alert) {
    return switch (alert.state()) {
      case RETURNED_UNACKNOWLEDGED ->
          " It went away by itself on "
              + time(alert.status().changedMicros())
              + " and still waits for somebody to acknowledge it.";
      case NORMAL -> " It is over.";
      default -> alert.assignedTo().isEmpty() ? "" : " " + alert.assignedTo() + " has it.";
    };
  }

  private Letter several(List<Alert> alerts, boolean daily, Instant now) {
    Map<AlertKey, List<Alert>> byKey = new LinkedHashMap<>();
    alerts.forEach(each -> byKey.computeIfAbsent(each.key(), key -> new ArrayList<>()).add(each));
    List<String> lines = new ArrayList<>();
    byKey.values().stream().limit(MOST_LINES).forEach(each -> lines.add(line(each)));
    if (byKey.size() > MOST_LINES) {
      lines.add("and " + (byKey.size() - MOST_LINES) + " more, at the page below");
    }
    List<Part> parts = new ArrayList<>();
    parts.add(part("In one mail, so that there are not too many", String.join("\n", lines)));
    if (alerts.stream().anyMatch(LetterWriter::sendsToAMachine)) {
      parts.add(part(GOING, AlertWords.CAUTION));
    }
    if (daily) {
      parts.add(part("Of the week", week(now)));
    }
    parts.add(part("", "What each means and what to do, after signing in:"));
    long urgent =
        byKey.values().stream()
            .filter(same -> same.stream().anyMatch(LetterWriter::urgent))
            .count();
    String title =
        byKey.size() == 1
            ? AlertWords.of(alerts.get(0).subject())
                + ": "
                + new AlertStatement(alerts.get(0)).title()
            : byKey.size() + " alerts" + (urgent == 0 ? "" : ", " + urgent + " of them urgent");
    return new Letter(subject(title), parts, settings.site().link(PAGE));
  }

  private static boolean urgent(Alert alert) {
    return alert.treatedAs().priority() == AlertPriority.HIGH;
  }

  private static boolean sendsToAMachine(Alert alert) {
    AlertKind kind = alert.kind();
    return alert.subject().type() == AlertSubject.Type.MACHINE
        || AlertWords.whatToDo(kind).contains(AlertWords.CAUTION);
  }

  /** The newest of the same, and how often there were others. */
  private String line(List<Alert> same) {
    Alert newest = same.get(same.size() - 1);
    String times = same.size() == 1 ? "" : ", " + same.size() + " times, last";
    return AlertWords.of(newest.subject())
        + ": "
        + new AlertStatement(newest).title()
        + times
        + " since "
        + time(newest.status().sinceMicros())
        + (newest.status().present() ? "" : ", over");
  }

  private Letter watching(Instant now) {
    return new Letter(
        subject("Chordlog is watching"),
        List.of(
            part("", "This mail comes each day. Where it does not come, nobody is told of alerts."),
            part("Of the week", week(now)),
            part("", "All alerts:")),
        settings.site().link(PAGE));
  }

  private String week(Instant now) {
    long raised = store.alerts().raisedSince(Micros.of(now.minus(WEEK)));
    Counts counts = store.outbox().counts();
    return "Alerts raised in seven days: "
        + raised
        + "\nWaiting for somebody now: "
        + store.alerts().waiting()
        + "\nMessages not delivered, in 90 days: "
        + counts.failed();
  }

  private String subject(String text) {
    return Letter.plain("[" + settings.site().name() + "] " + text);
  }

  private String time(long micros) {
    return TIME.format(Micros.instant(micros).atZone(settings.roster().zone()));
  }

  private static String within(Duration time) {
    return time.toMinutes() < 60 ? time.toMinutes() + " minutes" : hours(time.toHours());
  }

  private static String hours(long hours) {
    return hours == 1 ? "an hour" : hours + " hours";
  }

  /** Names that others gave may hold anything. */
  private static Part part(String heading, String text) {
    return new Part(
        Letter.plain(heading), String.join("\n", text.lines().map(Letter::plain).toList()));
  }
}
