package org.chordlog.chart;

import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Draws every chart on one thread of its own, since JFreeChart is not thread-safe. A self-test
 * draws one chart at the start, which also warms up; where it fails (no fonts, no desktop module)
 * there are no pictures and {@link #fault} says why. Any thread may call.
 */
public final class ChartRenderer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ChartRenderer.class);
  private static final int MOST_WAITING = 64;

  private final ExecutorService worker =
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

  private final Callable<ChartPicture> selfTest;

  ChartRenderer(Callable<ChartPicture> selfTest) {
    this.selfTest = selfTest;
  }

  /** Draws nothing yet. */
  public static ChartRenderer idle() {
    return new ChartRenderer(RenderSelfTest::draw);
  }

  /** Has begun to warm up. */
  public static ChartRenderer start() {
    ChartRenderer renderer = idle();
    renderer.warmUp();
    return renderer;
  }

  /** Returns at once; pictures asked for meanwhile wait for the self-test. */
  public void warmUp() {
    worker.execute(this::attempt);
  }

  /** Why there are no pictures; empty when all is well or the self-test has not ended yet. */
  public String fault() {
    return fault;
  }

  /**
   * The picture, or empty where this machine can't draw. Fails with {@link
   * RejectedExecutionException} when too many wait, or with what the drawing threw.
   */
  public CompletableFuture<Optional<ChartPicture>> draw(
      Drawing drawing, PictureSize size, Theme theme) {
    try {
      return CompletableFuture.supplyAsync(
          () ->
              fault.isEmpty()
                  ? Optional.of(SvgWriter.write(drawing, size, theme))
                  : Optional.empty(),
          worker);
    } catch (RejectedExecutionException e) {
      return CompletableFuture.failedFuture(e);
    }
  }

  private void attempt() {
    try {
      selfTest.call();
    } catch (Exception | LinkageError | InternalError e) {
      if (isStopping(e)) {
        return;
      }
      fault = "charts can't be drawn on this machine: " + e;
      LOG.error("{}; a JRE with java.desktop, fontconfig and a font is needed", fault);
    }
  }

  /** A program that is stopped while it starts says nothing of the machine. */
  private boolean isStopping(Throwable thrown) {
    return worker.isShutdown()
        || String.valueOf(thrown.getCause()).contains("Shutdown in progress");
  }

  @Override
  public void close() {
    worker.shutdownNow();
  }
}
