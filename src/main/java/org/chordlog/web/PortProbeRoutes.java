package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.chordlog.decode.Arrival;
import org.chordlog.decode.Proposal;
import org.chordlog.link.LinkException;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Length;
import org.chordlog.station.Listening;
import org.chordlog.station.PortSearch;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** Listening to a port that no station has yet, one setting at a time, to set a station up. */
final class PortProbeRoutes {
  private static final int SHOWN = 40;
  private static final JsonMapper PLAIN =
      JsonMapper.builder()
          .defaultPropertyInclusion(
              JsonInclude.Value.construct(
                  JsonInclude.Include.NON_EMPTY, JsonInclude.Include.ALWAYS))
          .build();

  /** Which of the settings that {@code GET /api/ports/tries} lists, and for how long. */
  record HearForm(
      @Nullable String port,
      @JsonPropertyDescription("index into the tries of the port, 0 if left out")
          @Nullable Integer attempt,
      @JsonPropertyDescription("0.2 to 10, 1 if left out") @Nullable Double seconds) {}

  /** A setting worth trying, as the station file has it under {@code link}. */
  record Try(int attempt, String words, Map<String, Object> link) {}

  /** Bytes as they came: text with control characters as ␍ and the like. */
  record Piece(double atSeconds, String text, String hex) {}

  /** A profile that may fit; {@code profile} is what the station file takes. */
  record Proposed(
      String name,
      double confidence,
      List<String> assumptions,
      long frames,
      long refused,
      List<Double> valuesMm,
      Object profile) {
    static Proposed of(Proposal p) {
      boolean builtIn = !p.name().equals(Proposal.OWN);
      return new Proposed(
          p.name(),
          p.confidence(),
          p.assumptions(),
          p.frames(),
          p.refused(),
          p.values().stream().map(v -> Length.mm(v.valueNm())).toList(),
          builtIn ? p.name() : PLAIN.convertValue(p.profile(), Map.class));
    }
  }

  /** What came at one setting. */
  record Heard(Try tried, long bytes, List<Piece> pieces, List<Proposed> proposals) {}

  List<Route> routes() {
    return List.of(
        Route.get("/api/ports/tries", "Settings worth trying on a port, in order")
            .query("port", "string", "a device's path, COM1…, serial:NUMBER, or HOST:PORT")
            .answersList(Try.class, call -> tries(call.text("port", ""))),
        Route.post("/api/ports/hear", "Listens to a port once, and proposes frame profiles")
            .body(HearForm.class)
            .answers(Heard.class, PortProbeRoutes::hear));
  }

  private static List<Try> tries(String port) {
    List<LinkSettings> settings = PortSearch.settings(port);
    return java.util.stream.IntStream.range(0, settings.size())
        .mapToObj(i -> LinkFacts.of(i, settings.get(i)))
        .toList();
  }

  private static Heard hear(Call call) {
    HearForm form = call.body(HearForm.class);
    String port = form.port() == null ? "" : form.port();
    List<LinkSettings> settings = PortSearch.settings(port);
    int attempt = form.attempt() == null ? 0 : form.attempt();
    Check.within("attempt", attempt, 0, settings.size() - 1L);
    double seconds = Check.within("seconds", form.seconds() == null ? 1 : form.seconds(), 0.2, 10);
    PortSearch search = new PortSearch(new Listening(null, arrival -> {}), null, seconds);
    try {
      PortSearch.Heard heard = search.hear(settings.get(attempt));
      return new Heard(
          LinkFacts.of(attempt, heard.link()),
          heard.stream().stream().mapToLong(a -> a.bytes().length).sum(),
          pieces(heard.stream()),
          heard.proposals().stream().map(Proposed::of).toList());
    } catch (LinkException e) {
      throw new BadInput("port", port, "can't be opened: " + e.getMessage(), "a port that is free");
    }
  }

  private static List<Piece> pieces(List<Arrival> stream) {
    long start = stream.isEmpty() ? 0 : stream.get(0).monotonicNanos();
    return stream.stream()
        .skip(Math.max(0, stream.size() - SHOWN))
        .map(a -> new Piece((a.monotonicNanos() - start) / 1e9, text(a.bytes()), hex(a.bytes())))
        .toList();
  }

  /** Control characters as their pictures (Unicode block U+2400). */
  private static String text(byte[] bytes) {
    StringBuilder text = new StringBuilder();
    for (char c : new String(bytes, StandardCharsets.ISO_8859_1).toCharArray()) {
      text.append(c < ' ' ? (char) (0x2400 + c) : c < 0x7f ? c : '·');
    }
    return text.toString();
  }

  private static String hex(byte[] bytes) {
    return java.util.HexFormat.ofDelimiter(" ").formatHex(bytes);
  }
}
