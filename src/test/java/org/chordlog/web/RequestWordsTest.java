package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.chordlog.station.StationStatus.DelayNow;
import org.chordlog.station.StationStatus.DelayOrigin;
import org.chordlog.station.StationStatus.LengthNow;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.store.Plant.RequestKind;
import org.chordlog.web.http.Json;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What pages show of a request and of a length is said here, not by the pages. */
final class RequestWordsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "ACKNOWLEDGE_ALERT | {\"alertId\": 7, \"word\": \"seen\"} | Acknowledge alert 7: seen",
        "SHELVE_ALERT | {\"alertId\": 7, \"reason\": \"parts\"} | Put alert 7 aside: parts",
        "ASSIGN_ALERT | {\"alertId\": 7, \"to\": \"Petra\"} | Alert 7 is Petra’s",
        "ASSIGN_ALERT | {\"alertId\": 7, \"to\": \"\"} | Alert 7 is nobody’s",
        "LOGBOOK_ENTRY | {\"machine\": \"M1\", \"kind\": \"LUBRICATED\", \"roller\": \"entry\"}"
            + " | M1: Lubricated, entry"
      })
  void whatIsAsked(RequestKind kind, String body, String words) {
    assertEquals(words, RequestWords.of(kind, Json.tree(body)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "NOT_KNOWN | | Run a piece. | How much later depths come than their lengths is not known,"
            + " and taken as 0. Run a piece.",
        "STATED | | '' | Depths come 12.3 ms later than their lengths, as the settings say.",
        "FOUND | 0.4 | Found. | Depths come 12.3 ± 0.4 ms later than their lengths, as was found."
      })
  void howMuchLaterDepthsCome(DelayOrigin origin, Double uncertainty, String said, String words) {
    double ms = origin == DelayOrigin.NOT_KNOWN ? 0 : 12.34;
    DelayNow delay = new DelayNow(ms, uncertainty, origin, false, said);
    assertEquals(words, LengthWords.delay(delay));
    LengthNow now = new LengthNow(LinkState.OPEN, "", "/dev/c", 0, true, delay);
    assertEquals("Counts come from /dev/c.", LengthWords.link(now));
  }
}
