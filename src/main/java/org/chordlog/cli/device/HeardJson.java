package org.chordlog.cli.device;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.List;
import org.chordlog.decode.Decoded;
import org.chordlog.decode.FrameProfile;
import org.chordlog.decode.Proposal;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.Length;
import org.chordlog.measure.LengthUnit;
import org.chordlog.web.http.Json;

/** What was heard, as JSON. */
final class HeardJson {
  private static final JsonMapper JSON = Json.withoutEmpty();

  record Value(double valueMm, LengthUnit unit, int channel, boolean button) {}

  record Proposed(
      String name,
      double confidence,
      List<String> assumptions,
      long frames,
      long refused,
      List<Value> values,
      FrameProfile profile) {}

  /** {@code bytes} that came, or how many registers a Modbus device has. */
  record Document(LinkSettings link, long bytes, boolean standsStill, List<Proposed> proposals) {}

  private HeardJson() {}

  static String of(FoundAtPort found) {
    return write(
        new Document(
            found.link(),
            found.came(),
            found.standsStill(),
            found.proposals().stream().map(HeardJson::proposed).toList()));
  }

  static String profile(FrameProfile profile) {
    return write(profile);
  }

  private static Proposed proposed(Proposal p) {
    return new Proposed(
        p.name(),
        p.confidence(),
        p.assumptions(),
        p.frames(),
        p.refused(),
        p.values().stream().map(HeardJson::value).toList(),
        p.profile());
  }

  private static Value value(Decoded.Value value) {
    return new Value(Length.mm(value.valueNm()), value.unit(), value.channel(), value.button());
  }

  private static String write(Object value) {
    try {
      return JSON.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("records are always written", e);
    }
  }
}
