package org.chordlog.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.CRC32;

/**
 * A short name of what the modules and styles of the pages contain; another whenever one of them
 * changes.
 */
final class FilesContent {
  private static final URL PAGES =
      Objects.requireNonNull(FilesContent.class.getResource("/dashboards/parts/head.html"));
  private static final String OF_JAR = PAGES.getProtocol().equals("jar") ? ofJar() : "";

  private FilesContent() {}

  /** Of a folder, where pages are worked on, looked at anew each time. */
  static String now() {
    return OF_JAR.isEmpty() ? ofFolder() : OF_JAR;
  }

  /** By the checksums that the jar has of its files. */
  private static String ofJar() {
    try {
      return name(
          ((JarURLConnection) PAGES.openConnection())
              .getJarFile().stream()
                  .filter(each -> each.getName().startsWith("dashboards/parts/"))
                  .map(each -> each.getName() + " " + each.getCrc()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** By name, time and size. */
  private static String ofFolder() {
    try (Stream<Path> all = Files.list(Path.of(uri()).resolveSibling("."))) {
      return name(all.map(FilesContent::line));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static URI uri() {
    try {
      return PAGES.toURI();
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String line(Path file) {
    try {
      return file + " " + Files.getLastModifiedTime(file).toMillis() + " " + Files.size(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String name(Stream<String> files) {
    CRC32 sum = new CRC32();
    sum.update(files.sorted().collect(Collectors.joining("\n")).getBytes(StandardCharsets.UTF_8));
    return "%08x".formatted(sum.getValue());
  }
}
