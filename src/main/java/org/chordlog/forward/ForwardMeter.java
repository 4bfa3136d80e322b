package org.chordlog.forward;

import java.nio.ByteBuffer;
import java.util.Optional;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Feed;
import org.chordlog.store.FeedPage;
import org.chordlog.store.FeedPlace;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;

/**
 * How the delivery is going; any thread. What was delivered is noted beside the records from time
 * to time, only so that it can be said after a start without the plant; the plant's ledger decides.
 */
final class ForwardMeter {
  private static final String OWNER = "plant";
  private static final long NOTE_NANOS = 10_000_000_000L;
  private static final long COUNTED_NANOS = 1_000_000_000L;

  private final String plant;
  private final Feed feed;
  private final Checkpoints notes;
  private ForwardState state = ForwardState.CONNECTING;
  private String problem = "";
  private FeedPlace place = FeedPlace.BEGINNING;
  private FeedPage.Rest rest = FeedPage.Rest.NONE;
  private long lastDeliveredMicros;
  private long rows;
  private long batches;
  private long connections;
  private long notedNanos = System.nanoTime() - NOTE_NANOS;
  private long countedNanos = System.nanoTime() - COUNTED_NANOS;
  private boolean noted = true;

  ForwardMeter(String plant, Store store) {
    this.plant = plant;
    this.feed = store.feed().orElseThrow();
    this.notes = store.checkpoints();
    remembered().ifPresent(this::remember);
  }

  private Optional<ByteBuffer> remembered() {
    return notes.of(OWNER).stream()
        .findFirst()
        .flatMap(notes::find)
        .map(ByteBuffer::wrap)
        .filter(bytes -> bytes.remaining() == 3 * Long.BYTES);
  }

  private void remember(ByteBuffer bytes) {
    place = new FeedPlace(Math.max(0, bytes.getLong()), Math.max(0, bytes.getLong()));
    lastDeliveredMicros = bytes.getLong();
  }

  /** Whether that is news. */
  synchronized boolean failed(ForwardProblem now) {
    boolean news = !now.sentence().equals(problem);
    state = now.needsPerson() ? ForwardState.REFUSED : ForwardState.WAITING;
    problem = now.sentence();
    return news;
  }

  synchronized void connected(FeedPlace at) {
    state = ForwardState.DELIVERING;
    problem = "";
    place = at;
    connections++;
    rest = feed.rest(at);
    if (rest.rows() == 0) {
      state = ForwardState.COMPLETE;
    }
  }

  synchronized void delivered(FeedPage page, long nowMicros) {
    place = page.to();
    rest = page.rest();
    state = rest.rows() == 0 ? ForwardState.COMPLETE : ForwardState.DELIVERING;
    lastDeliveredMicros = nowMicros;
    rows += page.count();
    batches++;
    noted = false;
    if (System.nanoTime() - notedNanos > NOTE_NANOS) {
      tryToNote();
    }
  }

  /** Only what is said after the next start is older where the store does not take it. */
  private void tryToNote() {
    try {
      note();
    } catch (StoreException e) {
      notedNanos = System.nanoTime();
    }
  }

  private void note() {
    byte[] bytes =
        ByteBuffer.allocate(3 * Long.BYTES)
            .putLong(place.revision())
            .putLong(place.readingId())
            .putLong(lastDeliveredMicros)
            .array();
    notes.put(new Checkpoints.Slot(OWNER, 0, place.readingId()), bytes);
    notedNanos = System.nanoTime();
    noted = true;
  }

  synchronized ForwardStatus status() {
    boolean connected = state == ForwardState.DELIVERING || state == ForwardState.COMPLETE;
    if (!connected && System.nanoTime() - countedNanos > COUNTED_NANOS) {
      rest = feed.rest(place);
      countedNanos = System.nanoTime();
    }
    return new ForwardStatus(
        state,
        plant,
        problem,
        rest,
        lastDeliveredMicros,
        new ForwardStatus.Counts(rows, batches, connections));
  }

  synchronized void close() {
    if (!noted) {
      tryToNote();
    }
  }
}
