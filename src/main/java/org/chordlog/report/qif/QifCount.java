package org.chordlog.report.qif;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.Reading;

/**
 * What has to be known of all readings before the first is written: counts, since QIF wants the
 * length of every list before it, and pieces with their status, which follow after the readings.
 * Takes a little over one byte a reading and sixteen bytes a piece.
 */
final class QifCount {
  static final int MOST_POSITIONS = 255;

  private final QifPositions positions;
  private final QifDevices devices;
  private final ByteArrayOutputStream gathered = new ByteArrayOutputStream();
  private final BitSet unlisted = new BitSet();
  private final BitSet exclusions = new BitSet();
  private final Map<Integer, String> reasons = new LinkedHashMap<>();
  private final Set<Long> wanted = new HashSet<>();
  private final Map<Long, Integer> ordinals = new HashMap<>();
  private final QifPieces pieces;
  private byte[] positionOf = {};
  private long firstMicros = Long.MAX_VALUE;
  private long lastMicros = Long.MIN_VALUE;
  private long lastReadingId;

  QifCount(QifJob from) {
    positions = new QifPositions(from.job().plan().positions());
    devices = new QifDevices(from.readings());
    pieces = new QifPieces(from.job().materialLot());
    from.capabilities().stream()
        .flatMap(each -> each.issues().stream())
        .forEach(issue -> wanted.addAll(issue.readingIds()));
    for (Iterator<QifReading> all = from.readings().all(); all.hasNext(); ) {
      take(all.next());
    }
    pieces.end();
    positionOf = gathered.toByteArray();
  }

  private void take(QifReading each) {
    Reading reading = each.reading();
    int ordinal = gathered.size();
    int position = positions.number(reading.position());
    gathered.write(position);
    unlisted.set(ordinal, reading.radius().flat() || !each.ofProduct());
    if (each.excluded()) {
      exclusions.set(ordinal);
      reasons.put(ordinal, each.excludedReason());
    }
    if (wanted.contains(reading.id())) {
      ordinals.put(reading.id(), ordinal);
    }
    devices.number(reading);
    pieces.take(each, position);
    firstMicros = Math.min(firstMicros, reading.wallMicros());
    lastMicros = Math.max(lastMicros, reading.wallMicros());
    lastReadingId = reading.id();
  }

  QifPositions positions() {
    return positions;
  }

  QifDevices devices() {
    return devices;
  }

  QifPieces pieces() {
    return pieces;
  }

  int readings() {
    return positionOf.length;
  }

  long firstMicros() {
    return firstMicros;
  }

  long lastMicros() {
    return lastMicros;
  }

  /** 0 without readings. */
  long lastReadingId() {
    return lastReadingId;
  }

  /** Whether the reading is in the statistics' list: of a product, and with a radius. */
  private boolean listed(int ordinal, int position) {
    return Byte.toUnsignedInt(positionOf[ordinal]) == position && !unlisted.get(ordinal);
  }

  /** Takes ordinals of listed readings, excluded ones among them. */
  interface OrdinalTaker {
    void take(int ordinal);
  }

  void forEachAt(int position, OrdinalTaker taker) {
    for (int i = 0; i < positionOf.length; i++) {
      if (listed(i, position)) {
        taker.take(i);
      }
    }
  }

  long countAt(int position) {
    long[] count = {0};
    forEachAt(position, ordinal -> count[0]++);
    return count[0];
  }

  /** Reasons by ordinal of the excluded readings at a position. */
  Map<Integer, String> excludedAt(int position) {
    Map<Integer, String> at = new LinkedHashMap<>();
    reasons.forEach(
        (ordinal, reason) -> {
          if (listed(ordinal, position)) {
            at.put(ordinal, reason);
          }
        });
    return at;
  }

  /** Ordinals of those readings that are in the document. */
  List<Integer> ordinals(List<Long> readingIds) {
    List<Integer> found = new ArrayList<>();
    for (long id : readingIds) {
      Integer ordinal = ordinals.get(id);
      if (ordinal != null) {
        found.add(ordinal);
      }
    }
    return found;
  }
}
