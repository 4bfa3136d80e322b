package org.chordlog.store;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

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
      return Files.isDirectory(home) ? hash(home) : hash(ofJar(home));
    } catch (IOException | URISyntaxException e) {
      throw new IllegalStateException("the program's own classes can't be read", e);
    }
  }

  /** Of the classes below a folder that holds {@code org/chordlog}. */
  static String hash(Path home) throws IOException {
    SortedMap<String, byte[]> classes = new TreeMap<>();
    for (String each : PACKAGES) {
      try (Stream<Path> entries = Files.list(home.resolve(HOME + each))) {
        for (Path file : entries.filter(entry -> isClass(String.valueOf(entry))).toList()) {
          classes.put(each + "/" + file.getFileName(), Files.readAllBytes(file));
        }
      }
    }
    return hash(classes);
  }

  /** By package and name; the jar is open anyway, as its classes come from it. */
  private static SortedMap<String, byte[]> ofJar(Path file) throws IOException {
    SortedMap<String, byte[]> classes = new TreeMap<>();
    try (ZipFile jar = new ZipFile(file.toFile())) {
      for (ZipEntry each : jar.stream().filter(entry -> isMeasuring(entry.getName())).toList()) {
        try (InputStream in = jar.getInputStream(each)) {
          classes.put(each.getName().substring(HOME.length()), in.readAllBytes());
        }
      }
    }
    return classes;
  }

  private static boolean isMeasuring(String entry) {
    int name = entry.lastIndexOf('/') + 1;
    return name > HOME.length()
        && entry.startsWith(HOME)
        && isClass(entry)
        && PACKAGES.contains(entry.substring(HOME.length(), name - 1));
  }

  private static boolean isClass(String file) {
    return file.endsWith(".class");
  }

  private static String hash(SortedMap<String, byte[]> classes) throws IOException {
    MessageDigest sha = sha();
    for (Map.Entry<String, byte[]> each : classes.entrySet()) {
      sha.update((each.getKey() + "\n").getBytes(StandardCharsets.UTF_8));
      sha.update(ClassBytes.withoutDebugging(each.getValue()));
    }
    return HexFormat.of().formatHex(sha.digest());
  }

  private static MessageDigest sha() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
