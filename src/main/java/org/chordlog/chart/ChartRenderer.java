package org.chordlog.chart;

import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Draws every chart on one thread, since JFreeChart is not made for more. Draws one as a trial,
 * which warms it up; where that fails (no fonts, no desktop module) there are no pictures and
 * {@link #fault} says why.
 */
public final class ChartRenderer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ChartRenderer.class);
  private static final int MOST_WAITING = 64;

  private final ExecutorService pen =
      new ThreadPoolExecutor(
          1,
          1,
          0,
          TimeUnit.SECONDS,
          new LinkedBlockingQueue<>(MOST_WAITING),
          task -> {
            Thread thread = new Thread(task, "charts");
            thread.setDaemon(true);
            return thread;
          });
  private volatile String fault = "";

  private final Callable<ChartPicture> trial;

  ChartRenderer(Callable<ChartPicture> trial) {
    this.trial = trial;
  }

  /** Draws nothing yet. */
  public static ChartRenderer idle() {
    return new ChartRenderer(RenderSelfTest::draw);
  }

  /** Has begun to warm up. */
  public static ChartRenderer start() {
    ChartRenderer draughtsman = idle();
    draughtsman.warmUp();
    return draughtsman;
  }

  /** Returns at once; pictures asked for meanwhile wait for the trial. */
  public void warmUp() {
    pen.execute(this::attempt);
  }

  /** Why there are no pictures; empty when all is well or the trial is not yet through. */
  public String fault() {
    return fault;
  }

  /**
   * The picture, or empty where this machine can't draw. Fails with {@link
   * RejectedExecutionException} when too many wait, or with what the drawing threw.
   */
  public CompletableFuture<Optional<ChartPicture>> draw(
      Supplier<Drawing> drawing, PictureSize size, Theme theme) {
    try {
      return CompletableFuture.supplyAsync(
          () ->
              fault.isEmpty()
                  ? Optional.of(SvgWriter.write(drawing.get(), size, theme))
                  : Optional.empty(),
          pen);
    } catch (RejectedExecutionException e) {
      return CompletableFuture.failedFuture(e);
    }
  }

  private void attempt() {
    try {
      trial.call();
    } catch (Exception | LinkageError | InternalError e) {
      fault = "charts can't be drawn on this machine: " + e;
      LOG.error("{}; a JRE with java.desktop, fontconfig and a font is needed", fault);
    }
  }

  @Override
  public void close() {
    pen.shutdownNow();
  }
}
