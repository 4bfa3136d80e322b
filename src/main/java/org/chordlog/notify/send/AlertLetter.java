package org.chordlog.notify.send;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.notify.channel.Letter.Part;
import org.chordlog.verdict.AlertStatement;
import org.chordlog.verdict.AlertWords;
import org.jspecify.annotations.Nullable;

/**
 * What a mail says of one alert: what, where and since when; what was found; why it may be; what
 * comes of it; what to do and by when. {@code events} of the alert in order; {@code foundMicros}:
 * when the first reading that it was found in was taken, null where it has none.
 */
record AlertLetter(
    Alert alert, List<AlertEvent> events, @Nullable Long foundMicros, LetterWords words) {
  private static final String GOING = "Before anybody goes to the machine";

  String title() {
    String what = new AlertStatement(alert).headline();
    return so() ? what : "Over: " + what;
  }

  /** Whether what it is about is still so. */
  private boolean so() {
    return alert.status().present();
  }

  List<Part> parts() {
    List<Part> parts = new ArrayList<>();
    parts.add(
        words.part("", title() + ".\n" + (so() ? raised() : over()) + began() + heard() + owner()));
    String found = new AlertStatement(alert).statement().reason().in(words.lengths());
    if (!found.isBlank() && heard().isEmpty()) {
      parts.add(words.part(so() ? "What was found" : "What had been found", found));
    }
    parts.add(words.part("Likely cause", AlertWords.cause(alert.kind())));
    parts.addAll(so() ? whatToDo() : caution());
    parts.add(words.part("", asked()));
    return parts;
  }

  private String raised() {
    long last = alert.actByMicros(events) - micros(alert.treatedAs().timeToAct());
    boolean again = last > alert.status().sinceMicros();
    String first = "Raised on " + words.time(alert.status().sinceMicros());
    Double pieces = alert.evidence().figure(AlertFigure.PIECES);
    return first
        + (again ? ", and again on " + words.time(last) : "")
        + (pieces == null
            ? ""
            : String.format(Locale.ROOT, ", after %.0f pieces of this machine", pieces))
        + ".";
  }

  private String over() {
    String when = words.time(alert.status().changedMicros());
    return "Raised on "
        + words.time(alert.status().sinceMicros())
        + (alert.state() == AlertState.RETURNED_UNACKNOWLEDGED
            ? ".\nNo longer so since " + when + "; nobody had acknowledged it."
            : "; over since " + when + ".");
  }

  private String owner() {
    return alert.assignedTo().isEmpty() ? "" : "\nIt is assigned to " + alert.assignedTo() + ".";
  }

  private String began() {
    Double piece = alert.evidence().figure(AlertFigure.SINCE_PIECE);
    return foundMicros == null || piece == null
        ? ""
        : String.format(
            Locale.ROOT,
            "\nSeen since piece %.0f, measured on %s.",
            piece,
            words.time(foundMicros));
  }

  /** Of what is silent; the detail is where it is. */
  private String heard() {
    Double heard = alert.evidence().figure(AlertFigure.HEARD_MICROS);
    String where = alert.evidence().detail();
    return heard == null
        ? ""
        : "\nNothing from "
            + alert.subject().name()
            + (where.isEmpty() ? "" : " (" + where + ")")
            + " since "
            + words.time(heard.longValue())
            + "; "
            + new AlertStatement(alert).waiting()
            + ".";
  }

  private List<Part> whatToDo() {
    AlertKind kind = alert.treatedAs();
    String within = LetterWords.within(kind.timeToAct());
    String by = words.time(alert.actByMicros(events));
    return List.of(
        words.part("If nobody acts", AlertWords.consequence(kind)),
        words.part("What to do, within " + within + " (by " + by + ")", AlertWords.whatToDo(kind)));
  }

  private List<Part> caution() {
    return sendsToAMachine(alert) ? List.of(words.part(GOING, AlertWords.CAUTION)) : List.of();
  }

  private String asked() {
    return switch (alert.state()) {
      case NORMAL -> "There is nothing left to do. What happened, after signing in:";
      case RETURNED_UNACKNOWLEDGED -> "To say that you know, sign in and acknowledge it:";
      default -> "To acknowledge it, assign it or put it aside, sign in:";
    };
  }

  static boolean sendsToAMachine(Alert alert) {
    return alert.subject().type() == AlertSubject.Type.MACHINE
        || AlertWords.whatToDo(alert.treatedAs()).contains(AlertWords.CAUTION);
  }

  private static long micros(Duration duration) {
    return duration.toNanos() / 1_000;
  }
}
