package org.chordlog.notify.settings;

import com.fasterxml.jackson.databind.DeserializationConfig;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.introspect.BeanPropertyDefinition;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.chordlog.harness.Golden;
import org.chordlog.measure.LengthUnit;
import org.chordlog.yaml.FieldBinder;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** Every key that a file of alerts may have, with the words allowed: files in use hold them. */
final class AlertFileGoldenTest {
  private static final DeserializationConfig READING =
      FieldBinder.yaml().build().getDeserializationConfig();

  private final List<String> rows = new ArrayList<>();

  private String all() {
    rows.addAll(AlertFields.KEYS);
    key("unit", READING.constructType(LengthUnit.class));
    keys("shifts", ShiftFields.class);
    keys("quietHours", ShiftFields.Quiet.class);
    keys("people", PersonFields.class);
    keys("groups", GroupFields.class);
    keys("escalation", EscalationFields.class);
    keys("daily", DailyFields.class);
    keys("mail", MailFields.class);
    keys("webhooks", WebhookFields.class);
    return rows.stream().distinct().sorted().collect(Collectors.joining("\n"));
  }

  @Test
  void keysAndWords() throws Exception {
    Golden.check("alert-file.txt", all());
  }

  /** The page on alerts has a row for each part, and its row names the keys of the part. */
  @Test
  void eachKeyIsInItsRowOfTheHelp() throws Exception {
    String help = Files.readString(Path.of("src/docs/alerts.md"));
    for (String row : all().lines().toList()) {
      String[] path = row.split(":", 2)[0].split("[.]", -1);
      String line =
          help.lines()
              .filter(each -> each.startsWith("| `" + path[0] + "` |"))
              .findFirst()
              .orElse("");
      Assertions.assertTrue(line.contains("`" + path[path.length - 1] + "`"), row + ": " + line);
    }
  }

  /** As the mapper that reads the file sees the type. */
  private void keys(String path, Class<?> type) {
    JavaType read = READING.constructType(type);
    for (BeanPropertyDefinition each : READING.introspect(read).findProperties()) {
      if (each.couldDeserialize()) {
        key(path + "." + each.getName(), each.getPrimaryType());
      }
    }
  }

  private void key(String path, JavaType type) {
    JavaType of = type.isContainerType() ? type.getContentType() : type;
    rows.add(path + (of.isEnumType() ? words(of.getRawClass()) : ""));
    if (of.getRawClass().isRecord()) {
      keys(path, of.getRawClass());
    }
  }

  private static String words(Class<?> type) {
    return Arrays.stream(type.getEnumConstants())
        .map(each -> each.toString().toLowerCase(Locale.ROOT))
        .collect(Collectors.joining(", ", ": ", ""));
  }
}
