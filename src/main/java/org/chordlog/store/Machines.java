package org.chordlog.store;

import java.util.List;
import org.chordlog.measure.RollerScale;

/** What is known about the machines; append-only. */
public interface Machines {
  /** Stores a scale under a new id; from now on it is in force for its machine and name. */
  RollerScale add(RollerScale scale);

  /** The scales in force on a machine, by name. */
  List<RollerScale> scales(String machine);

  /** Every scale that was ever in force on a machine, by id. */
  List<RollerScale> scaleHistory(String machine);
}
