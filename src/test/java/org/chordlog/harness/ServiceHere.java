package org.chordlog.harness;

import java.net.URI;
import org.chordlog.cli.service.Service;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationKeeper;
import org.chordlog.store.StoreSettings;
import org.chordlog.web.http.WebSettings;

/** The service as {@code serve} composes it, in this process: a start costs a fifth. */
final class ServiceHere implements Serving {
  private final Service service;

  ServiceHere(Rig rig) throws NotStarted {
    try {
      service = started(rig);
    } catch (RuntimeException e) {
      throw new NotStarted(String.valueOf(e.getMessage()), e);
    }
  }

  private static Service started(Rig rig) {
    return Service.start(
        rig.data(),
        StoreSettings.USUAL,
        StationFile.read(rig.config()),
        WebSettings.onLoopback(0),
        StationKeeper.forThisRun());
  }

  @Override
  public URI address() {
    return URI.create("http://127.0.0.1:" + service.port() + "/");
  }

  @Override
  public void close() {
    service.close();
  }
}
