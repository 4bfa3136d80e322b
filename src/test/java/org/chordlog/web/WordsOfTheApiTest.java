package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.correction.Advice;
import org.chordlog.correction.Notice;
import org.chordlog.correction.closing.Arc;
import org.chordlog.decode.ModbusRegisters;
import org.chordlog.forward.ForwardState;
import org.chordlog.measure.Job;
import org.chordlog.measure.LengthUnit;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.notify.rule.AlertMove;
import org.chordlog.station.OpenQuestion;
import org.chordlog.station.StationStatus;
import org.chordlog.stats.AlongMeasure;
import org.chordlog.stats.ShortRun;
import org.chordlog.stats.capability.Caution;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.Signal;
import org.chordlog.stats.drift.DriftFinding;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.verdict.Tone;
import org.junit.jupiter.api.Test;

/** A page that gets a constant from the API can say it without words of its own. */
final class WordsOfTheApiTest {
  /**
   * Their words come with the answer in which they are, or a page acts by them and does not show
   * them. Who adds one says with that: no page needs words for it.
   */
  private static final List<Class<?>> SAID_WITH_THE_ANSWER =
      List.of(
          Advice.Action.class,
          AlertMove.class,
          AlertSubject.Type.class,
          AlongMeasure.class,
          Arc.Fixed.class,
          Caution.Kind.class,
          ChartKind.class,
          ClosingFeature.class,
          DriftFinding.Kind.class,
          ForwardState.class,
          Job.State.class,
          LengthUnit.class,
          MachineVerdict.State.class,
          ModbusRegisters.Table.class,
          Notice.Kind.class,
          OpenQuestion.Kind.class,
          Scope.class,
          ShortRun.Basis.class,
          Signal.Side.class,
          StationStatus.DelayOrigin.class,
          StationStatus.LinkState.class,
          Tone.class);

  /** Of the state of the service, by name in the document alone. */
  private static final Set<String> OF_THE_SERVICE = Set.of("Level");

  @Test
  void everyConstantOfTheApiHasItsWords() throws Exception {
    Collection<Map<String, String>> groups = WordsRoutes.all().values();
    Set<Set<String>> known =
        Stream.concat(
                groups.stream().map(Map::keySet),
                SAID_WITH_THE_ANSWER.stream().map(WordsOfTheApiTest::constants))
            .map(TreeSet::new)
            .collect(Collectors.toSet());
    Map<String, Set<String>> wordless = enums();
    wordless.values().removeIf(each -> known.stream().anyMatch(all -> all.containsAll(each)));
    wordless.keySet().removeAll(OF_THE_SERVICE);
    assertEquals(Map.of(), wordless);
  }

  @Test
  void roleAndRightAreSaidAsPeopleSayThem() {
    assertTrue(
        WordsRoutes.all().values().stream()
            .flatMap(group -> group.values().stream())
            .noneMatch(words -> words.contains("_")));
    assertEquals(
        "gauge keeper", Objects.requireNonNull(WordsRoutes.all().get("roles")).get("GAUGE_KEEPER"));
    assertEquals(
        "set up stations",
        Objects.requireNonNull(WordsRoutes.all().get("rights")).get("CONFIGURE"));
  }

  private static Set<String> constants(Class<?> of) {
    return Arrays.stream(of.getEnumConstants())
        .map(each -> ((Enum<?>) each).name())
        .collect(Collectors.toSet());
  }

  /** The enumerations of the API document, by its name for them. */
  private static Map<String, Set<String>> enums() throws Exception {
    Path document = Path.of("src/test/resources/golden/openapi.json");
    JsonNode schemas =
        new ObjectMapper().readTree(document.toFile()).path("components").path("schemas");
    Map<String, Set<String>> enums = new TreeMap<>();
    for (Map.Entry<String, JsonNode> each : schemas.properties()) {
      Set<String> constants = new TreeSet<>();
      each.getValue().path("enum").forEach(constant -> constants.add(constant.asText()));
      if (!constants.isEmpty()) {
        enums.put(each.getKey(), constants);
      }
    }
    assertTrue(enums.size() > 40, enums.keySet().toString());
    return enums;
  }
}
