package org.chordlog.web.tls;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.chordlog.measure.BadInput;
import org.chordlog.timer.TimedWork;
import org.chordlog.web.http.TlsFiles;
import org.eclipse.jetty.util.component.AbstractLifeCycle;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.eclipse.jetty.util.thread.Scheduler;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The certificate and key that the port uses. Files that change while the service runs are read
 * again once they have been at rest for a look; what can't be used leaves the old ones in use and
 * is said. Connections that are open go on. {@code seen} belongs to the scheduler's thread.
 */
public final class Certificates extends AbstractLifeCycle {
  private static final Logger LOG = LoggerFactory.getLogger(Certificates.class);

  /** Both files by when and how large they were written. */
  private record Stamp(String certificate, String key) {}

  private final TlsFiles files;
  private final Scheduler scheduler;
  private final SslContextFactory.Server factory = new SslContextFactory.Server();
  private volatile TlsIdentity used;
  private volatile String problem = "";
  private Stamp tried;
  private Stamp seen;
  private Scheduler.Task next = () -> true;

  /** Refused by the name of the setting where the files can't be used. */
  public Certificates(TlsFiles files, Scheduler scheduler) {
    this.files = files;
    this.scheduler = scheduler;
    tried = stamp();
    seen = tried;
    used = TlsIdentity.read(files);
    factory.setIncludeProtocols("TLSv1.3", "TLSv1.2");
    factory.setRenegotiationAllowed(false);
    use(factory);
    warnOfReaders();
  }

  private void use(SslContextFactory of) {
    of.setKeyStore(used.keyStore());
    of.setKeyStorePassword("");
  }

  private void warnOfReaders() {
    try {
      boolean open =
          Files.getPosixFilePermissions(files.key()).stream()
              .anyMatch(each -> each.name().startsWith("OTHERS"));
      if (open) {
        LOG.atWarn()
            .addKeyValue("file", files.key())
            .log("every user of this computer can read the key; chmod 640 mends it");
      }
    } catch (IOException | UnsupportedOperationException e) {
      // a system without such permissions
    }
  }

  public SslContextFactory.Server factory() {
    return factory;
  }

  public TlsState state() {
    return new TlsState(used.notAfter(), problem);
  }

  /** Names of hosts in the certificate in use. */
  public Set<String> names() {
    return used.names();
  }

  byte[] leaf() throws java.security.cert.CertificateEncodingException {
    return used.leaf().getEncoded();
  }

  @Override
  protected void doStart() {
    lookLater();
  }

  private void lookLater() {
    long millis = files.look().toMillis();
    next = scheduler.schedule(TimedWork.of(this::look), millis, TimeUnit.MILLISECONDS);
  }

  @Override
  protected void doStop() {
    boolean unused = next.cancel();
  }

  private void look() {
    try {
      Stamp now = stamp();
      if (now.equals(seen) && !now.equals(tried)) {
        tried = now;
        renew();
      }
      seen = now;
    } catch (RuntimeException e) {
      LOG.atWarn().setCause(e).log("the files of the certificate were not looked at");
    } finally {
      if (isRunning()) {
        lookLater();
      }
    }
  }

  private void renew() {
    TlsIdentity before = used;
    try {
      TlsIdentity fresh = TlsIdentity.read(files);
      refuseExpired(fresh, before);
      used = fresh;
      factory.reload(this::use);
      problem = "";
      LOG.atInfo().addKeyValue("validUntil", fresh.notAfter()).log("a new certificate is in use");
    } catch (Exception e) {
      used = before;
      problem = String.valueOf(e.getMessage());
      LOG.atError()
          .addKeyValue("problem", problem)
          .addKeyValue("oldValidUntil", before.notAfter())
          .log("the new certificate can't be used; the old one stays in use");
    }
  }

  private void refuseExpired(TlsIdentity fresh, TlsIdentity before) {
    Instant now = Instant.now();
    if (fresh.notAfter().isBefore(now) && before.notAfter().isAfter(now)) {
      throw new BadInput(
          TlsFiles.CERTIFICATE,
          files.certificate(),
          "expired at " + fresh.notAfter(),
          "a certificate that is valid now");
    }
  }

  private Stamp stamp() {
    return new Stamp(stamp(files.certificate()), stamp(files.key()));
  }

  private static String stamp(Path file) {
    try {
      Path real = file.toRealPath();
      return real + " " + Files.getLastModifiedTime(real) + " " + Files.size(real);
    } catch (IOException e) {
      return "";
    }
  }
}
