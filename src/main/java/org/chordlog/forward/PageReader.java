package org.chordlog.forward;

import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.chordlog.store.Feed;
import org.chordlog.store.FeedPage;
import org.chordlog.store.FeedPlace;
import org.chordlog.store.StoreException;
import org.jspecify.annotations.Nullable;

/**
 * Pages of the feed as text for COPY. Where more waits, the next one is made on the thread
 * "forward-read" while the one before is on its way: there are two in memory at most. For one
 * thread.
 */
final class PageReader implements AutoCloseable {
  /** A page, and the text of each of its tables. */
  record Ready(FeedPage page, List<byte[]> texts) {}

  /** A page that is being made. */
  private record Coming(FeedPlace after, Future<Ready> page) {}

  private final Feed feed;
  private final BatchSize size;
  private final ExecutorService ahead = Executors.newSingleThreadExecutor(PageReader::daemon);
  private @Nullable Coming coming;

  PageReader(Feed feed, BatchSize size) {
    this.feed = feed;
    this.size = size;
  }

  private static Thread daemon(Runnable task) {
    Thread thread = new Thread(task, "forward-read");
    thread.setDaemon(true);
    return thread;
  }

  /** What follows that place. */
  Ready after(FeedPlace place) {
    Coming made = coming;
    coming = null;
    Ready ready = made != null && made.after().equals(place) ? get(made.page()) : read(place);
    if (ready.page().rest().rows() > 0) {
      FeedPlace next = ready.page().to();
      coming = new Coming(next, ahead.submit(() -> read(next)));
    }
    return ready;
  }

  private Ready read(FeedPlace place) {
    FeedPage page = feed.page(place, size.rows(), size.bytes());
    return new Ready(
        page,
        page.rows().stream()
            .map(rows -> CopyText.of(rows.rows(), rows.table().holdsFacts()))
            .toList());
  }

  private static Ready get(Future<Ready> page) {
    try {
      return page.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new StoreException("interrupted", e);
    } catch (ExecutionException e) {
      throw new StoreException("what is recorded can't be read: " + e.getCause(), e);
    }
  }

  @Override
  public void close() {
    ahead.shutdownNow();
  }
}
