package org.chordlog.web;

/** What the routes need of the stations. */
interface StationDesk {
  boolean knows(String station);
}
