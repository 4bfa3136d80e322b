package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.Locale;
import org.chordlog.account.Right;
import org.chordlog.capture.Direction;
import org.chordlog.decode.FrameProfile;
import org.chordlog.decode.ModbusRegisters.Table;
import org.chordlog.decode.RegisterBlock;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Length;
import org.chordlog.station.LiveReading;
import org.chordlog.station.RegisterSearch;
import org.chordlog.station.StationFile;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** Reading a port that no station has yet: by profiles side by side, or its registers. */
final class PortReadRoutes {
  private static final int MOST_PROFILES = 6;
  private static final double LONGEST = 10;
  private static final int USUAL_COUNT = 20;
  private final OtherComputers others;

  PortReadRoutes(OtherComputers others) {
    this.others = others;
  }

  /** Profiles as the station file has them, read at one of the tries of a port. */
  record ReadForm(
      @Nullable String port,
      @JsonPropertyDescription("index into the tries of the port, 0 if left out")
          @Nullable Integer attempt,
      @JsonPropertyDescription("1 to 6") @Nullable List<Object> profiles,
      @JsonPropertyDescription("0.2 to 10, 1 if left out") @Nullable Double seconds) {}

  /** What one channel read; {@code direction} if the plunger was pushed in meanwhile. */
  record ChannelRead(
      int channel,
      int count,
      double firstMm,
      double lastMm,
      @JsonPropertyDescription("counts_up or counts_down; null where it hardly moved")
          @Nullable String direction) {
    static ChannelRead of(LiveReading.Channel channel) {
      return new ChannelRead(
          channel.channel(),
          channel.count(),
          Length.mm(channel.firstNm()),
          Length.mm(channel.lastNm()),
          words(channel.direction()));
    }

    private static @Nullable String words(@Nullable Direction direction) {
      return direction == null ? null : direction.name().toLowerCase(Locale.ROOT);
    }
  }

  /** What one profile read: nothing, or its channels. */
  record ProfileRead(List<ChannelRead> channels) {}

  /** Which registers to look through, at one of the tries of a port. */
  record RegisterForm(
      @Needed @Nullable String port,
      @JsonPropertyDescription("index into the tries of the port, 0 if left out")
          @Nullable Integer attempt,
      @JsonPropertyDescription("0.2 to 10, 5 if left out") @Nullable Double seconds,
      @JsonPropertyDescription("1 to 247, 1 if left out") @Nullable Integer device,
      @JsonPropertyDescription("HOLDING if left out") @Nullable Table table,
      @JsonPropertyDescription("counted from 0, 0 if left out") @Nullable Integer first,
      @JsonPropertyDescription("1 to 60, 20 if left out") @Nullable Integer count) {
    RegisterBlock block() {
      return new RegisterBlock(
          device == null ? 1 : device,
          table == null ? Table.HOLDING : table,
          first == null ? 0 : first,
          count == null ? USUAL_COUNT : count);
    }
  }

  /** What the registers gave while the plunger was moved. */
  record RegistersRead(
      PortProbeRoutes.Try tried,
      @JsonPropertyDescription("whether the device answers at these settings") boolean answered,
      int registers,
      int sweeps,
      boolean standsStill,
      List<PortProbeRoutes.Proposed> proposals) {}

  List<Route> routes() {
    return List.of(
        Route.post(
                Right.CONFIGURE, "/api/ports/read", "Reads a port by several profiles side by side")
            .body(ReadForm.class)
            .answersList(ProfileRead.class, this::read),
        Route.post(
                Right.CONFIGURE,
                "/api/ports/registers",
                "Reads registers of a Modbus device, proposes profiles")
            .body(RegisterForm.class)
            .answers(RegistersRead.class, this::registers));
  }

  private List<ProfileRead> read(Call call) {
    ReadForm form = call.body(ReadForm.class);
    List<Object> given = form.profiles() == null ? List.of() : form.profiles();
    Check.within("profiles", given.size(), 1, MOST_PROFILES);
    List<FrameProfile> profiles =
        given.stream().map(each -> StationFile.profile(Json.text(each))).toList();
    double seconds = seconds(form.seconds(), 1);
    LinkSettings link = link(form.port(), form.attempt());
    others.ask("port", link, call.by());
    return PortProbeRoutes.opened(link, () -> LiveReading.of(link, profiles, seconds)).stream()
        .map(channels -> new ProfileRead(channels.stream().map(ChannelRead::of).toList()))
        .toList();
  }

  private RegistersRead registers(Call call) {
    RegisterForm form = call.body(RegisterForm.class);
    RegisterSearch search = new RegisterSearch(form.block());
    double seconds = seconds(form.seconds(), 5);
    LinkSettings link = link(form.port(), form.attempt());
    others.ask("port", link, call.by());
    RegisterSearch.Found found = PortProbeRoutes.opened(link, () -> search.search(link, seconds));
    return new RegistersRead(
        LinkFacts.of(form.attempt() == null ? 0 : form.attempt(), found.link()),
        found.answered(),
        found.registers(),
        found.sweeps(),
        found.proposals().standsStill(),
        found.proposals().best().stream().map(p -> PortProbeRoutes.Proposed.of(p, false)).toList());
  }

  private static LinkSettings link(@Nullable String port, @Nullable Integer attempt) {
    if (port == null || port.isBlank()) {
      throw new BadInput("port", "", "is missing", "the port to read");
    }
    return PortProbeRoutes.link(port, attempt == null ? 0 : attempt);
  }

  private static double seconds(@Nullable Double given, double usual) {
    return Check.within("seconds", given == null ? usual : given, 0.2, LONGEST);
  }
}
