package org.chordlog.cli.service;

import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxy;
import ch.qos.logback.core.UnsynchronizedAppenderBase;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.chordlog.cli.common.ExitCode;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Ends the program where memory is used up in one of its threads, also where the JVM's own option
 * for that was left out: it would go on without that thread, and nobody would know. Sees what ends
 * a thread, and what is caught and logged. Any thread; what it needs is made before.
 */
final class OutOfMemory extends UnsynchronizedAppenderBase<ILoggingEvent> {
  private static final Logger LOG = LoggerFactory.getLogger(OutOfMemory.class);
  private static final int DEEPEST_CAUSE = 20;
  private static final FileOutputStream ERR = new FileOutputStream(FileDescriptor.err);
  private static final byte[] LAST_WORDS =
      ("Memory is used up: Chordlog ends, with exit code "
              + ExitCode.OUT_OF_MEMORY
              + ". Start java with a larger -Xmx (192m is usual).\n")
          .getBytes(StandardCharsets.UTF_8);

  private OutOfMemory() {}

  /** From now on, for the whole process. */
  static void endsTheProgram() {
    OutOfMemory watch = new OutOfMemory();
    LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
    watch.setContext(context);
    watch.start();
    context.getLogger(Logger.ROOT_LOGGER_NAME).addAppender(watch);
    Thread.setDefaultUncaughtExceptionHandler(OutOfMemory::ended);
  }

  private static void ended(Thread thread, Throwable e) {
    endIfUsedUp(e);
    LOG.atError().addKeyValue("thread", thread.getName()).setCause(e).log("a thread has stopped");
  }

  @Override
  protected void append(ILoggingEvent event) {
    if (event.getThrowableProxy() instanceof ThrowableProxy logged) {
      endIfUsedUp(logged.getThrowable());
    }
  }

  private static void endIfUsedUp(Throwable e) {
    @Nullable Throwable each = e;
    for (int depth = 0; each != null && depth < DEEPEST_CAUSE; depth++) {
      if (each instanceof OutOfMemoryError && !isOfThreads(each)) {
        end();
      }
      each = each.getCause();
    }
  }

  /** No new thread could be made: those that there are go on. */
  private static boolean isOfThreads(Throwable e) {
    String message = e.getMessage();
    return message != null && message.contains("native thread");
  }

  private static void end() {
    try {
      ERR.write(LAST_WORDS);
    } catch (IOException e) {
      // nobody reads it
    } finally {
      Runtime.getRuntime().halt(ExitCode.OUT_OF_MEMORY);
    }
  }
}
