package org.chordlog.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

final class LinkKindTest {
  @Test
  void everyKindHasItsSettingsAndEverySettingsItsKind() {
    assertEquals(
        Arrays.stream(LinkKind.values()).map(LinkKindTest::settings).collect(Collectors.toSet()),
        Arrays.stream(LinkSettings.class.getPermittedSubclasses())
            .map(Class::getSimpleName)
            .collect(Collectors.toSet()));
  }

  private static String settings(LinkKind kind) {
    String name = kind.name();
    return name.charAt(0) + name.substring(1).toLowerCase(Locale.ROOT) + "Settings";
  }

  @ParameterizedTest
  @EnumSource
  void everyKindHasItsRowInTheDocuments(LinkKind kind) throws Exception {
    String row = "| `" + kind.name().toLowerCase(Locale.ROOT) + "` |";
    assertTrue(Files.readString(Path.of("src/docs/stations.md")).contains(row), row);
  }
}
