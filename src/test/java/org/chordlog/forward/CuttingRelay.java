package org.chordlog.forward;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;

/**
 * Passes TCP connections on to a server on this computer, until it is told to fail: to cut after so
 * many bytes, to lose the answer to a COMMIT, to stand still, to be slow, to refuse.
 */
public final class CuttingRelay implements AutoCloseable {
  private static final byte[] COMMIT = "COMMIT".getBytes(StandardCharsets.US_ASCII);
  private static final long NANOS = 1_000_000_000L;
  private static final long NEVER = Long.MAX_VALUE;

  private final ServerSocket listening;
  private final List<Socket> open = new CopyOnWriteArrayList<>();
  private final AtomicLong untilCut = new AtomicLong(NEVER);
  private final AtomicInteger commitsUntilLost = new AtomicInteger(-1);
  private final AtomicInteger cuts = new AtomicInteger();
  private final AtomicLong passed = new AtomicLong();
  private volatile int target;
  private volatile boolean refusing;
  private volatile boolean standing;
  private volatile long bytesASecond;

  public CuttingRelay(int target) throws IOException {
    this.target = target;
    this.listening = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    start(this::accept);
  }

  private static void start(Runnable task) {
    Thread thread = new Thread(task, "relay");
    thread.setDaemon(true);
    thread.start();
  }

  public int port() {
    return listening.getLocalPort();
  }

  /** Of connections that are made from now on. */
  void target(int port) {
    target = port;
  }

  /** Cuts the connection that sends the last of so many bytes to the server, once. */
  void cutAfter(long bytes) {
    untilCut.set(bytes);
  }

  /** The server gets that COMMIT (1: the next) and does it; its answer is lost. */
  void loseAnswerToCommit(int which) {
    commitsUntilLost.set(which);
  }

  /** Nothing goes either way while that is so, and nobody is told. */
  public synchronized void stand(boolean still) {
    standing = still;
    notifyAll();
  }

  /** 0: as fast as it can. */
  void slow(long bytes) {
    bytesASecond = bytes;
  }

  /** No connection is made while that is so; those that there are end. */
  void refuse(boolean all) {
    refusing = all;
    if (all) {
      cut();
    }
  }

  void cut() {
    for (Socket each : open) {
      close(each);
    }
    open.clear();
  }

  /** How often it cut as it was told to. */
  int cuts() {
    return cuts.get();
  }

  /** Bytes to the server. */
  long passed() {
    return passed.get();
  }

  private void accept() {
    while (!listening.isClosed()) {
      try {
        Socket client = listening.accept();
        if (refusing) {
          close(client);
        } else {
          connect(client);
        }
      } catch (IOException e) {
        // closed, or the server is not there: the client is told by a cut
      }
    }
  }

  private void connect(Socket client) throws IOException {
    Socket server;
    try {
      server = new Socket(InetAddress.getLoopbackAddress(), target);
    } catch (IOException e) {
      close(client);
      throw e;
    }
    open.add(client);
    open.add(server);
    AtomicInteger losing = new AtomicInteger();
    start(() -> pass(client, server, true, losing));
    start(() -> pass(server, client, false, losing));
  }

  private void pass(Socket from, Socket to, boolean toServer, AtomicInteger losing) {
    byte[] buffer = new byte[16_384];
    try (from;
        to) {
      InputStream in = from.getInputStream();
      OutputStream out = to.getOutputStream();
      int count = in.read(buffer);
      while (count >= 0) {
        hold(count);
        if (!toServer && losing.get() > 0) {
          cuts.incrementAndGet();
          return;
        }
        int whole = toServer ? allowed(count) : count;
        if (toServer && contains(buffer, count) && commitsUntilLost.decrementAndGet() == 0) {
          losing.set(1);
        }
        out.write(buffer, 0, whole);
        out.flush();
        passed.addAndGet(toServer ? whole : 0);
        if (whole < count) {
          cuts.incrementAndGet();
          return;
        }
        count = in.read(buffer);
      }
    } catch (IOException e) {
      return; // the other end is told by the closing
    }
  }

  /** How many of them go to the server before the cut. */
  private int allowed(int count) {
    long left = untilCut.get();
    if (left == NEVER) {
      return count;
    }
    if (left < count) {
      untilCut.set(NEVER);
      return (int) left;
    }
    untilCut.addAndGet(-count);
    return count;
  }

  /** Until it no longer stands still or is closed, then as long as the bytes take when slow. */
  private void hold(int count) {
    awaitMoving();
    long speed = bytesASecond;
    long until = System.nanoTime() + (speed > 0 ? NANOS * count / speed : 0);
    for (long left = until - System.nanoTime(); left > 0; left = until - System.nanoTime()) {
      LockSupport.parkNanos(left);
    }
  }

  private synchronized void awaitMoving() {
    try {
      while (standing && !listening.isClosed()) {
        wait();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static boolean contains(byte[] buffer, int count) {
    for (int i = 0; i + COMMIT.length <= count; i++) {
      int same = 0;
      while (same < COMMIT.length && buffer[i + same] == COMMIT[same]) {
        same++;
      }
      if (same == COMMIT.length) {
        return true;
      }
    }
    return false;
  }

  private static void close(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      return;
    }
  }

  @Override
  public void close() throws IOException {
    listening.close();
    stand(false);
    cut();
  }
}
