package org.chordlog.harness;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What is in the jar is needed: of every library at least one class is reached from the program, by
 * references from class to class and by service files.
 */
final class LibrariesIT {
  private static final String SERVICES = "META-INF/services/";

  /** Of these nothing is reached by a reference, for the reason beside each. */
  private static final Map<String, String> ALLOWED =
      Map.of(
          "batik-shared-resources", "has no classes: the notice of the libraries beside it",
          "postgresql", "the driver of a plant's database, found by its address");

  private static final Pattern VERSIONED = Pattern.compile("^META-INF/versions/\\d+/");

  @Test
  void ofEveryLibraryInTheJarSomethingIsReached() throws IOException {
    try (JarFile jar = new JarFile(ServiceProcess.jar().toFile())) {
      Set<String> reached = reached(jar);
      assertTrue(reached.size() > 5_000, () -> reached.size() + " classes reached");
      Set<String> unused = new TreeSet<>();
      for (Path library : libraries()) {
        Set<String> classes = classes(library);
        if (jar.stream().map(JarEntry::getName).anyMatch(classes::contains)
            && classes.stream().noneMatch(reached::contains)) {
          unused.add(library.getFileName().toString());
        }
      }
      unused.removeIf(name -> ALLOWED.keySet().stream().anyMatch(name::startsWith));
      assertEquals(Set.of(), unused);
    }
  }

  /** Where SQLite has no native part, Chordlog can't run. */
  @Test
  void nativePartsAreThereOnlyForSystemsOnWhichTheStoreHasOne() throws IOException {
    try (JarFile jar = new JarFile(ServiceProcess.jar().toFile())) {
      Set<String> elsewhere =
          jar.stream()
              .map(JarEntry::getName)
              .filter(name -> name.matches(".*\\.(so|dll|jnilib|dylib|a)"))
              .filter(name -> name.matches("(?i).*(android|aix|sunos|solaris|openbsd|dragonfly).*"))
              .collect(Collectors.toCollection(TreeSet::new));
      assertEquals(Set.of(), elsewhere);
      assertTrue(jar.getEntry("org/sqlite/native/Linux/x86_64/libsqlitejdbc.so") != null);
      assertTrue(jar.getEntry("com/sun/jna/linux-x86-64/libjnidispatch.so") != null);
      assertTrue(jar.getEntry("Linux/x86_64/libjSerialComm.so") != null);
    }
  }

  private static List<Path> libraries() {
    return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
        .filter(each -> each.endsWith(".jar"))
        .map(Path::of)
        .toList();
  }

  private static Set<String> classes(Path library) throws IOException {
    try (JarFile jar = new JarFile(library.toFile())) {
      return jar.stream()
          .map(JarEntry::getName)
          .filter(name -> name.endsWith(".class") && !name.contains("module-info"))
          .map(name -> VERSIONED.matcher(name).replaceFirst(""))
          .collect(Collectors.toSet());
    }
  }

  /** The files of classes that are reached from those of the program. */
  private static Set<String> reached(JarFile jar) throws IOException {
    Map<String, Set<String>> providers = providers(jar);
    Map<String, List<JarEntry>> files =
        jar.stream()
            .filter(each -> each.getName().endsWith(".class"))
            .collect(
                Collectors.groupingBy(each -> VERSIONED.matcher(each.getName()).replaceFirst("")));
    Deque<String> next = new ArrayDeque<>();
    files.keySet().stream().filter(name -> name.startsWith("org/chordlog/")).forEach(next::add);
    Set<String> reached = new HashSet<>(next);
    while (!next.isEmpty()) {
      String name = next.remove();
      for (JarEntry file : files.getOrDefault(name, List.of())) {
        Stream.concat(
                References.of(jar.getInputStream(file).readAllBytes()).stream(),
                providers.getOrDefault(name, Set.of()).stream())
            .filter(reached::add)
            .forEach(next::add);
      }
    }
    return reached;
  }

  private static Map<String, Set<String>> providers(JarFile jar) throws IOException {
    Map<String, Set<String>> providers = new HashMap<>();
    for (JarEntry each : jar.stream().filter(LibrariesIT::isService).toList()) {
      String text = new String(jar.getInputStream(each).readAllBytes(), UTF_8);
      providers.put(
          file(each.getName().substring(SERVICES.length())),
          text.lines()
              .map(line -> line.replaceFirst("#.*", "").strip())
              .filter(line -> !line.isEmpty())
              .map(LibrariesIT::file)
              .collect(Collectors.toSet()));
    }
    return providers;
  }

  private static boolean isService(JarEntry entry) {
    return entry.getName().startsWith(SERVICES) && !entry.isDirectory();
  }

  private static String file(String className) {
    return className.replace('.', '/') + ".class";
  }
}
