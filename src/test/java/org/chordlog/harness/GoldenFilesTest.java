package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

final class GoldenFilesTest {
  @Test
  void whatChangedIsShownWithoutWhatDidNot() {
    List<String> kept = List.of("a", "b", "c", "d");
    assertEquals(List.of(), Golden.changes(kept, kept));
    assertEquals(
        List.of("- b", "+ x", "+ y"), Golden.changes(kept, List.of("a", "x", "y", "c", "d")));
    assertEquals(List.of("- d"), Golden.changes(kept, List.of("a", "b", "c")));
    assertEquals(List.of("+ a"), Golden.changes(kept, List.of("a", "a", "b", "c", "d")));
    assertEquals(List.of("+ a"), Golden.changes(List.of(), List.of("a")));
  }

  @Test
  void whatStandsBetweenTwoChangesIsNotShown() {
    List<String> kept = List.of("a", "b", "c", "d", "e", "f");
    assertEquals(
        List.of("- b", "+ x", "+ y"),
        Golden.changes(kept, List.of("a", "x", "c", "d", "y", "e", "f")));
    assertEquals(List.of("- a", "- f"), Golden.changes(kept, List.of("b", "c", "d", "e")));
  }
}
