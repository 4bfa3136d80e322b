package org.chordlog.stats;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.math.MeanInterval;
import org.chordlog.stats.math.Moments;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * Compares positions within pieces, piece by piece, so that what differs between pieces drops out.
 */
final class PositionTally {
  private static final double ERROR = 0.05;
  private final Map<String, Moments> values = new LinkedHashMap<>();
  private final Map<String, Moments> differences = new LinkedHashMap<>();
  private final Map<String, Moments> openPiece = new LinkedHashMap<>();
  private int piece;

  void add(Observation seen) {
    if (seen.piece() != piece) {
      closePiece();
      piece = seen.piece();
    }
    values.computeIfAbsent(seen.position(), any -> new Moments()).add(seen.value());
    openPiece.computeIfAbsent(seen.position(), any -> new Moments()).add(seen.value());
  }

  private void closePiece() {
    if (openPiece.size() > 1) {
      double mean = openPiece.values().stream().mapToDouble(Moments::mean).sum() / openPiece.size();
      openPiece.forEach(
          (position, own) ->
              differences.computeIfAbsent(position, any -> new Moments()).add(own.mean() - mean));
    }
    openPiece.clear();
  }

  List<PositionEffect> effects() {
    if (differences.size() < 2) {
      return List.of();
    }
    List<PositionEffect> effects = new ArrayList<>();
    differences.forEach((position, own) -> effects.add(effect(position, own)));
    return effects;
  }

  private PositionEffect effect(String position, Moments own) {
    Moments all = values.getOrDefault(position, new Moments());
    double half = MeanInterval.half(own, ERROR);
    boolean differs = Math.abs(own.mean()) > MeanInterval.half(own, ERROR / differences.size());
    return new PositionEffect(
        position,
        own.n(),
        all.mean(),
        all.deviation(),
        own.mean(),
        own.mean() - half,
        own.mean() + half,
        differs);
  }

  void pack(Packer packer) {
    packer.put(piece);
    List.of(values, differences, openPiece).forEach(map -> pack(map, packer));
  }

  void unpack(Unpacker from) {
    piece = from.anInt();
    List.of(values, differences, openPiece).forEach(map -> unpack(map, from));
  }

  private static void pack(Map<String, Moments> map, Packer packer) {
    packer.put(map.size());
    map.forEach((position, moments) -> moments.pack(packer.put(position)));
  }

  private static void unpack(Map<String, Moments> map, Unpacker from) {
    int count = from.anInt();
    for (int i = 0; i < count; i++) {
      String position = from.text();
      map.put(position, Moments.unpack(from));
    }
  }
}
