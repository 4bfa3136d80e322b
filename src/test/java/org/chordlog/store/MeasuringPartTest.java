package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The identification of the measuring part changes with what it computes, not with comments. */
final class MeasuringPartTest {
  @TempDir Path folder;

  private static Map<String, String> program() {
    Map<String, String> classes = new TreeMap<>();
    for (String each : List.of("capture", "decode", "measure", "radius")) {
      classes.put(
          each,
          "package org.chordlog.%s;\nfinal class A {\n  double of(double x) {\n    double y = x * 2;\n    return y;\n  }\n}\n"
              .formatted(each));
    }
    return classes;
  }

  /** Compiled in one go: a start of the compiler takes longer than all else here. */
  private String hash(String name, Map<String, String> classes) throws Exception {
    JavaCompiler javac = ToolProvider.getSystemJavaCompiler();
    Path out = Files.createDirectories(folder.resolve(name));
    List<String> arguments = new ArrayList<>(List.of("-g", "-d", out.toString()));
    for (Map.Entry<String, String> each : classes.entrySet()) {
      Path source = Files.createDirectories(folder.resolve(name + "-" + each.getKey()));
      arguments.add(Files.writeString(source.resolve("A.java"), each.getValue()).toString());
    }
    assertEquals(0, javac.run(null, null, null, arguments.toArray(new String[0])));
    return MeasuringPart.hash(out);
  }

  @Test
  void aCommentThatMovesEveryLineChangesNothing() throws Exception {
    Map<String, String> other = program();
    other.replaceAll((name, text) -> text.replace("  double of", "\n  // why\n  double of"));
    assertEquals(hash("one", program()), hash("other", other));
  }

  @Test
  void aNumberThatIsComputedOtherwiseChangesIt() throws Exception {
    String hash = hash("one", program());
    for (String each : program().keySet()) {
      Map<String, String> other = program();
      other.computeIfPresent(each, (name, text) -> text.replace("x * 2", "x * 3"));
      assertNotEquals(hash, hash("other-" + each, other));
    }
  }

  @Test
  void theProgramThatRunsHasOne() {
    assertTrue(MeasuringPart.sha256().matches("[0-9a-f]{64}"));
  }
}
