package org.chordlog.notify.send;

import java.time.Duration;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.chordlog.measure.Lengths;
import org.chordlog.notify.channel.Letter;
import org.chordlog.notify.channel.Letter.Part;
import org.chordlog.notify.settings.AlertSettings;

/** How mails of this shop say times and lengths. */
record LetterWords(AlertSettings settings) {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.ENGLISH);

  /** In the shop's time zone. */
  String time(long micros) {
    return TIME.format(Micros.instant(micros).atZone(settings.roster().zone()));
  }

  Lengths lengths() {
    return settings.site().lengths();
  }

  /** "10 minutes", "an hour", "8 hours". */
  static String within(Duration time) {
    long hours = time.toHours();
    return hours < 1 ? time.toMinutes() + " minutes" : hours == 1 ? "an hour" : hours + " hours";
  }

  /** Names that others gave may hold anything. */
  Part part(String heading, String text) {
    return new Part(
        Letter.plain(heading), String.join("\n", text.lines().map(Letter::plain).toList()));
  }
}
