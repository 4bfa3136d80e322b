package org.chordlog.notify.send;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.time.Instant;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvent.What;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.notify.settings.AlertSettings.Site;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is told of an alert in a shop whose unit is inches, of each kind with all its figures. */
final class InchLettersTest {
  private static final Pattern MM = Pattern.compile("\\bmm\\b|millimet", Pattern.CASE_INSENSITIVE);
  private static final Site SITE =
      new Site("Bending shop", URI.create("https://shop.example/"), Lengths.INCH);

  private static AlertEvent raised(AlertKind kind) {
    Map<AlertFigure, Double> figures = new EnumMap<>(AlertFigure.class);
    Arrays.stream(AlertFigure.values()).forEach(each -> figures.put(each, 2.0));
    if (kind != AlertKind.EDGE_SILENT) {
      figures.remove(AlertFigure.HEARD_MICROS);
    }
    figures.put(AlertFigure.CHANGE_PER_PIECE, 2e-5);
    figures.put(AlertFigure.CHANGE, 2e-3);
    figures.put(AlertFigure.TARGET_MM, 1828.8);
    figures.put(AlertFigure.TOLERANCE_MM, 12.7);
    figures.put(AlertFigure.DEVIATION_MM, 2.54);
    figures.put(AlertFigure.MASTER_MM, 1016.0);
    String name = kind.about() == AlertSubject.Type.SERVICE ? "" : "M1";
    AlertKey key = new AlertKey(kind, new AlertSubject(kind.about(), name));
    return Told.raised(key, AlertEvidence.of(figures), Instant.EPOCH);
  }

  /** Headings and texts of a whole mail. */
  private static String mail(AlertEvent event) {
    AlertSettings shop = Told.settings(Told.nowhere(), List.of());
    LetterWords words =
        new LetterWords(
            new AlertSettings(SITE, shop.roster(), shop.daily(), shop.mail(), List.of()));
    return new AlertLetter(event.alert(), List.of(event), 5L, words)
        .parts().stream()
            .map(each -> each.heading() + ": " + each.text())
            .collect(Collectors.joining("\n"));
  }

  @ParameterizedTest
  @EnumSource
  void nothingIsInMillimetres(AlertKind kind) {
    AlertEvent event = raised(kind);
    Alert alert = event.alert();
    Alert over = alert.next(alert.status().withPresent(false));
    AlertEvent returned = Told.next(over, What.RETURNED, AlertState.NORMAL, Instant.EPOCH);
    for (String each : List.of(mail(event), mail(returned), new WebhookBody(SITE).of(event))) {
      assertFalse(MM.matcher(each).find(), each);
    }
  }

  /** A change of radius, or a limit, says at which radius. */
  @Test
  void lengthsAreInInchesAndNameTheirRadius() {
    for (AlertKind kind : List.of(AlertKind.ROLLER_CREEPS, AlertKind.LIMIT_AHEAD)) {
      String mail = mail(raised(kind));
      assertTrue(mail.contains("0.20 % tighter (−0.144 in at 72 in) per 100 pieces"), mail);
      assertTrue(mail.contains("the limit of 72 ± 0.5 in after about 2 more"), mail);
    }
    String check = mail(raised(AlertKind.GAUGE_UNFIT));
    assertTrue(check.contains("off by +0.10 in on a master of 40 in."), check);
  }
}
