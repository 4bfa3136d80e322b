package org.chordlog.cli.service;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Base64;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;

/** A password that nobody types, in a file that its owner alone may read. */
record NewPassword(Path file) {
  private static final int BYTES = 24;
  private static final String OPTION = "--new-password-file";

  /** Makes it, and the file, which must not be there yet. */
  String make() {
    byte[] random = new byte[BYTES];
    new SecureRandom().nextBytes(random);
    String password = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
    try {
      Files.createFile(file, ownerOnly());
      Files.write(file, (password + "\n").getBytes(StandardCharsets.US_ASCII));
      return password;
    } catch (FileAlreadyExistsException e) {
      throw new BadInput(OPTION, file, "exists already", "a new file");
    } catch (IOException e) {
      throw new BadInput(OPTION, file, FileTrouble.writing(e), "a new file");
    }
  }

  private FileAttribute<?>[] ownerOnly() {
    return file.getFileSystem().supportedFileAttributeViews().contains("posix")
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
        }
        : new FileAttribute<?>[0];
  }

  /** Where no login came to be that it belongs to. */
  void drop() {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      throw new BadInput(
          OPTION, file, "can't be removed: " + FileTrouble.reason(e), "a file to remove by hand");
    }
  }
}
