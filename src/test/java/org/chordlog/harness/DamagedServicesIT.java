package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of {@link DamagedServices}; one of each kind with processes. */
final class DamagedServicesIT {
  @TempDir Path folder;

  @Test
  void damageOfAKilledServiceIsSaidOrEveryAnswerIsEqual() throws Exception {
    try (DamagedServices services = new DamagedServices(folder.resolve("damaged"), 17)) {
      services.judge(1, false, Damage::flip);
      services.judgeHere(2, false, Damage::flip);
      services.judge(1, false, Damage::cut);
      services.judgeHere(1, false, Damage::cut);
      services.judge(1, true, Damage::edit);
      services.judgeHere(2, true, Damage::edit);
      assertEquals(List.of(), services.unsaid);
    }
  }
}
