package org.chordlog.station;

import org.chordlog.store.Store;

/** What all stations of a service share. */
record StationContext(
    Store store, StationClock clock, Announcer announcer, IncidentLog incidents) {}
