package org.chordlog.cli.common;

import java.nio.file.Path;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Where data goes when nobody says where: the folder that the system has for a user's data. */
final class DataPlace {
  private static final String FOLDER = "chordlog";

  private DataPlace() {}

  static Path usual() {
    return usual(System.getProperty("os.name", ""), Path.of(home()), System.getenv());
  }

  /**
   * After the name of the system: LOCALAPPDATA on Windows, Library/Application Support on macOS,
   * else XDG_DATA_HOME or .local/share (XDG Base Directory Specification, 0.8).
   */
  static Path usual(String system, Path home, Map<String, String> environment) {
    if (system.startsWith("Windows")) {
      return folder(environment.get("LOCALAPPDATA"), home.resolve("AppData").resolve("Local"));
    }
    if (system.startsWith("Mac")) {
      return home.resolve("Library").resolve("Application Support").resolve(FOLDER);
    }
    return folder(environment.get("XDG_DATA_HOME"), home.resolve(".local").resolve("share"));
  }

  private static Path folder(@Nullable String told, Path otherwise) {
    return (told == null || told.isBlank() ? otherwise : Path.of(told)).resolve(FOLDER);
  }

  private static String home() {
    return System.getProperty("user.home", ".");
  }
}
