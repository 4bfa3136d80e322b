package org.chordlog.stats.control;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Consumer;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** The spells of one kind of evidence (level or spread): the one that goes on, and those before. */
final class SpellLog {
  private final Deque<Spell> closed = new ArrayDeque<>();
  private @Nullable Spell open;
  private long closedCount;
  private long heldUntil;

  /** Evidence at a point; {@code held}: the count of points up to which the call remains. */
  void add(Spell found, long held) {
    if (open != null && open.side() != found.side()) {
      close();
    }
    open = open == null ? found : open.with(found.kind(), found.newest(), found.chance());
    heldUntil = Math.max(heldUntil, held);
  }

  /** Closes what is no longer held at that count of points. */
  void passed(long points) {
    if (points > heldUntil) {
      close();
    }
  }

  void close() {
    if (open != null) {
      record(open);
    }
    open = null;
  }

  /** One that was found after it ended. */
  void record(Spell ended) {
    closed.addLast(ended);
    closedCount++;
    if (closed.size() > ControlVerdict.KEPT) {
      closed.removeFirst();
    }
  }

  void startPhase() {
    close();
    heldUntil = 0;
  }

  @Nullable Spell open() {
    return open;
  }

  long closedCount() {
    return closedCount;
  }

  void forEachClosed(Consumer<Spell> use) {
    closed.forEach(use);
  }

  void pack(Packer packer) {
    packer.put(closedCount).put(heldUntil).put(closed.size());
    closed.forEach(spell -> spell.pack(packer));
    packer.put(open != null);
    if (open != null) {
      open.pack(packer);
    }
  }

  void unpack(Unpacker from) {
    closedCount = from.aLong();
    heldUntil = from.aLong();
    int count = from.anInt();
    for (int i = 0; i < count; i++) {
      closed.addLast(Spell.unpack(from));
    }
    open = from.aBoolean() ? Spell.unpack(from) : null;
  }
}
