package org.chordlog.store;

import java.util.List;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Roller;
import org.chordlog.measure.RollerScale;

/** What is known about the machines; append-only. */
public interface Machines {
  /** Stores a scale under a new id; from now on it is in force for its machine and name. */
  RollerScale add(RollerScale scale);

  /** Stores a roller of a machine, in place of any other of that name. */
  void add(String machine, Roller roller, Recorded by);

  /** Records that a machine has no roller of that name any more. */
  void removeRoller(String machine, String name, Recorded by);

  /** The rollers that a section runs over on a machine, in the order in which they were added. */
  List<Roller> rollers(String machine);

  /** The scales in force on a machine, by name. */
  List<RollerScale> scales(String machine);

  /** Every scale that was ever in force on a machine, by id. */
  List<RollerScale> scaleHistory(String machine);
}
