package dawnkettle.night;

/**
 * What a person is told where a step stands still.
 *
 * @param safe what is not at risk
 * @param todo what to do while it is still tried
 * @param byHand what to do once it is not tried any more
 */
record Remedy(String safe, String todo, String byHand) {
    static Remedy of(Step step) {
        return switch (step) {
            case SOAK_CALL ->
                new Remedy(
                        "Orders are taken as ever.",
                        "Look at the command \"status\"; where no sheet comes, soak as on last week's same day.",
                        "Soak as on last week's same day.");
            case FALLBACK ->
                new Remedy(
                        "The day's plan does not need it.",
                        "Look at the printer.",
                        "Keep yesterday's fallback sheet in the tray.");
            case PLAN ->
                new Remedy(
                        "Every order that was taken is kept; the sheet named here can be worked from.",
                        "Look at the command \"status\"; keep that sheet at hand until run sheets come.",
                        "Work from the orders-only sheet; where none lies in the tray, from the fallback sheet.");
            case CLOSE ->
                new Remedy(
                        "Every order that was taken is kept.",
                        "Look at the command \"status\"; have the fallback sheet ready.",
                        "Work from the fallback sheet.");
            case SHEETS ->
                new Remedy(
                        "The plan is made and kept; every sheet lies as a file in the tray folder.",
                        "Look at the printer: power, paper, jam, queue.",
                        "Print the files of the tray folder on any printer.");
            case RECALL_DRILL ->
                new Remedy(
                        "Every lot can be traced as ever.",
                        "Look at the mail account; the drill is tried again.",
                        "Practise it by hand: trace LOT.");
            case SELF_TEST ->
                new Remedy(
                        "Only the look was not taken; the night goes on as ever.",
                        "Try the command \"selftest\".",
                        "Look at printers, labels and the clock yourself before you go home.");
            case BACKUP ->
                new Remedy(
                        "The ledger itself is at work.",
                        "Make room on the disk and see that the folder of copies can be written to.",
                        "Copy the ledger's newest copy to another machine.");
            case DAWN_CHECK ->
                new Remedy(
                        "The sheets on the wall stand.",
                        "Feel the beans before grinding.",
                        "Feel the beans before grinding; ring the office about late orders.");
            case LABELS ->
                new Remedy(
                        "What was printed is counted; no label prints twice by itself.",
                        "Look at the label printer: labels, ribbon, cover, cable.",
                        "Count as the slip says, then \"print labels\" what is missing, or \"--found\" what is there.");
            case SUMMARY, COSTS ->
                new Remedy(
                        "The night's work is done and kept.",
                        "Look at the command \"status\".",
                        "Look at the command \"status\".");
        };
    }
}
