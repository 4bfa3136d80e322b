package org.chordlog.link;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

final class LinkKindTest {
  @ParameterizedTest
  @EnumSource
  void everyKindHasItsRowInTheReadme(LinkKind kind) throws Exception {
    String row = "| `" + kind.name().toLowerCase(Locale.ROOT) + "` |";
    assertTrue(Files.readString(Path.of("README.md")).contains(row), row);
  }
}
