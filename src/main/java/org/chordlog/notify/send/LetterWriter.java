package org.chordlog.notify.send;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.Reading;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertPriority;
import org.chordlog.notify.channel.Letter;
import org.chordlog.notify.channel.Letter.Part;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.store.Outbox.Counts;
import org.chordlog.store.Outbox.Message;
import org.chordlog.store.Outbox.Topic;
import org.chordlog.store.Store;
import org.chordlog.verdict.AlertStatement;
import org.chordlog.verdict.AlertWords;
import org.chordlog.verdict.Counted;

/** Writes mails: about one alert in full, about several in a line each, about all being watched. */
final class LetterWriter {
  private static final int MOST_LINES = 60;
  private static final Duration WEEK = Duration.ofDays(7);
  private static final String PAGE = "alerts.html";
  private static final String GOING = "Before anybody goes to a machine";

  private final AlertSettings settings;
  private final LetterWords words;
  private final Store store;

  LetterWriter(AlertSettings settings, Store store) {
    this.settings = settings;
    this.words = new LetterWords(settings);
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
    long first = alert.evidence().firstReadingId();
    Long found =
        first == 0 ? null : store.readings().find(first).map(Reading::wallMicros).orElse(null);
    List<AlertEvent> events = store.alerts().events(alert.id());
    AlertLetter letter = new AlertLetter(alert, events, found, words);
    String link = settings.site().link(PAGE + "#" + alert.id());
    return new Letter(subject(letter.title()), letter.parts(), link);
  }

  private Letter several(List<Alert> alerts, boolean daily, Instant now) {
    Map<AlertKey, List<Alert>> byKey = new LinkedHashMap<>();
    alerts.forEach(each -> byKey.computeIfAbsent(each.key(), key -> new ArrayList<>()).add(each));
    List<Part> parts = new ArrayList<>();
    parts.add(
        words.part("Alerts gathered in one mail, so that there are not too many", lines(byKey)));
    if (alerts.stream().anyMatch(AlertLetter::sendsToAMachine)) {
      parts.add(words.part(GOING, AlertWords.CAUTION));
    }
    if (daily) {
      parts.add(words.part("Chordlog is watching; of the last seven days", week(now)));
    }
    parts.add(words.part("", "What each means and what to do, after signing in:"));
    long urgent =
        byKey.values().stream()
            .filter(same -> same.stream().anyMatch(LetterWriter::urgent))
            .count();
    String title =
        byKey.size() == 1
            ? new AlertStatement(alerts.get(0)).headline()
            : byKey.size() + " alerts" + (urgent == 0 ? "" : ", " + urgent + " of them urgent");
    return new Letter(subject(title), parts, settings.site().link(PAGE));
  }

  private String lines(Map<AlertKey, List<Alert>> byKey) {
    List<String> lines = new ArrayList<>();
    byKey.values().stream()
        .sorted(Comparator.comparingInt(LetterWriter::rank))
        .limit(MOST_LINES)
        .forEach(each -> lines.add("- " + line(each)));
    if (byKey.size() > MOST_LINES) {
      lines.add("- and " + (byKey.size() - MOST_LINES) + " more, on the page below");
    }
    return String.join("\n", lines);
  }

  /** What is urgent first, what is over last. */
  private static int rank(List<Alert> same) {
    Alert newest = same.get(same.size() - 1);
    return urgent(newest) ? 0 : newest.status().present() ? 1 : 2;
  }

  /** Whether somebody must act soon. */
  private static boolean urgent(Alert alert) {
    return alert.treatedAs().priority() == AlertPriority.HIGH && alert.status().present();
  }

  /** The newest of the same, and how often there were others. */
  private String line(List<Alert> same) {
    Alert newest = same.get(same.size() - 1);
    String raised = words.time(newest.status().sinceMicros());
    String since =
        same.size() == 1
            ? ", raised on " + raised
            : ", raised " + Counted.times(same.size()) + ", the last time on " + raised;
    String state =
        !newest.status().present()
            ? "; over"
            : urgent(newest) ? "; urgent, act by " + actBy(newest) : "; act by " + actBy(newest);
    return new AlertStatement(newest).headline() + since + state + ".";
  }

  private String actBy(Alert alert) {
    return words.time(alert.actByMicros(store.alerts().events(alert.id())));
  }

  private Letter watching(Instant now) {
    return new Letter(
        subject("Chordlog is watching"),
        List.of(
            words.part(
                "",
                "Machines, gauges and the service are being watched. This mail comes each day;\n"
                    + "on a day when it does not come, nobody is told of alerts."),
            words.part("Of the last seven days", week(now)),
            words.part("", "All alerts, after signing in:")),
        settings.site().link(PAGE));
  }

  private String week(Instant now) {
    long raised = store.alerts().raisedSince(Micros.of(now.minus(WEEK)));
    Counts counts = store.outbox().counts();
    return "Alerts raised: "
        + raised
        + "\nAlerts that wait for somebody now: "
        + store.alerts().waiting()
        + "\nMessages that could not be delivered, of the last 90 days: "
        + counts.failed();
  }

  private String subject(String text) {
    return Letter.plain("[" + settings.site().name() + "] " + text);
  }
}
