package org.chordlog.notify.settings;

import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.harness.FileKeys;
import org.chordlog.harness.Golden;
import org.chordlog.measure.LengthUnit;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** Every key that a file of alerts may have, with the words allowed: files in use hold them. */
final class AlertFileGoldenTest {
  private final FileKeys rows = new FileKeys();

  private String all() {
    AlertFields.KEYS.forEach(rows::key);
    rows.key("unit", LengthUnit.class);
    rows.keys("shifts", ShiftFields.class);
    rows.keys("quietHours", ShiftFields.Quiet.class);
    rows.keys("people", PersonFields.class);
    rows.keys("groups", GroupFields.class);
    rows.keys("escalation", EscalationFields.class);
    rows.keys("daily", DailyFields.class);
    rows.keys("mail", MailFields.class);
    rows.keys("webhooks", WebhookFields.class);
    return rows.text();
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
}
