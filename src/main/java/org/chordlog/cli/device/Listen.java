package org.chordlog.cli.device;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.decode.Escapes;
import org.chordlog.decode.Polling;
import org.chordlog.link.LinkException;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.SerialSettings;
import org.chordlog.link.SerialSettings.Parity;
import org.chordlog.link.SerialSettings.StopBits;
import org.chordlog.measure.Check;
import org.chordlog.station.Listening;
import org.chordlog.station.PortSearch;
import org.chordlog.station.PortSearch.Heard;
import org.chordlog.station.RegisterSearch;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Shows what a port sends and proposes a frame profile. */
@Command(
    name = "listen",
    mixinStandardHelpOptions = true,
    description = {
      "Shows what a port sends, as text and bytes with times, and proposes frame profiles with what"
          + " each would read now, to be compared with the indicator.",
      "Without --rate it tries the common rates and framings in turn. Nothing is proposed until the"
          + " plunger has been seen to move.",
      "Exit code 1 when nothing came or nothing fits."
    })
public final class Listen implements Callable<Integer> {
  private static final double LEAST_SWEEP_SECONDS = 5;
  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "PORT",
      description = "A device's path, COM1…, HOST:PORT, serial:NUMBER or description:TEXT.")
  private String port;

  @Option(
      names = "--rate",
      paramLabel = "N",
      description = "Bits a second; without it the common ones are tried.")
  private @Nullable Integer rate;

  @Option(
      names = "--data-bits",
      paramLabel = "N",
      defaultValue = "8",
      description = "7 or 8 (${DEFAULT-VALUE}).")
  private int dataBits;

  @Option(
      names = "--parity",
      paramLabel = "PARITY",
      defaultValue = "NONE",
      description = "${COMPLETION-CANDIDATES} (${DEFAULT-VALUE}).")
  private Parity parity;

  @Option(
      names = "--stop-bits",
      paramLabel = "BITS",
      defaultValue = "ONE",
      description = "${COMPLETION-CANDIDATES} (${DEFAULT-VALUE}).")
  private StopBits stopBits;

  @Option(
      names = "--seconds",
      paramLabel = "SECONDS",
      defaultValue = "3",
      description = "How long to listen, at each setting that is tried (${DEFAULT-VALUE}).")
  private double seconds;

  @Option(
      names = "--request",
      paramLabel = "TEXT",
      description = "Send this to an indicator that answers; \\r, \\n and \\xHH are understood.")
  private @Nullable String request;

  @Option(
      names = "--interval",
      paramLabel = "MS",
      defaultValue = "200",
      description = "Milliseconds between two requests (${DEFAULT-VALUE}).")
  private int interval;

  @Option(names = "--json", description = "One JSON document instead of text.")
  private boolean json;

  @ArgGroup(exclusive = false)
  private @Nullable RegisterOptions registers;

  @ArgGroup(exclusive = false)
  private @Nullable SaveOptions save;

  @Override
  public Integer call() throws LinkException {
    Check.within("--seconds", seconds, 0.1, 3600);
    PrintWriter out = spec.commandLine().getOut();
    FoundAtPort found = registers == null ? heard(out) : registers(registers, out);
    if (json) {
      out.println(HeardJson.of(found));
    } else {
      ProposalText.print(found, out);
    }
    if (save != null && !found.proposals().isEmpty()) {
      String saved = save.write(found);
      out.println(json ? "" : saved);
    }
    out.flush();
    return found.proposals().isEmpty() ? ExitCode.FAULT : ExitCode.WELL;
  }

  /** Finds the rate first, and then listens while the plunger is moved. */
  private FoundAtPort heard(PrintWriter out) throws LinkException {
    @Nullable Polling polling =
        request == null ? null : new Polling(Escapes.read("--request", request), interval);
    LiveText live = new LiveText(shown(out));
    PortSearch search = new PortSearch(new Listening(polling, live), polling, seconds);
    Heard heard = search.search(settings(), live::tried);
    if (heard.bytes() > 0 && heard.proposals().isEmpty()) {
      live.say("Move the plunger in and out now; it is listened to again.");
      heard = search.hearMoved(heard.link());
    }
    return FoundAtPort.of(heard);
  }

  /** Finds a rate at which the device answers, and then reads while the plunger is moved. */
  private FoundAtPort registers(RegisterOptions options, PrintWriter out) throws LinkException {
    LiveText live = new LiveText(shown(out));
    RegisterSearch search = new RegisterSearch(options.block());
    live.say("Move the plunger in and out while the registers are read.");
    RegisterSearch.@Nullable Found last = null;
    for (LinkSettings link : settings()) {
      last = search.search(link, Math.max(LEAST_SWEEP_SECONDS, seconds));
      live.answered(link, last);
      if (last.answered()) {
        break;
      }
    }
    return FoundAtPort.of(Objects.requireNonNull(last));
  }

  private PrintWriter shown(PrintWriter out) {
    return json ? new PrintWriter(PrintWriter.nullWriter()) : out;
  }

  private List<LinkSettings> settings() {
    String named = named();
    return rate != null && SerialSettings.namesPort(named)
        ? List.of(SerialSettings.of(named).with(rate, dataBits, parity, stopBits))
        : PortSearch.settings(named);
  }

  /** A path is understood from the folder where the command was called. */
  private String named() {
    Path here = Path.of("").toAbsolutePath();
    try {
      Path path = here.resolve(port);
      return !port.isBlank() && Files.exists(path) ? path.normalize().toString() : port;
    } catch (InvalidPathException e) {
      return port;
    }
  }
}
