package org.chordlog.store;

import java.util.List;
import org.chordlog.measure.MachineScale;

/** What is known about the machines; append-only. */
public interface Machines {
  /** Stores a scale under a new id; from now on it is in force for its machine and name. */
  MachineScale add(MachineScale scale);

  /** The scales in force on a machine, by name. */
  List<MachineScale> scales(String machine);

  /** Every scale that was ever in force on a machine, by id. */
  List<MachineScale> scaleHistory(String machine);
}
