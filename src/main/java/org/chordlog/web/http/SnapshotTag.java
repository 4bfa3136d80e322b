package org.chordlog.web.http;

import io.javalin.http.Context;

/**
 * The ETag of a snapshot: by what it shows, and by the run of the service. What a caller has from
 * an earlier run is not known: since then the program may have become a newer one, or the records
 * those of a backup with the same ids.
 */
public final class SnapshotTag {
  private static final String RUN = "chordlog.run";

  private SnapshotTag() {}

  /** The run of the service in which this request came: differs after each start. */
  public static void inRun(Context ctx, String run) {
    ctx.attribute(RUN, run);
  }

  static void unlessKnown(Context ctx, String tag) {
    String etag = "\"" + tag + "." + ctx.attribute(RUN) + "\"";
    ctx.header("ETag", etag);
    String known = ctx.header("If-None-Match");
    if (known != null && known.contains(etag)) {
      throw new NotModified();
    }
  }
}
