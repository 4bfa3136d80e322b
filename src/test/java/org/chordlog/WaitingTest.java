package org.chordlog;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * A test that mostly waits for devices in real time. It runs beside the others of its class that
 * are marked so, each with an instance, a folder and devices of its own: they share nothing that
 * changes, and count nothing of the whole process.
 */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@Test
@Execution(ExecutionMode.CONCURRENT)
public @interface WaitingTest {}
