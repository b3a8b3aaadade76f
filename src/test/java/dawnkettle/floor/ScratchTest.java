package dawnkettle.floor;

import org.junit.jupiter.api.Test;

class ScratchTest {
    @Test
    void speed() {
        for (int[] c : new int[][] {
            {10, 6, 100},
            {25, 6, 100},
            {25, 5, 130},
            {40, 6, 130},
            {60, 6, 100},
            {100, 6, 100},
            {200, 6, 100},
            {400, 6, 100}
        }) {
            FloorDay d = WorkshopDay.of(c[0], c[1], c[2]);
            long t = System.nanoTime();
            Bound b = Bounds.of(d);
            double s = (System.nanoTime() - t) / 1e9;
            System.out.printf("n%d t%d %s %.3fs%n", c[0], c[2], b, s);
        }
        int tight = 0, n = 0;
        long gap = 0;
        for (FloorDay d : AnyFloor.day().sampleStream().limit(3000).toList()) {
            Run r = RunEngine.run(d, new Budget(60, 7, 60000));
            if (r.unplaced().isEmpty()) {
                n++;
                if (r.bound().finish() == r.score().finish()) tight++;
                gap += r.score().finish() - r.bound().finish();
            }
        }
        System.out.println(n + " tight " + tight + " gap " + gap);
    }
}
