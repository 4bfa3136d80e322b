package org.chordlog.web;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.Await;
import org.chordlog.harness.Golden;
import org.chordlog.harness.Ran;
import org.chordlog.measure.Job;
import org.chordlog.notify.AlertWatch;
import org.chordlog.web.http.OpenApi;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What programs read of the service: the API document, names of metrics, columns of CSV files. */
final class ServiceGoldenTest {
  private static final Pattern SAMPLE = Pattern.compile("(\\w+)(?:\\{([^}]*)})? .*");
  private static final Pattern LABEL = Pattern.compile("(\\w+)=\"[^\"]*\"");

  @TempDir static Path directory;
  private static Served served;
  private static AlertWatch watch;

  @BeforeAll
  static void serve() throws Exception {
    served = new Served(directory);
    watch = served.watch();
    Job job = served.job();
    served.readings(job, 30);
    CompleteStudy.in(served.store, job);
    served.zeroAndFree();
    served.post("/api/stations/A/trigger", "{}");
    Await.until(() -> !served.stations.status("A").counts().rejections().isEmpty());
  }

  @AfterAll
  static void stop() {
    watch.close();
    served.close();
  }

  @Test
  void theApiDocument() throws Exception {
    Golden.check("openapi.json", text(served.json(OpenApi.PATH)));
  }

  /** Keys in the order of the alphabet: their order says nothing. */
  static String text(JsonNode document) throws IOException {
    ObjectMapper mapper = new ObjectMapper().enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter()
            .withObjectIndenter(new DefaultIndenter("  ", "\n"))
            .withArrayIndenter(new DefaultIndenter("  ", "\n"));
    Object tree = mapper.treeToValue(document, Object.class);
    return mapper.writer(printer).writeValueAsString(tree);
  }

  @Test
  void metricsWithTypeAndLabels() throws Exception {
    Map<String, String> types = new TreeMap<>();
    Map<String, String> labels = new TreeMap<>();
    for (String line : served.get("/metrics").body().lines().toList()) {
      String[] words = line.split(" ", -1);
      Matcher sample = SAMPLE.matcher(line);
      if (line.startsWith("# TYPE ")) {
        types.put(words[2], words[3]);
      } else if (sample.matches()) {
        labels.put(sample.group(1), labels(sample.group(2)));
      }
    }
    List<String> rows = new ArrayList<>();
    labels.forEach((name, of) -> rows.add(name + of + " " + types.get(name)));
    Golden.check("metrics.txt", String.join("\n", rows));
  }

  private static String labels(@Nullable String text) {
    TreeSet<String> names = new TreeSet<>();
    LABEL.matcher(text == null ? "" : text).results().forEach(each -> names.add(each.group(1)));
    return names.isEmpty() ? "" : "{" + String.join(", ", names) + "}";
  }

  @Test
  void columnsOfEveryCsvFile() throws Exception {
    Map<String, String> columns = new TreeMap<>();
    JsonNode paths = served.json(OpenApi.PATH).get("paths");
    for (Map.Entry<String, JsonNode> path : paths.properties()) {
      if (path.getValue().at("/get/responses/200/content").has("text/csv")) {
        String real = path.getKey().replaceAll("\\{\\w+}", "1");
        columns.put("GET " + path.getKey(), firstLine(served.get(real).body()));
      }
    }
    String data = directory.toString();
    columns.put("export", firstLine(Ran.command("export", "--data", data).out()));
    columns.put(
        "export --changes",
        firstLine(Ran.command("export", "--data", data, "--job", "1", "--changes").out()));
    columns.put(
        "export --samples",
        firstLine(Ran.command("export", "--data", data, "--samples", "A").out()));
    Path figures = directory.resolve("figures.csv");
    Ran.command("report", "--job", "1", "--data", data, "--output", figures.toString());
    columns.put("report --output .csv", firstLine(Files.readString(figures)));
    Path depths = Files.writeString(directory.resolve("depths.csv"), "depth\n1.0\n");
    columns.put(
        "radius --csv",
        firstLine(Ran.line("radius --span 200 --column depth --csv " + depths).out()));
    List<String> rows = new ArrayList<>();
    columns.forEach((file, header) -> rows.add(file + ": " + header));
    Golden.check("csv-columns.txt", String.join("\n", rows));
  }

  private static String firstLine(String text) {
    return text.lines().findFirst().orElseThrow();
  }
}
