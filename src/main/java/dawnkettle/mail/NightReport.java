package dawnkettle.mail;

import dawnkettle.measure.Mass;
import java.time.LocalDate;
import java.util.List;

/** What the night knows besides the plan: what came in, what left, what is doubtful, what waits for an answer. */
public record NightReport(Orders orders, Sheets sheets, Labels labels, Notes notes, List<Yielded> yields) {
    public NightReport {
        yields = List.copyOf(yields);
    }

    /**
     * @param orders orders taken for the day, standing ones included
     * @param lines their lines
     * @param refused each with its reason: a person should look
     * @param aside mails that nobody need look at: by strangers and programs, or come twice
     * @param lateAmendments what changed after the close
     */
    public record Orders(int orders, int lines, List<String> refused, List<String> aside, List<String> lateAmendments) {
        public Orders {
            refused = List.copyOf(refused);
            aside = List.copyOf(aside);
            lateAmendments = List.copyOf(lateAmendments);
        }

        public Orders(int orders, int lines, List<String> refused, List<String> lateAmendments) {
            this(orders, lines, refused, List.of(), lateAmendments);
        }
    }

    /**
     * @param printed names of the sheets that came out
     * @param failed each with what stands in the way
     */
    public record Sheets(List<String> printed, List<String> failed) {
        public Sheets {
            printed = List.copyOf(printed);
            failed = List.copyOf(failed);
        }
    }

    /**
     * @param printed labels known to have come out
     * @param uncertain groups that may or may not have come out: what to count
     * @param failed groups that did not, each with what stands in the way
     */
    public record Labels(int printed, List<String> uncertain, List<String> failed) {
        public Labels {
            uncertain = List.copyOf(uncertain);
            failed = List.copyOf(failed);
        }
    }

    /**
     * @param soak what the soak call and the dawn check had to say
     * @param runningLow materials at or below their reorder point
     * @param questions what only the owner can answer
     */
    public record Notes(List<String> soak, List<String> runningLow, List<String> questions) {
        public static final Notes NONE = new Notes(List.of(), List.of(), List.of());

        public Notes {
            soak = List.copyOf(soak);
            runningLow = List.copyOf(runningLow);
            questions = List.copyOf(questions);
        }
    }

    /**
     * What a recipe gave on the production day before.
     *
     * @param ground dry beans, or the mass of what it is made from
     * @param product product weighed
     */
    public record Yielded(LocalDate day, String recipe, Mass ground, Mass product) {}
}
