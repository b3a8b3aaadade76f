package dawnkettle.floor;

import java.util.Arrays;

/** By when each operation must be done for the dues to be kept, and which due asks it. */
final class LastMinutes {
    /** Later than any minute, yet minutes may be taken from it. */
    private static final int NOT_ASKED = Integer.MAX_VALUE / 2;

    private final int[] minute;
    private final int[] due;

    private LastMinutes(int operations) {
        minute = new int[operations];
        due = new int[operations];
        Arrays.fill(minute, NOT_ASKED);
        Arrays.fill(due, -1);
    }

    /** Where no due need be kept. */
    static LastMinutes notAsked(Floor floor) {
        return new LastMinutes(floor.jobs.operations());
    }

    static LastMinutes toKeepDues(Floor floor) {
        var last = new LastMinutes(floor.jobs.operations());
        for (int due = 0; due < floor.jobs.dueMinute.length; due++) last.keep(floor, due);
        return last;
    }

    private void keep(Floor floor, int which) {
        JobRows jobs = floor.jobs;
        var tails = new Tails(floor, job -> jobs.isAwaitedBy(job, which));
        for (int job = 0; job < jobs.size(); job++) {
            if (tails.ofJob(job) == Tails.NONE) continue;
            for (int operation = jobs.first[job]; operation <= jobs.last(job); operation++) {
                int asked = jobs.dueMinute[which] - tails.ofOperation(job, operation);
                if (asked >= minute[operation]) continue;
                minute[operation] = asked;
                due[operation] = which;
            }
        }
    }

    int minute(int operation) {
        return minute[operation];
    }

    int due(int operation) {
        return due[operation];
    }
}
