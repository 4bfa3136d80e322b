package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.chordlog.harness.DamagedServices.Outcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of {@link DamagedServices}. */
final class DamagedServicesIT {
  @TempDir Path folder;

  @Test
  void damageOfAKilledServiceIsSaidOrEveryAnswerIsEqual() throws Exception {
    try (DamagedServices services = new DamagedServices(folder.resolve("damaged"), 17)) {
      services.judge(3, false, Damage::flip);
      assertEquals(List.of(), services.unsaid);
      services.counts.clear();
      services.judge(2, false, Damage::cut);
      assertEquals(Map.of(Outcome.SAID_BY_HEALTH, 2), services.counts);
      services.judge(3, true, Damage::edit);
      assertEquals(List.of(), services.unsaid);
    }
  }
}
