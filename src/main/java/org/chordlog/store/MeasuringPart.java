package org.chordlog.store;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Identifies the part of the program that decides a measurement: the SHA-256 over the names and
 * contents of the classes of {@code measure}, {@code decode}, {@code capture} and {@code radius},
 * in the order of their names. Comments and line numbers are left out; a class that is compiled to
 * other bytes changes it, also where every number stays the same. Computed once, from the classes
 * that run.
 */
public final class MeasuringPart {
  private static final List<String> PACKAGES = List.of("capture", "decode", "measure", "radius");
  private static final String HOME = "org/chordlog/";

  private MeasuringPart() {}

  /** Of the program; "unpacked" where it does not run from its jar. */
  public static String version() {
    String version = MeasuringPart.class.getPackage().getImplementationVersion();
    return version == null ? "unpacked" : version.replace(' ', '-');
  }

  /** 64 hexadecimal digits. */
  public static String sha256() {
    return Once.SHA256;
  }

  /** Computed with the first use. */
  private static final class Once {
    static final String SHA256 = compute();
  }

  private static String compute() {
    try {
      URI place = MeasuringPart.class.getProtectionDomain().getCodeSource().getLocation().toURI();
      Path home = Path.of(place);
      if (Files.isDirectory(home)) {
        return hash(home);
      }
      try (FileSystem jar = FileSystems.newFileSystem(home, Map.of())) {
        return hash(jar.getPath("/"));
      }
    } catch (IOException | URISyntaxException e) {
      throw new IllegalStateException("the program's own classes can't be read", e);
    }
  }

  /** Of the classes below a folder that holds {@code org/chordlog}. */
  static String hash(Path home) throws IOException {
    MessageDigest sha = sha();
    for (String each : PACKAGES) {
      for (Path file : classes(home.resolve(HOME + each))) {
        try (InputStream in = Files.newInputStream(file)) {
          sha.update((each + "/" + file.getFileName() + "\n").getBytes(StandardCharsets.UTF_8));
          sha.update(ClassBytes.withoutDebugging(in.readAllBytes()));
        }
      }
    }
    return HexFormat.of().formatHex(sha.digest());
  }

  private static List<Path> classes(Path folder) throws IOException {
    List<Path> found = new ArrayList<>();
    try (Stream<Path> entries = Files.list(folder)) {
      entries
          .filter(entry -> entry.toString().endsWith(".class"))
          .sorted((a, b) -> name(a).compareTo(name(b)))
          .forEach(found::add);
    }
    return found;
  }

  private static String name(Path file) {
    return String.valueOf(file.getFileName());
  }

  private static MessageDigest sha() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
