package org.chordlog.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.chordlog.chart.ChartPicture;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.chart.Drawing;
import org.chordlog.chart.PictureKind;
import org.chordlog.web.http.Refusal;
import org.jspecify.annotations.Nullable;

/** A cache of pictures, each drawn once for all pages; those last used are held. */
final class Pictures {
  static final int KEPT = 64;
  private static final int PATIENCE_SECONDS = 10;
  private final ChartRenderer renderer;
  private final int most;
  private final Map<Key, CompletableFuture<Optional<ChartPicture>>> kept =
      new LinkedHashMap<>(16, 0.75f, true);

  Pictures(ChartRenderer renderer) {
    this(renderer, KEPT);
  }

  Pictures(ChartRenderer renderer, int most) {
    this.renderer = renderer;
    this.most = most;
  }

  /**
   * What makes a picture; {@code of} names whose it is, {@code tag} changes with its statistics.
   */
  record Key(
      String of, PictureKind kind, String characteristic, ChartOptions options, String tag) {}

  /** {@code drawing} is called on the caller's thread, and only if no such picture is held. */
  ChartPicture get(Key key, Supplier<Drawing> drawing) {
    CompletableFuture<Optional<ChartPicture>> picture = find(key);
    if (picture == null) {
      picture = renderer.draw(drawing.get(), key.options().size(), key.options().theme());
      keep(key, picture);
    }
    return await(key, picture);
  }

  private @Nullable CompletableFuture<Optional<ChartPicture>> find(Key key) {
    synchronized (kept) {
      return kept.get(key);
    }
  }

  private void keep(Key key, CompletableFuture<Optional<ChartPicture>> picture) {
    synchronized (kept) {
      kept.put(key, picture);
      if (kept.size() > most) {
        kept.remove(kept.keySet().iterator().next());
      }
    }
  }

  private void forget(Key key, CompletableFuture<Optional<ChartPicture>> picture) {
    synchronized (kept) {
      kept.remove(key, picture);
    }
  }

  private ChartPicture await(Key key, CompletableFuture<Optional<ChartPicture>> picture) {
    try {
      return picture
          .copy()
          .orTimeout(PATIENCE_SECONDS, TimeUnit.SECONDS)
          .join()
          .orElseThrow(() -> new Refusal(503, "No pictures", renderer.fault()));
    } catch (CompletionException e) {
      forget(key, picture);
      if (e.getCause() instanceof RejectedExecutionException) {
        throw new Refusal(
            503, "Too many charts asked for", "Try again.", Map.of("Retry-After", "1"));
      }
      throw e;
    }
  }
}
