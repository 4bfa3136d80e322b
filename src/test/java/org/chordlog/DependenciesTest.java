package org.chordlog;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.chordlog.harness.Golden;
import org.junit.jupiter.api.Test;

/**
 * Every library on the class path, those of the tests included, has the bytes it had when somebody
 * last decided for it: another file of the same name and version, wherever it came from, fails the
 * build. After a library was added or renewed: {@code mvn test -Dtest=DependenciesTest
 * -Dchordlog.golden=write}, and a look at what changed in the file.
 */
final class DependenciesTest {
  /** Fewer would mean that the class path was not found. */
  private static final int FEWEST = 60;

  @Test
  void everyLibraryHasTheBytesItHadWhenItWasChosen() throws Exception {
    Map<String, String> sums = new TreeMap<>();
    for (Path jar : libraries()) {
      sums.put(jar.getFileName().toString(), sum(jar));
    }
    assertTrue(sums.size() >= FEWEST, sums::toString);
    Golden.check(
        "dependencies.sha256",
        sums.entrySet().stream()
            .map(each -> each.getValue() + "  " + each.getKey())
            .collect(Collectors.joining("\n")));
  }

  private static List<Path> libraries() {
    return List.of(System.getProperty("java.class.path").split(File.pathSeparator)).stream()
        .filter(each -> each.endsWith(".jar"))
        .map(Path::of)
        .toList();
  }

  private static String sum(Path jar) throws IOException, NoSuchAlgorithmException {
    byte[] bytes = Files.readAllBytes(jar);
    return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
  }
}
