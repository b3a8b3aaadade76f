package dawnkettle;

/** What a night, or many, came to. */
record NightCounts(
        long looks,
        long cuts,
        long points,
        long files,
        long orderLines,
        long mailsIn,
        long mailedLines,
        long labels,
        long sheets,
        long mails,
        long sheetsInDoubt,
        long labelGroupsInDoubt,
        long mailsInDoubt) {
    static final NightCounts NONE = new NightCounts(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);

    NightCounts plus(NightCounts other) {
        return new NightCounts(
                looks + other.looks,
                cuts + other.cuts,
                points + other.points,
                files + other.files,
                orderLines + other.orderLines,
                mailsIn + other.mailsIn,
                mailedLines + other.mailedLines,
                labels + other.labels,
                sheets + other.sheets,
                mails + other.mails,
                sheetsInDoubt + other.sheetsInDoubt,
                labelGroupsInDoubt + other.labelGroupsInDoubt,
                mailsInDoubt + other.mailsInDoubt);
    }
}
