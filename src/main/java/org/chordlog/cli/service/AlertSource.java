package org.chordlog.cli.service;

import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.notify.settings.AlertFile;
import org.chordlog.notify.settings.AlertSettings;
import org.jspecify.annotations.Nullable;

/** A file of alerts and what it said when it was read. */
record AlertSource(Path file, AlertSettings settings) {
  static AlertSource read(Path file) {
    return new AlertSource(file, AlertFile.read(file));
  }

  /** The one in that directory; null where there is none. */
  static @Nullable AlertSource in(Path folder) {
    Path file = folder.resolve(AlertFile.NAME);
    return Files.exists(file) ? read(file) : null;
  }
}
