package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.abort;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the jar carries besides the program: licences, notices, changes, bill of materials. */
final class JarIT {
  private static final Pattern TEXT_IN_THE_JAR = Pattern.compile("\\| `([\\w/.-]+)` \\|");
  private JarFile jar;

  @BeforeEach
  void open() throws IOException {
    jar = new JarFile(ServiceProcess.jar().toFile());
  }

  @AfterEach
  void close() throws IOException {
    jar.close();
  }

  private String text(String name) throws IOException {
    assertTrue(jar.getEntry(name) != null, name + " is not in the jar");
    try (InputStream in = jar.getInputStream(jar.getEntry(name))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void licenceNoticesAndChangesAreThere() throws IOException {
    assertTrue(text("META-INF/LICENSE").stripLeading().startsWith("Apache License"));
    String notice = text("META-INF/NOTICE");
    assertTrue(notice.stripLeading().startsWith("Chordlog, copyright 2026 the authors"), notice);
    assertFalse(notice.contains("\uFFFD"), "a notice was read in the wrong encoding");
    assertTrue(text("META-INF/CHANGELOG.md").startsWith("# Changes"));
  }

  /** Java 24 and newer warn of every native library that is loaded without it (JEP 472). */
  @Test
  void nativeLibrariesMayBeLoaded() throws IOException {
    Attributes main = jar.getManifest().getMainAttributes();
    assertEquals("ALL-UNNAMED", main.getValue("Enable-Native-Access"));
  }

  /** A new library under another licence needs its row, and its text in the jar. */
  @Test
  void whatIsNotUnderTheApacheLicenceIsNamedWithItsText() throws IOException {
    String named = text("META-INF/THIRD-PARTY.md");
    List<String> missing = new ArrayList<>();
    for (JsonNode library : components()) {
      if (!library.get("licenses").toString().contains("Apache-2.0")
          && !named.contains(library.get("name").asText())) {
        missing.add(library.get("name").asText() + " " + library.get("licenses"));
      }
    }
    assertEquals(List.of(), missing);
    List<String> texts =
        TEXT_IN_THE_JAR.matcher(named).results().map(each -> each.group(1)).toList();
    assertTrue(texts.size() >= 8, texts::toString);
    for (String each : texts) {
      assertTrue(text(each).length() > 500, each);
    }
  }

  @Test
  void theBillOfMaterialsNamesWhatTheClassesComeFrom() throws IOException {
    List<String> names = new ArrayList<>();
    components().forEach(each -> names.add(each.get("name").asText()));
    assertTrue(names.containsAll(List.of("javalin", "sqlite-jdbc", "jna", "picocli")));
    assertTrue(names.stream().noneMatch(name -> name.startsWith("junit")), names::toString);
  }

  /** The bill is made online only; a CI run demands it. */
  private JsonNode components() throws IOException {
    boolean made = jar.getEntry("META-INF/sbom/chordlog.cdx.json") != null;
    String message = "NO BILL OF MATERIALS: the jar was built offline";
    if (!made && System.getenv("CI") == null) {
      System.err.println(message);
      abort(message);
    }
    JsonNode bill = new ObjectMapper().readTree(text("META-INF/sbom/chordlog.cdx.json"));
    assertEquals("CycloneDX", bill.get("bomFormat").asText());
    return bill.get("components");
  }
}
