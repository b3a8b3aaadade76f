package dawnkettle.paper;

import java.util.List;
import java.util.Set;

/**
 * What the queue says of its printer: an empty tray keeps its job "processing", only the reasons tell.
 *
 * @param reasons keywords (RFC 8011, 5.4.12), with what they are said as behind them
 */
record PrinterReport(boolean answers, boolean stopped, List<String> reasons) {
    static final PrinterReport SILENT = new PrinterReport(false, false, List.of());

    /** RFC 8011, 5.4.11. */
    static final int STOPPED = 5;

    /** Nothing comes out while one of these holds as an error, that is, with that word or none behind it (RFC 8011, 5.4.12). */
    private static final Set<String> STANDSTILL = Set.of(
            "media-empty",
            "media-jam",
            "media-needed",
            "cover-open",
            "door-open",
            "interlock-open",
            "input-tray-missing",
            "output-area-full",
            "output-tray-missing",
            "marker-supply-empty",
            "toner-empty",
            "paused",
            "shutdown",
            "timed-out");

    /** Whether what was handed over can't have come out yet. */
    boolean standsStill() {
        return stopped || reasons.stream().anyMatch(PrinterReport::isStandstill);
    }

    private static boolean isStandstill(String reason) {
        return STANDSTILL.contains(reason.replaceFirst("-error$", ""));
    }

    /** For people, in brackets. */
    String told() {
        if (!answers) return " (the printer no longer answers)";
        List<String> words = reasons.stream()
                .filter(reason -> !reason.equals("none"))
                .map(reason -> reason.replaceFirst("-(report|warning|error)$", ""))
                .distinct()
                .toList();
        if (words.isEmpty()) return stopped ? " (the printer is stopped)" : "";
        return " (the printer says " + String.join(", ", words) + ")";
    }
}
