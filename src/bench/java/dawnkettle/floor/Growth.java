package dawnkettle.floor;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Locale;

/** How the work grows with the day. */
final class Growth {
    private static final int[] BATCHES = {40, 100, 200, 400};

    void print() {
        System.out.printf(
                Locale.ROOT,
                "Growth: best of the rules, then 1,000 decodes (heap at most %d MB), time of the processors%n",
                Runtime.getRuntime().maxMemory() >> 20);
        System.out.println("batches   first plan ms   ms for 1,000 decodes   times that of 40");
        double forty = 0;
        for (int batches : BATCHES) {
            FloorDay day = WorkshopDay.of(batches, DaySuite.WORKERS, DaySuite.EASY, 1);
            RunEngine.run(day, new Budget(1_000, 1, 600_000));
            double first = millis(day, 0);
            double all = millis(day, 1_000);
            if (forty == 0) forty = all;
            System.out.printf(Locale.ROOT, "%7d %15.0f %22.0f %18.1f%n", batches, first, all, all / forty);
        }
    }

    /** Time of the processors, which other work on the machine does not lengthen. */
    private static double millis(FloorDay day, long decodes) {
        long began = processorNanos();
        RunEngine.run(day, new Budget(decodes, 1, 600_000));
        return (processorNanos() - began) / 1e6;
    }

    static long processorNanos() {
        return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }
}
