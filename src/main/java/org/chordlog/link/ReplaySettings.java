package org.chordlog.link;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A recorded stream ({@link Recording}), played at {@code speed} times life; 0: as fast as
 * possible.
 */
public record ReplaySettings(Path file, double speed) implements LinkSettings {
  @Override
  public <T> T match(Cases<T> cases) {
    return cases.replay(this);
  }

  @Override
  public String target() {
    return file.toString();
  }

  @Override
  public Link open() throws LinkException {
    return ReplayLink.open(this);
  }

  @Override
  public boolean present() {
    return Files.exists(file);
  }

  @Override
  public boolean shareable() {
    return true;
  }
}
