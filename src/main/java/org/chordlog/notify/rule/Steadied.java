package org.chordlog.notify.rule;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;

/**
 * Holds back what has not lasted, or has not been over, for long enough. One thread. What it
 * remembers is lost at a restart: a delay then begins anew, as it does where the clock is set back.
 */
public final class Steadied {
  private final Map<AlertKey, Long> soSince = new HashMap<>();
  private final Map<AlertKey, Long> goneSince = new HashMap<>();

  /** What is to be raised or confirmed, and which alerts are to end. */
  public record Result(List<Found> appeared, List<Alert> gone) {}

  /** {@code judged}: kinds that were looked for just now; others stay as they are. */
  public Result take(
      Set<AlertKind> judged, Collection<Found> found, Collection<Alert> open, long atMicros) {
    Set<AlertKey> so = found.stream().map(Found::key).collect(Collectors.toSet());
    soSince.keySet().removeIf(key -> judged.contains(key.kind()) && !so.contains(key));
    goneSince.keySet().removeAll(so);
    List<Found> appeared = found.stream().filter(each -> longEnough(each, atMicros)).toList();
    List<Alert> gone =
        open.stream()
            .filter(each -> judged.contains(each.kind()) && !so.contains(each.key()))
            .filter(each -> goneLongEnough(each, atMicros))
            .toList();
    forgetOver(open);
    return new Result(appeared, gone);
  }

  private boolean longEnough(Found found, long atMicros) {
    long since = soSince.merge(found.key(), atMicros, Math::min);
    return atMicros - since >= Delays.onMicros(found.key().kind());
  }

  private boolean goneLongEnough(Alert alert, long atMicros) {
    long since = goneSince.merge(alert.key(), atMicros, Math::min);
    return atMicros - since >= Delays.offMicros(alert);
  }

  private void forgetOver(Collection<Alert> open) {
    Set<AlertKey> known = new HashSet<>();
    open.forEach(each -> known.add(each.key()));
    goneSince.keySet().retainAll(known);
  }
}
