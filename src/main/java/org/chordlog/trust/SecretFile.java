package org.chordlog.trust;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Map;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/**
 * A secret in a file of its own, which is read each time, so that it may be replaced while the
 * program runs. {@code setting} is the name under which it is refused; the secret itself is never
 * part of a message.
 */
public record SecretFile(String setting, Path file) {
  private static final String CREDENTIAL = "credential:";
  private static final String FOLDER = "CREDENTIALS_DIRECTORY";
  private static final int MOST_BYTES = 4_096;

  /**
   * A path, beside {@code folder} where it is not absolute, or {@code credential:NAME}, which
   * systemd hands over (systemd.exec, LoadCredential). Read once, so that a fault shows at once.
   */
  public static SecretFile named(String setting, String name, Path folder) {
    return named(setting, name, folder, System.getenv());
  }

  static SecretFile named(
      String setting, String name, Path folder, Map<String, String> environment) {
    Path file =
        name.startsWith(CREDENTIAL)
            ? credential(setting, name, environment.get(FOLDER))
            : path(setting, name, folder);
    SecretFile secret = new SecretFile(setting, file);
    secret.read();
    return secret;
  }

  private static Path path(String setting, String name, Path folder) {
    try {
      return folder.resolve(name);
    } catch (InvalidPathException e) {
      throw new BadInput(setting, name, "is not a path", "a file that holds the secret");
    }
  }

  private static Path credential(String setting, String name, @Nullable String folder) {
    String credential = name.substring(CREDENTIAL.length());
    if (!credential.matches("[A-Za-z0-9._-]+")) {
      throw new BadInput(setting, name, "is not the name of a credential", "credential:NAME");
    }
    if (folder == null) {
      throw new BadInput(
          setting,
          name,
          "was not handed over by systemd",
          "LoadCredential=" + credential + ":FILE in the unit of the service, or a path");
    }
    return Path.of(folder, credential);
  }

  /** Without the line break at its end. */
  public String read() {
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw bad("is too large for a secret", "at most " + MOST_BYTES + " bytes");
      }
      refuseReaders();
      String secret = Files.readString(file, StandardCharsets.UTF_8).stripTrailing();
      if (secret.isEmpty() || secret.chars().anyMatch(Character::isISOControl)) {
        throw bad("holds no secret of one line", "one line with the secret");
      }
      return secret;
    } catch (IOException e) {
      throw bad(
          FileTrouble.reading(file, e),
          "a file that the user of the service may read and others may not");
    }
  }

  private void refuseReaders() throws IOException {
    if (!file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      return;
    }
    boolean open =
        Files.getPosixFilePermissions(file).stream()
            .anyMatch(each -> each.name().startsWith("OTHERS"));
    if (open) {
      throw bad("can be read by every user of this computer", "chmod 640 " + file);
    }
  }

  private BadInput bad(String problem, String allowed) {
    return new BadInput(setting, file, problem, allowed);
  }
}
