package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.chordlog.harness.DamagedServices.Where;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of {@link DamagedServices}; one of each kind with processes. */
final class DamagedServicesIT {
  @TempDir Path folder;

  @Test
  void damageOfAKilledServiceIsSaidOrEveryAnswerIsEqual() throws Exception {
    try (DamagedServices services = new DamagedServices(folder.resolve("damaged"), 17)) {
      services.judge(1, Where.PROCESSES, false, Damage::flip);
      services.judge(2, Where.HERE, false, Damage::flip);
      services.judge(1, Where.PROCESSES, false, Damage::cut);
      services.judge(1, Where.HERE, false, Damage::cut);
      services.judge(1, Where.PROCESSES, true, Damage::edit);
      services.judge(2, Where.HERE, true, Damage::edit);
      assertEquals(List.of(), services.unsaid);
    }
  }
}
