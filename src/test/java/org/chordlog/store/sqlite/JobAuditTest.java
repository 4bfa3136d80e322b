package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The row of a job changes with the job, so the chain of hashes leaves it out; it has to be as the
 * newest change says that is recorded of it, which is in the chain.
 */
final class JobAuditTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "name = name || '.'",
        "part = 'another'",
        "machine = machine || '.'",
        "station = 'another'",
        "material_lot = material_lot || '.'",
        "measured_face = 'INNER'",
        "state = 'CLOSED'",
        "opened_micros = opened_micros + 1",
        "customer = 'somebody'",
        "search_text = search_text || '.'",
        "specification = json_replace(specification, '$.targetMm', 1 + (specification -> '$.targetMm'))"
      })
  void whatAJobIsWithoutARecordedChangeIsNamed(String edit) throws Exception {
    Sealed sealed = Sealed.in(folder.resolve("data"));
    assertEquals(List.of(), new SqliteFiles(sealed.directory()).audit());
    sealed.edit("UPDATE job SET " + edit + " WHERE id = 1");
    List<String> faults = new SqliteFiles(sealed.directory()).audit();
    assertTrue(faults.stream().anyMatch(each -> each.startsWith("job 1: ")), faults::toString);
  }
}
