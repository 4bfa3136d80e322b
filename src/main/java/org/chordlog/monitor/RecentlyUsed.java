package org.chordlog.monitor;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A bounded number of values by their keys; those not used for longest are released. Any thread may
 * call; values are released by the caller's thread, outside the lock.
 */
public final class RecentlyUsed<K, V> {
  private final int most;
  private final Consumer<V> release;
  private final Map<K, V> held = new LinkedHashMap<>(16, 0.75f, true);

  public RecentlyUsed(int most, Consumer<V> release) {
    this.most = most;
    this.release = release;
  }

  /** Found, or made by {@code maker} within the lock. */
  public V get(K key, Function<K, V> maker) {
    List<V> released = new ArrayList<>();
    V found;
    synchronized (held) {
      found = held.computeIfAbsent(key, maker);
      var eldest = held.values().iterator();
      while (held.size() > most) {
        released.add(eldest.next());
        eldest.remove();
      }
    }
    released.forEach(release);
    return found;
  }

  /** The same, made outside the lock: by each of several threads that ask for it at once. */
  V getMadeOutside(K key, Function<K, V> maker) {
    @Nullable V found;
    synchronized (held) {
      found = held.get(key);
    }
    if (found != null) {
      return found;
    }
    V made = maker.apply(key);
    return get(key, any -> made);
  }

  int size() {
    synchronized (held) {
      return held.size();
    }
  }

  /** Those held now. */
  public List<V> values() {
    synchronized (held) {
      return List.copyOf(held.values());
    }
  }

  public void releaseAll() {
    synchronized (held) {
      held.values().forEach(release);
      held.clear();
    }
  }
}
