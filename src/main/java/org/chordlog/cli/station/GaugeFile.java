package org.chordlog.cli.station;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.UnreadableFile;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;
import org.chordlog.verdict.Counted;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** A file of what the command is named after, from the running service or to it. */
abstract class GaugeFile implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private ServiceAddress service = new ServiceAddress();

  @Option(
      names = "--export",
      paramLabel = "FILE",
      description = "Write them to this CSV file; without any option they are printed.")
  private @Nullable Path exported;

  @Option(
      names = "--import",
      paramLabel = "FILE",
      description = "Add what is new in this CSV file: all of it, or nothing where a row is wrong.")
  private @Nullable Path imported;

  @Option(
      names = "--look",
      description = "With --import: only tell what would be added, with values and units.")
  private boolean look;

  @Override
  public Integer call() {
    handle(spec.name(), spec.commandLine().getOut());
    return ExitCode.WELL;
  }

  private void handle(String of, PrintWriter out) {
    if (exported != null && imported != null) {
      throw new BadInput("--import", imported, "is given beside --export", "one of the two");
    }
    ServiceClient client = service.client("");
    if (imported != null) {
      out.println(told(of, client.post("/api/" + of + "/import", sent(imported))));
    } else if (exported != null) {
      String csv = client.text("/api/" + of + ".csv");
      write(exported, csv);
      out.println(written(of, (int) csv.lines().count() - 1));
    } else {
      out.print(service.json() ? client.get("/api/" + of) : client.text("/api/" + of + ".csv"));
    }
    out.flush();
  }

  private Map<String, Object> sent(Path file) {
    try {
      return Map.of("csv", Files.readString(file), "create", !look);
    } catch (IOException e) {
      throw UnreadableFile.of("--import", file, e);
    }
  }

  private static void write(Path file, String text) {
    try {
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new BadInput("--export", file, FileTrouble.writing(e), "a file that can be written");
    }
  }

  private String written(String of, int rows) {
    return service.json()
        ? "{\"%s\": %s}".formatted(of, rows)
        : Counted.of(rows, of.substring(0, of.length() - 1)) + " in " + exported;
  }

  private String told(String of, JsonNode answer) {
    if (service.json()) {
      return answer.toPrettyString();
    }
    StringBuilder text = new StringBuilder();
    for (JsonNode row : answer.path("rows")) {
      text.append("line ").append(row.path("line").asLong()).append(": ");
      text.append(row.path("name").asText());
      text.append(row.path("isNew").asBoolean() ? ", new: " : ", there already: ");
      text.append(row.path("stored").asText());
      text.append(System.lineSeparator());
    }
    return text + of + " added: " + answer.path("added").asInt();
  }
}
