package dawnkettle.schedule;

import java.time.Duration;
import java.util.Properties;
import org.quartz.DisallowConcurrentExecution;
import org.quartz.Job;
import org.quartz.JobBuilder;
import org.quartz.JobExecutionContext;
import org.quartz.JobExecutionException;
import org.quartz.Scheduler;
import org.quartz.SchedulerException;
import org.quartz.SimpleScheduleBuilder;
import org.quartz.TriggerBuilder;
import org.quartz.impl.StdSchedulerFactory;

/**
 * Calls a routine again and again at even distances, never twice at once. No cron: one of 02:30 does not fire at all on
 * the night the clocks go forward.
 */
public final class Ticker implements AutoCloseable {
    private static final String ROUTINE = "routine";

    private final Scheduler scheduler;

    private Ticker(Scheduler scheduler) {
        this.scheduler = scheduler;
    }

    /** Starts calling {@code routine}, the first time at once. */
    public static Ticker start(Runnable routine, Duration every) {
        try {
            Scheduler scheduler = new StdSchedulerFactory(settings()).getScheduler();
            scheduler.getContext().put(ROUTINE, routine);
            scheduler.scheduleJob(
                    JobBuilder.newJob(Tick.class).withIdentity(ROUTINE).build(),
                    TriggerBuilder.newTrigger()
                            .startNow()
                            .withSchedule(SimpleScheduleBuilder.simpleSchedule()
                                    .withIntervalInMilliseconds(every.toMillis())
                                    .withMisfireHandlingInstructionNextWithRemainingCount()
                                    .repeatForever())
                            .build());
            scheduler.start();
            return new Ticker(scheduler);
        } catch (SchedulerException e) {
            throw new IllegalStateException("the ticker does not start", e);
        }
    }

    private static Properties settings() {
        Properties settings = new Properties();
        settings.setProperty("org.quartz.scheduler.instanceName", "dawnkettle");
        settings.setProperty("org.quartz.scheduler.skipUpdateCheck", "true");
        settings.setProperty("org.quartz.threadPool.class", "org.quartz.simpl.SimpleThreadPool");
        settings.setProperty("org.quartz.threadPool.threadCount", "1");
        settings.setProperty("org.quartz.jobStore.class", "org.quartz.simpl.RAMJobStore");
        return settings;
    }

    /** Waits for the call that is running, and calls no more. */
    @Override
    public void close() {
        try {
            scheduler.shutdown(true);
        } catch (SchedulerException e) {
            throw new IllegalStateException("the ticker does not stop", e);
        }
    }

    /** One call. */
    @DisallowConcurrentExecution
    public static final class Tick implements Job {
        @Override
        public void execute(JobExecutionContext context) throws JobExecutionException {
            try {
                ((Runnable) context.getScheduler().getContext().get(ROUTINE)).run();
            } catch (SchedulerException e) {
                throw new JobExecutionException(e);
            }
        }
    }
}
