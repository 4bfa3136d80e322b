package org.chordlog.cli.service;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.DataPlaceOption;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.forward.PlantCheck;
import org.chordlog.forward.PlantFile;
import org.chordlog.forward.PlantSettings;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which plant this computer delivers to, and whether that works. */
@Command(
    name = "forward",
    mixinStandardHelpOptions = true,
    description = {
      "Shows to which plant this computer delivers, and tries whether it works.",
      "Reads plant.yaml in the data directory; what is wrong in it is told with its line. --check"
          + " signs in at the plant's database and delivers nothing. The running service delivers"
          + " by itself; it is not asked and not changed."
    })
public final class ForwardCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private DataPlaceOption data = new DataPlaceOption();

  @Option(names = "--check", description = "Sign in at the plant.")
  private boolean check;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Override
  public Integer call() {
    PlantSettings settings = PlantFile.read(place());
    PlantCheck.@Nullable Seen seen = check ? new PlantCheck(settings).run() : null;
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(JsonText.of(values(settings, seen)));
    } else {
      out.println(line(settings));
      if (seen != null) {
        out.println((seen.well() ? "" : "NOT WELL: ") + seen.said());
      }
    }
    out.flush();
    return seen == null || seen.well() ? ExitCode.WELL : ExitCode.FAULT;
  }

  private Path place() {
    Path found = data.place().resolve(PlantFile.NAME);
    if (Files.notExists(found)) {
      throw new BadInput(
          "--data",
          found,
          "does not exist, so nothing is delivered to a plant",
          "a file plant.yaml there, as the help on plants says");
    }
    return found;
  }

  private static String line(PlantSettings settings) {
    return "%s (%s) delivers to %s as user %s%s."
        .formatted(
            settings.edge(),
            settings.site(),
            settings.address().url(),
            settings.address().user(),
            settings.kilobytesASecond() == 0
                ? ""
                : ", at most " + settings.kilobytesASecond() + " kB/s");
  }

  private static Map<String, Object> values(
      PlantSettings settings, PlantCheck.@Nullable Seen seen) {
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("edge", settings.edge());
    values.put("site", settings.site());
    values.put("database", settings.address().url());
    values.put("user", settings.address().user());
    values.put("kilobytesASecond", settings.kilobytesASecond());
    if (seen != null) {
      values.put("well", seen.well());
      values.put("said", seen.said());
    }
    return values;
  }
}
