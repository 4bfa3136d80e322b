package org.chordlog.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rows are parted by |, cells by commas; the rows that sum up others by their index. */
final class CsvSummaryTest {
  private static Set<Integer> among(String text) {
    List<List<String>> rows =
        Arrays.stream(text.split("\\|", -1)).map(row -> List.of(row.split(",", -1))).toList();
    return CsvSummary.among(rows);
  }

  private static Set<Integer> indices(String text) {
    return text.isEmpty()
        ? Set.of()
        : Arrays.stream(text.split(" ", -1))
            .map(Integer::valueOf)
            .collect(Collectors.toCollection(TreeSet::new));
  }

  @ParameterizedTest
  @CsvSource({
    "'1,5|2,6|Average,5.5', 2",
    "'1,5|2,6|Average:,5.5|Std. Dev,0.7|Min,5|Max,6', 2 3 4 5",
    "'P1,5|P2,6|Min,5|Max,6|Mean,5.5', 2 3 4",
    "'1,5|2,6|Max,6', 2",
    "'1,5|2,6|Std,0.7', 2",
    "'1,5|2,6|Mittelwert,5.5', 2",
    "'1,5|2,6|Écart-type,0.7', 2",
    "'A1,5|A2,6|Cp,1.4|Cpk,1.2', 2 3",
    "'1,5|2,6|total,11|3,7|4,8|Total,15', 2 5",
    "'1,left,5|2,left,6|,Mean,5.5', 2",
    "'1,5|2,6|3,7|,6', 3",
    "'1,a,5|2,b,6|3,c,7|,,6|,,0.1', 3 4",
    "'Ann,1,5|Ann,2,6|Max,1,5|Max,2,6|Average,,5.5', 4"
  })
  void whatSumsUpOthersIsFound(String rows, String summaries) {
    assertEquals(indices(summaries), among(rows));
  }

  /** People, pieces and styles of files that are no summaries. */
  @ParameterizedTest
  @CsvSource({
    "'Max,1,5|Max,2,6|Ann,1,5|Ann,2,6'",
    "'CP,1,5|CP,2,6|Ann,1,5|Ann,2,6'",
    "'Std,1,5|Std,2,6|M2,1,5|M2,2,6'",
    "'Total-1,5|Total-2,6'",
    "'1,5|,6|2,7|,8'",
    "'1,5|,6|,7'",
    "'1,5,,|2,6,,|3,7,,|,,12.4,12.5'",
    "'1,5|2,6|middle,7'",
    "'Mean,5|Std dev,2'",
    "'1,5|2,6|3,n/a'"
  })
  void othersAreData(String rows) {
    assertEquals(Set.of(), among(rows));
  }

  /** Many rows that begin with such a word are looked at once, not once for each of them. */
  @Test
  void aLongFileOfSomebodyCalledMaxIsReadAtOnce() {
    List<String> row = List.of("Max", "5");
    List<List<String>> rows = new ArrayList<>(Collections.nCopies(100_000, row));
    Collections.fill(rows.subList(0, 50_000), List.of("Ann", "5"));
    assertTimeoutPreemptively(
        Duration.ofSeconds(20), () -> assertEquals(Set.of(), CsvSummary.among(rows)));
  }
}
