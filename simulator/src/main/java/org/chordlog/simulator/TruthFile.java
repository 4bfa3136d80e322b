package org.chordlog.simulator;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Consumer;

/** Writes what was true, one CSV line a contact, as it begins. */
final class TruthFile implements Consumer<Contact>, AutoCloseable {
  static final String HEADER =
      "piece,position,lot,centreline_radius_mm,true_depth_mm,seated_depth_mm,"
          + "touched_s,rest_from_s,rest_to_s,left_s\n";

  private final Writer out;

  private TruthFile(Writer out) {
    this.out = out;
  }

  static TruthFile create(Path path) throws IOException {
    Writer out = Files.newBufferedWriter(path);
    out.write(HEADER);
    out.flush();
    return new TruthFile(out);
  }

  @Override
  public void accept(Contact contact) {
    try {
      out.write(line(contact));
      out.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String line(Contact c) {
    return String.format(
        Locale.ROOT,
        "%d,%s,%s,%s,%.6f,%.6f,%.3f,%.3f,%.3f,%.3f%n",
        c.piece(),
        c.position(),
        c.lot(),
        Double.isInfinite(c.radiusMm()) ? "" : String.format(Locale.ROOT, "%.4f", c.radiusMm()),
        c.trueDepthMm(),
        c.seatedDepthMm(),
        c.touchedSeconds(),
        c.restFromSeconds(),
        c.restToSeconds(),
        c.leftSeconds());
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
