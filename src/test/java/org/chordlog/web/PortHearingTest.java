package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A port that no station has is listened to over the API, with an indicator at its other end. */
@Tag("slow")
final class PortHearingTest {
  private static final HandIndicator.Form LINES =
      (mm, asked) ->
          String.format(Locale.ROOT, "%+08.3f\r\n", mm).getBytes(StandardCharsets.US_ASCII);
  @TempDir Path directory;

  private static JsonNode heard(Served served, HandIndicator indicator, boolean moved)
      throws Exception {
    HttpResponse<String> answer =
        served.post(
            "/api/ports/hear",
            "{\"port\": \"%s\", \"seconds\": 2.6, \"moved\": %s}"
                .formatted(indicator.port(), moved));
    assertEquals(200, answer.statusCode(), answer.body());
    return Served.tree(answer);
  }

  @Test
  void nothingIsProposedFromAStandingValueAndAllIsOnceItMoves() throws Exception {
    try (HandIndicator indicator = new HandIndicator(20, LINES);
        Served served = new Served(directory)) {
      indicator.hold();
      for (boolean moved : new boolean[] {false, true}) {
        JsonNode standing = heard(served, indicator, moved);
        assertTrue(standing.get("bytes").asLong() > 100, standing.toString());
        assertTrue(standing.get("standsStill").asBoolean(), standing.toString());
        assertEquals(0, standing.get("proposals").size(), standing.toString());
      }
      indicator.swing();
      JsonNode moving = heard(served, indicator, true);
      assertFalse(moving.get("standsStill").asBoolean(), moving.toString());
      assertTrue(moving.get("proposals").size() > 0, moving.toString());
    }
  }
}
