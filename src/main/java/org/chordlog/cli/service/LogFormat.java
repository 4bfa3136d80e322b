package org.chordlog.cli.service;

import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.JsonEncoder;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.Appender;
import ch.qos.logback.core.OutputStreamAppender;
import java.util.Iterator;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** How a log line is written. */
enum LogFormat {
  /** Time, level, place, sentence, and the values as {@code key="value"}. */
  TEXT,
  /** One JSON object a line, the values under {@code kvpList}. */
  JSON;

  /** For all lines from now on. */
  void use() {
    LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
    Iterator<Appender<ILoggingEvent>> appenders =
        context.getLogger(Logger.ROOT_LOGGER_NAME).iteratorForAppenders();
    while (this == JSON && appenders.hasNext()) {
      if (appenders.next() instanceof OutputStreamAppender<ILoggingEvent> stream) {
        stream.setEncoder(json(context));
      }
    }
  }

  private static JsonEncoder json(LoggerContext context) {
    JsonEncoder encoder = new JsonEncoder();
    encoder.setContext(context);
    encoder.setWithSequenceNumber(false);
    encoder.setWithNanoseconds(false);
    encoder.setWithContext(false);
    encoder.setWithMDC(false);
    encoder.setWithMessage(false);
    encoder.setWithArguments(false);
    encoder.setWithFormattedMessage(true);
    encoder.start();
    return encoder;
  }
}
