package org.chordlog.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class TimeTextTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  private static String read(String text) {
    return TimeText.iso(TimeText.micros("due", text, BERLIN));
  }

  @ParameterizedTest
  @CsvSource({
    "2026-05-04T00:00:00Z, 2026-05-04T00:00:00Z",
    "2026-05-04T14:30Z, 2026-05-04T14:30:00Z",
    "2026-05-04T14:30:05.25+02:00, 2026-05-04T12:30:05.250Z",
    "2026-05-04 14:30:05 +0200, 2026-05-04T12:30:05Z",
    "2026-05-04 14:30 UTC, 2026-05-04T14:30:00Z",
    "2026-05-04 14:30:05, 2026-05-04T12:30:05Z",
    "'2026-05-04 14:30:05,123456789', 2026-05-04T12:30:05.123456Z",
    "2026-05-04 8:05, 2026-05-04T06:05:00Z",
    "2026-05-04\u00a014:30, 2026-05-04T12:30:00Z",
    "2026-05-04, 2026-05-03T22:00:00Z",
    "2026-1-4, 2026-01-03T23:00:00Z",
    "2026/05/04, 2026-05-03T22:00:00Z",
    "4.5.2026, 2026-05-03T22:00:00Z",
    "04.05.2026 14:30, 2026-05-04T12:30:00Z",
    "4. 5. 2026 14:30:05, 2026-05-04T12:30:05Z"
  })
  void formsThatSayOneThingAreRead(String text, String utc) {
    assertEquals(utc, read(text));
    assertTrue(TimeText.looksLike(text));
  }

  /** Also where this one could only be meant so: the next row could not. */
  @ParameterizedTest
  @ValueSource(strings = {"05/04/2026", "25/04/2026", "5/4/26 14:30", "05-04-2026"})
  void dayAndMonthThatCanNotBeToldApartAreRefused(String text) {
    String said = said(text);
    assertEquals(
        "due: "
            + text
            + " could be day or month first: dates written so are not read; allowed: "
            + TimeText.ALLOWED,
        said);
    assertTrue(TimeText.looksLike(text));
  }

  @ParameterizedTest
  @CsvSource({
    "4.5.26, has a year of two digits",
    "46146.5, spreadsheets keep times",
    "soon, is not a time",
    "14:30, is a time of day without its day",
    "1800.5, is not a time",
    "2026-05-04T10:00:00 02:00, is not a time",
    "31.4.2026, is not in the calendar",
    "2026-02-29, is not in the calendar",
    "2026-05-04 24:30, is not in the calendar",
    "2026-03-29 02:30, 'is left out in Europe/Berlin, where clocks are changed then'",
    "2026-10-25 02:30, 'comes twice in Europe/Berlin, where clocks are changed then'"
  })
  void whatIsNoneIsRefusedInWords(String text, String problem) {
    String said = said(text);
    assertTrue(said.contains(text + " " + problem) || said.contains(problem));
    assertTrue(said.contains("allowed: "), said);
  }

  @Test
  void nothingIsMissing() {
    String said = said(" ");
    assertTrue(said.contains("is missing"), said);
  }

  @Test
  void theLastMomentOfADayIsItsEnd() {
    long last = TimeText.lastMicros("to", "4.5.2026", BERLIN);
    assertEquals("2026-05-04T21:59:59.999999Z", TimeText.iso(last));
    long exact = TimeText.lastMicros("to", "2026-05-04T10:00Z", BERLIN);
    assertEquals("2026-05-04T10:00:00Z", TimeText.iso(exact));
  }

  @Test
  void numbersAndWordsDoNotLookLikeTimes() {
    for (String text : List.of("1800.5", "left", "", "12", "4.5")) {
      assertFalse(TimeText.looksLike(text), text);
    }
  }

  @Test
  void wordsNameTheZone() {
    Instant at = Instant.parse("2026-05-04T12:30:00Z");
    assertEquals("2026-05-04 14:30 Europe/Berlin", TimeText.words(at, BERLIN));
  }

  private static String said(String text) {
    return String.valueOf(assertThrows(BadInput.class, () -> read(text)).getMessage());
  }
}
