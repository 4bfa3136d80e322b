package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.chordlog.decode.BinaryNumber;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Every key of the station file, and every word that may stand there, has its words for people. */
final class SettingWordsTest {
  private static final Path KEYS = Path.of("src/test/resources/golden/station-file.txt");

  /** What has a page, or no field, of its own; a frame profile's kind follows from its parts. */
  private static final Set<String> ELSEWHERE = Set.of("name", "profile.kind");

  /** Texts of an indicator's own, to which the values belong. */
  private static final Set<String> OF_TEXTS =
      Set.of("profile.statuses", "profile.signs", "profile.units");

  @Test
  void everyKeyHasALabel() throws Exception {
    for (String line : Files.readAllLines(KEYS)) {
      String key = key(line);
      boolean elsewhere = ELSEWHERE.contains(key) || key.startsWith("bridge");
      assertTrue(
          elsewhere || SettingWords.labels().containsKey(key),
          () -> "SettingWords has no label of the station file's key " + key);
    }
  }

  @Test
  void everyWordOfAKeyHasItsWords() throws Exception {
    for (String line : Files.readAllLines(KEYS)) {
      String key = key(line);
      boolean own = ELSEWHERE.contains(key) || OF_TEXTS.contains(key) || key.startsWith("bridge");
      List<String> values = own || !line.contains(": ") ? List.of() : List.of(after(line));
      for (String value : values) {
        assertTrue(
            SettingWords.choices().containsKey(key + "=" + value),
            () -> "SettingWords has no words of " + key + "=" + value);
      }
    }
  }

  /** Proposals of {@code listen} name numbers as the pages do. */
  @Test
  void binaryNumbersAreCalledAsInProposals() {
    for (BinaryNumber.Type each : BinaryNumber.Type.values()) {
      assertEquals(each.words(), chosen("type", each));
    }
    for (BinaryNumber.Order each : BinaryNumber.Order.values()) {
      assertEquals(each.words(), chosen("order", each));
    }
  }

  private static @Nullable String chosen(String key, Enum<?> value) {
    String word = value.name().toLowerCase(Locale.ROOT);
    return SettingWords.choices().get("profile.binary." + key + "=" + word);
  }

  @Test
  void nothingIsNamedThatTheFileDoesNotHave() throws Exception {
    List<String> keys = Files.readAllLines(KEYS).stream().map(SettingWordsTest::key).toList();
    assertEquals(
        List.of(),
        SettingWords.labels().keySet().stream().filter(key -> !keys.contains(key)).toList());
  }

  @Test
  void noMarkOfTheTablesIsLeftInWords() {
    Stream.of(SettingWords.labels(), SettingWords.units(), SettingWords.hints())
        .flatMap(words -> words.entrySet().stream())
        .forEach(each -> assertFalse(each.getValue().contains("|"), each.toString()));
    SettingWords.choices()
        .forEach((key, words) -> assertFalse(words.matches(".*[|=].*"), key + ": " + words));
  }

  /** "link serial.rate: …" is the key link.rate. */
  private static String key(String line) {
    return line.replaceAll(": .*", "").replaceFirst("^link [a-z]+\\.", "link.");
  }

  private static String[] after(String line) {
    return line.substring(line.indexOf(": ") + 2).split(", ");
  }
}
