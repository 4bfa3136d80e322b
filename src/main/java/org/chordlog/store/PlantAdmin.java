package org.chordlog.store;

/**
 * Sets up the database of a plant, by somebody who may create schemas and roles there. {@link
 * org.chordlog.measure.BadInput} for names that can't be used; {@link StoreException} where the
 * database can't be reached or does not allow it.
 */
public interface PlantAdmin {
  /** Creates schema and roles, or brings them up to date; the version that is there now. */
  int create();

  /**
   * Makes a login for a workshop computer: the first database that uses it owns it from then on.
   * The login's name.
   */
  String addEdge(String name, String site, String password);

  /** Makes a login that looks at all edges, for the pages of the plant; the login's name. */
  String addReader(String name, String password);
}
