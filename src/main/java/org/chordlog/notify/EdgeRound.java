package org.chordlog.notify;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.rule.AlertRule;
import org.chordlog.notify.rule.EdgeFacts;
import org.chordlog.notify.rule.EdgeRule;
import org.chordlog.notify.rule.Found;
import org.chordlog.notify.rule.Steadied;
import org.chordlog.store.Plant;

/**
 * Looks at the workshop computers of a plant. Which history of each was told of is a cursor in the
 * store, moved in the commit of its alert. The watch's thread only.
 */
final class EdgeRound implements Round {
  private static final long LOST_MICROS = 60_000_000L;
  private static final long MILLI_TO_SECOND = 1_000_000L;

  private final WatchedPlant watched;
  private final AlertBook book;
  private final long quietMicros;
  private final Steadied delays = new Steadied();
  private final Map<String, Long> told = new HashMap<>();
  private long lastMicros;
  private long readSince;

  /** {@code quiet}: for so long after the plant could be read again nobody is called silent. */
  EdgeRound(WatchedPlant watched, AlertBook book, Duration quiet) {
    this.watched = watched;
    this.book = book;
    quietMicros = quiet.toNanos() / 1_000;
  }

  @Override
  public void run(long atMicros) {
    List<Plant.Edge> edges = watched.edges();
    List<Alert> open = book.alerts().open();
    readAgain(atMicros);
    List<EdgeFacts> facts = edges.stream().flatMap(each -> facts(each, open).stream()).toList();
    List<Found> found =
        facts.stream()
            .flatMap(
                each -> EdgeRule.found(each, watched.silent().toNanos() / 1_000, atMicros).stream())
            .toList();
    endRepairs(found, open, atMicros);
    Steadied.Result result = delays.take(EdgeRule.KINDS, found, open, atMicros);
    List<Found> appeared =
        result.appeared().stream().filter(each -> maySay(each, atMicros)).toList();
    book.tell(appeared, result.gone(), histories(edges, appeared), atMicros);
  }

  /**
   * After the plant was away, or another program watched, workshop computers that wait before they
   * try again are no news.
   */
  private void readAgain(long atMicros) {
    if (atMicros - lastMicros > LOST_MICROS) {
      readSince = atMicros;
      told.clear();
    }
    lastMicros = atMicros;
  }

  private boolean maySay(Found found, long atMicros) {
    return found.key().kind() != AlertKind.EDGE_SILENT || atMicros - readSince >= quietMicros;
  }

  private Optional<EdgeFacts> facts(Plant.Edge edge, List<Alert> open) {
    Plant.Delivered delivered = edge.delivered();
    return delivered == null
        ? Optional.empty()
        : Optional.of(
            new EdgeFacts(
                edge.name(),
                edge.site(),
                new EdgeFacts.Heard(
                    Math.max(delivered.seenMicros(), delivered.receivedMicros()),
                    delivered.backlogRows()),
                edge.versions().schema() - Plant.LAYOUT,
                edge.versions().program(),
                delivered.clockAheadMicros() / MILLI_TO_SECOND,
                began(edge, open)));
  }

  /** It goes on to be told until somebody has acknowledged it. */
  private EdgeFacts.Began began(Plant.Edge edge, List<Alert> open) {
    AlertKey key = AlertKey.edge(AlertKind.EDGE_BEGAN_ANEW, edge.name());
    boolean waits =
        open.stream()
            .filter(each -> each.key().equals(key))
            .map(Alert::state)
            .anyMatch(each -> each.waits() || each == AlertState.SHELVED);
    List<Plant.Branch> former = edge.formerly();
    if (former.isEmpty()) {
      return new EdgeFacts.Began(1, "", true);
    }
    boolean known = told(edge) >= edge.incarnation();
    String why = former.get(former.size() - 1).why();
    return new EdgeFacts.Began(edge.incarnation(), why, known && !waits);
  }

  private long told(Plant.Edge edge) {
    return told.computeIfAbsent(edge.id(), id -> book.alerts().cursor(name(id)));
  }

  private Map<String, Long> histories(List<Plant.Edge> edges, List<Found> appeared) {
    Set<String> names =
        appeared.stream()
            .filter(each -> each.key().kind() == AlertKind.EDGE_BEGAN_ANEW)
            .map(each -> each.key().subject().name())
            .collect(Collectors.toSet());
    Map<String, Long> cursors = new HashMap<>();
    for (Plant.Edge each : edges) {
      if (names.contains(each.name()) && told(each) < each.incarnation()) {
        cursors.put(name(each.id()), (long) each.incarnation());
        told.remove(each.id()); // read again: the commit may be left to the next round
      }
    }
    return cursors;
  }

  private static String name(String edgeId) {
    return "plant/" + edgeId + "/histories";
  }

  /** What is under repair, or closed for a while, is watched again as soon as it is well. */
  private void endRepairs(List<Found> found, List<Alert> open, long atMicros) {
    Set<AlertKey> so = found.stream().map(Found::key).collect(Collectors.toSet());
    List<Alert> ended = new ArrayList<>(open);
    ended.removeIf(
        each ->
            each.state() != AlertState.OUT_OF_SERVICE
                || !EdgeRule.KINDS.contains(each.kind())
                || so.contains(each.key()));
    for (Alert each : ended) {
      AlertRule.repaired(each, atMicros).ifPresent(event -> book.write(List.of(event), Map.of()));
    }
  }
}
