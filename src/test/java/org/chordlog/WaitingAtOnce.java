package org.chordlog;

import org.junit.platform.engine.ConfigurationParameters;
import org.junit.platform.engine.support.hierarchical.ParallelExecutionConfiguration;
import org.junit.platform.engine.support.hierarchical.ParallelExecutionConfigurationStrategy;

/**
 * How many tests of a class that wait for devices run at once: a few, and one after the other where
 * the machine is busy already, since the threads of each then want to run all the time.
 */
public final class WaitingAtOnce implements ParallelExecutionConfigurationStrategy {
  private static final int AT_ONCE = 4;
  private static final int BUSY = 5;

  @Override
  public ParallelExecutionConfiguration createConfiguration(ConfigurationParameters parameters) {
    return new Threads(Patience.load() < BUSY ? AT_ONCE : 1);
  }

  private record Threads(int count) implements ParallelExecutionConfiguration {
    @Override
    public int getParallelism() {
      return count;
    }

    @Override
    public int getMinimumRunnable() {
      return count;
    }

    @Override
    public int getMaxPoolSize() {
      return 256 + count;
    }

    @Override
    public int getCorePoolSize() {
      return count;
    }

    @Override
    public int getKeepAliveSeconds() {
      return 30;
    }
  }
}
