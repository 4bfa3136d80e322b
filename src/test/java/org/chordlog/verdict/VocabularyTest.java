package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

final class VocabularyTest {
  /** Advice, and what is told beside the name of a setting; settings are no constants. */
  private static boolean mayBeEmpty(String group) {
    return group.endsWith("Advice") || group.startsWith("setting");
  }

  @Test
  void noConstantIsWithoutWords() {
    List<String> wordless =
        Vocabulary.all().entrySet().stream()
            .filter(group -> !mayBeEmpty(group.getKey()))
            .flatMap(VocabularyTest::wordless)
            .toList();
    assertEquals(List.of(), wordless);
  }

  private static Stream<String> wordless(Map.Entry<String, Map<String, String>> group) {
    return group.getValue().entrySet().stream()
        .filter(each -> each.getValue().isBlank() || each.getValue().contains("_"))
        .map(each -> group.getKey() + "." + each.getKey());
  }

  /** Pieces of several kinds of studies are all called pieces. */
  private static boolean mayBeAlike(String group) {
    return group.endsWith("Tones") || group.equals("studySpots");
  }

  @Test
  void noTwoConstantsOfAGroupAreSaidAlike() {
    Vocabulary.all().entrySet().stream()
        .filter(group -> !mayBeEmpty(group.getKey()) && !mayBeAlike(group.getKey()))
        .forEach(
            group ->
                assertEquals(
                    group.getValue().size(),
                    group.getValue().values().stream().distinct().count(),
                    group.getKey()));
  }
}
