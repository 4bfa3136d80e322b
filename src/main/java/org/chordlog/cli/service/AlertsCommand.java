package org.chordlog.cli.service;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.DataPlaceOption;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.BadInput;
import org.chordlog.notify.send.ChannelCheck;
import org.chordlog.notify.send.ChannelCheck.Checked;
import org.chordlog.notify.settings.AlertFile;
import org.chordlog.notify.settings.AlertSettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What the file of alerts says, and whether its channels work. */
@Command(
    name = "alerts",
    mixinStandardHelpOptions = true,
    description = {
      "Shows who is told of alerts and how, and tries whether it works.",
      "Reads alerts.yaml; what is wrong in it is told with its line. --check connects to the mail"
          + " server and to each webhook; --send sends a test message to everybody, too. The"
          + " running service is not asked and not changed."
    })
public final class AlertsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  private final Clock clock = Clock.systemUTC();

  @Option(
      names = "--alerts",
      paramLabel = "FILE",
      description = "File of alerts (alerts.yaml in the data directory).")
  private @Nullable Path file;

  @Mixin private DataPlaceOption data = new DataPlaceOption();

  @Option(names = "--check", description = "Connect to each channel.")
  private boolean check;

  @Option(names = "--send", description = "With --check: send a test message to everybody.")
  private boolean send;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Override
  public Integer call() {
    if (send && !check) {
      throw new BadInput("--send", "", "does nothing alone", "--check --send");
    }
    AlertSettings settings = AlertFile.read(place());
    List<Checked> checked = checked(new ChannelCheck(settings));
    AlertsText text = new AlertsText(settings, clock.instant());
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      Map<String, Object> all = new LinkedHashMap<>(text.values());
      all.put("checked", checked);
      out.println(JsonText.of(all));
    } else {
      text.lines().forEach(out::println);
      checked.forEach(each -> out.println(line(each)));
    }
    out.flush();
    return checked.stream().allMatch(Checked::well) ? ExitCode.WELL : ExitCode.FAULT;
  }

  private Path place() {
    Path found = file == null ? data.place().resolve(AlertFile.NAME) : file;
    if (Files.notExists(found)) {
      throw new BadInput(
          "--alerts", found, "does not exist, so nobody is told of alerts", "a file of alerts");
    }
    return found;
  }

  private List<Checked> checked(ChannelCheck channels) {
    List<Checked> all = new ArrayList<>();
    if (check) {
      all.addAll(channels.connect());
    }
    if (send) {
      Instant now = clock.instant();
      all.addAll(channels.send(now));
    }
    return all;
  }

  private static String line(Checked checked) {
    return checked.channel()
        + " "
        + checked.to()
        + ": "
        + (checked.well() ? "" : "NOT WELL: ")
        + checked.said();
  }
}
