package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.chordlog.account.Right;
import org.chordlog.decode.Arrival;
import org.chordlog.decode.Escapes;
import org.chordlog.decode.FrameProfile;
import org.chordlog.decode.Polling;
import org.chordlog.decode.Proposal;
import org.chordlog.link.LinkException;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Length;
import org.chordlog.measure.LengthUnit;
import org.chordlog.station.Listening;
import org.chordlog.station.PortSearch;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.RequestLimiter;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** Listening to a port that no station has yet, one setting at a time, to set a station up. */
final class PortProbeRoutes {
  private static final int SHOWN = 40;
  private static final int USUAL_INTERVAL = 200;
  private static final JsonMapper PLAIN = Json.withoutEmpty();
  private final OtherComputers others;
  private final RequestLimiter room;

  /** Ports are listened to within {@code room}. */
  PortProbeRoutes(OtherComputers others, RequestLimiter room) {
    this.others = others;
    this.room = room;
  }

  /** Which of the settings that {@code GET /api/ports/tries} lists, and how to listen. */
  record HearForm(
      @Nullable String port,
      @JsonPropertyDescription("index into the tries of the port, 0 if left out")
          @Nullable Integer attempt,
      @JsonPropertyDescription("0.2 to 10, 1 if left out") @Nullable Double seconds,
      @JsonPropertyDescription("sent meanwhile; \\r, \\n and \\xHH are understood")
          @Nullable String request,
      @JsonPropertyDescription("between two requests, 200 if left out")
          @Nullable Integer intervalMs,
      @JsonPropertyDescription("the plunger is being moved: up to five times as long if few came")
          @Nullable Boolean moved,
      @JsonPropertyDescription("each frame is sent by the indicator's data button")
          @Nullable Boolean button) {
    int attemptOrFirst() {
      return attempt == null ? 0 : attempt;
    }

    @Nullable Polling polling() {
      return request == null || request.isEmpty()
          ? null
          : new Polling(
              Escapes.read("request", request), intervalMs == null ? USUAL_INTERVAL : intervalMs);
    }
  }

  /** A setting worth trying, as the station file has it under {@code link}. */
  record Try(int attempt, String words, Map<String, Object> link) {}

  /** Bytes as they came: text with control characters as ␍ and the like. */
  record Piece(double atSeconds, String text, String hex) {}

  /** The newest values of one channel. */
  record ChannelValues(int channel, List<Double> valuesMm) {}

  /** A profile that may fit; {@code profile} is what the station file takes. */
  record Proposed(
      String name,
      double confidence,
      List<String> assumptions,
      long frames,
      long refused,
      @JsonPropertyDescription("in which the indicator shows what it sends") LengthUnit unit,
      List<ChannelValues> channels,
      Object profile) {
    static Proposed of(Proposal p, boolean button) {
      boolean builtIn = !p.name().equals(Proposal.OWN) && !button;
      FrameProfile profile = button ? p.profile().onButtonOnly() : p.profile();
      return new Proposed(
          p.name(),
          p.confidence(),
          p.assumptions(),
          p.frames(),
          p.refused(),
          p.unit(),
          p.channels().stream().map(channel -> values(p, channel)).toList(),
          builtIn ? p.name() : PLAIN.convertValue(profile, Map.class));
    }

    private static ChannelValues values(Proposal p, int channel) {
      return new ChannelValues(
          channel,
          p.values().stream()
              .filter(v -> v.channel() == channel)
              .map(v -> Length.mm(v.valueNm()))
              .toList());
    }
  }

  /** What came at one setting. */
  record Heard(
      Try tried,
      long bytes,
      @JsonPropertyDescription("0 to 1: how much it looks like an indicator at the right rate")
          double likeness,
      @JsonPropertyDescription("nothing is proposed since the plunger was not seen to move")
          boolean standsStill,
      List<Piece> pieces,
      List<Proposed> proposals) {}

  List<Route> routes() {
    List<Route> all = new ArrayList<>();
    all.add(
        Route.get("/api/ports/tries", "Settings worth trying on a port, in order")
            .query("port", "string", "a device's path, COM1…, serial:NUMBER, or HOST:PORT")
            .answersList(Try.class, call -> tries(call.text("port", ""))));
    all.addAll(room.around(List.of(hearing())));
    return all;
  }

  private Route hearing() {
    return Route.post(
            Right.CONFIGURE,
            "/api/ports/hear",
            "Listens to a port once, and proposes frame profiles")
        .body(HearForm.class)
        .answers(Heard.class, this::hear);
  }

  private static List<Try> tries(String port) {
    List<LinkSettings> settings = PortSearch.settings(port);
    return java.util.stream.IntStream.range(0, settings.size())
        .mapToObj(i -> LinkFacts.of(i, settings.get(i)))
        .toList();
  }

  private Heard hear(Call call) {
    HearForm form = call.body(HearForm.class);
    boolean moved = Boolean.TRUE.equals(form.moved());
    boolean button = Boolean.TRUE.equals(form.button());
    double seconds = Check.within("seconds", form.seconds() == null ? 1 : form.seconds(), 0.2, 10);
    @Nullable Polling polling = form.polling();
    PortSearch search = new PortSearch(new Listening(polling, arrival -> {}), polling, seconds);
    LinkSettings link = link(form.port(), form.attemptOrFirst());
    others.ask("port", link, call.by());
    PortSearch.Heard heard = opened(link, () -> moved ? search.hearMoved(link) : search.hear(link));
    return new Heard(
        LinkFacts.of(form.attemptOrFirst(), heard.link()),
        heard.bytes(),
        heard.likeness(),
        heard.standsStill(),
        pieces(heard.stream()),
        heard.proposals().stream().map(p -> Proposed.of(p, button)).toList());
  }

  /** The setting of that place among those worth trying on that port. */
  static LinkSettings link(@Nullable String port, int attempt) {
    List<LinkSettings> settings = PortSearch.settings(port == null ? "" : port);
    Check.within("attempt", attempt, 0, settings.size() - 1L);
    return settings.get(attempt);
  }

  /** What is done with a port that has to be opened. */
  interface AtPort<T> {
    T done() throws LinkException;
  }

  /** Does it; {@link BadInput} where the port can't be opened. */
  static <T> T opened(LinkSettings link, AtPort<T> work) {
    try {
      return work.done();
    } catch (LinkException e) {
      throw new BadInput(
          "port", link.target(), "can't be opened: " + e.getMessage(), "a port that is free");
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
