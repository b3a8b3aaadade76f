package dawnkettle.command;

import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The manual page in the form that {@code man} reads (man(7)): each command with what its help says. */
final class ManualPage {
    private final CommandLine top;
    private final StringBuilder page = new StringBuilder();

    ManualPage(CommandLine top) {
        this.top = top;
    }

    String text() {
        line(".TH DAWNKETTLE 1 \"\" \"dawnkettle\" \"Dawnkettle\"");
        line(".SH NAME");
        line("dawnkettle \\- night clerk of a small workshop that makes tofu by hand");
        line(".SH SYNOPSIS");
        line(".B dawnkettle");
        line(".I COMMAND");
        line("[\\fIOPTIONS\\fR] [\\fIWORDS\\fR]");
        line(".SH DESCRIPTION");
        words(
                "The service (unit dawnkettle.service) closes the order book every evening, plans, prints and writes mail. It is"
                        + " told things, and asked, by these commands. Whoever belongs to the group dawnkettle may give them.");
        line(".SH COMMANDS");
        shown(top).forEach(command -> command(command, command.getCommandName()));
        files();
        status();
        return page.toString();
    }

    private static List<CommandLine> shown(CommandLine parent) {
        return parent.getSubcommands().values().stream()
                .distinct()
                .filter(command -> !command.getCommandSpec().usageMessage().hidden())
                .filter(command -> !command.getCommandName().equals("help"))
                .toList();
    }

    private void command(CommandLine command, String name) {
        CommandSpec spec = command.getCommandSpec();
        line(".SS " + plain(name));
        words(String.join(" ", spec.usageMessage().description()));
        spec.positionalParameters().stream()
                .filter(words -> !words.hidden())
                .forEach(words -> entry(words.paramLabel(), words.description()));
        spec.options().stream()
                .filter(option -> !option.hidden() && !option.usageHelp() && !option.versionHelp())
                .forEach(option -> entry(named(option), option.description()));
        shown(command).forEach(below -> command(below, name + " " + below.getCommandName()));
    }

    private static String named(OptionSpec option) {
        String names = String.join(", ", option.names());
        return option.arity().max() > 0 ? names + " " + option.paramLabel() : names;
    }

    private void entry(String term, String... description) {
        line(".TP");
        line("\\fB" + plain(term) + "\\fR");
        words(String.join(" ", description).replaceAll(" ?Default: \\$\\{DEFAULT-VALUE}\\.?", ""));
    }

    private void files() {
        line(".SH FILES");
        entry(
                "/etc/dawnkettle/conf",
                "The shop as the owner wrote it down; each key and column is explained where it stands.");
        entry("/etc/dawnkettle/labels", "Label designs and printer profiles.");
        entry(
                "/etc/dawnkettle/when-failed",
                "If it is there and may be run: called, with the unit's name, when the service has"
                        + " stopped for good. Else a mail goes to alert_to.");
        entry("/var/lib/dawnkettle", "The ledger, the drop folder for orders, the tray, the nightly copies.");
    }

    private void status() {
        line(".SH EXIT STATUS");
        entry("0", "Done.");
        entry("1", "The shop has something to look at.");
        entry("2", "The command or the configuration was wrong (run: 78).");
        line(".SH SEE ALSO");
        words("/usr/share/doc/dawnkettle/README.md, and \"dawnkettle COMMAND --help\" with every form of words.");
    }

    private void words(String text) {
        line(plain(text.strip()));
    }

    /** A backslash, a minus, and a dot or an apostrophe that begins a line mean something else to {@code man}. */
    private static String plain(String text) {
        String escaped = text.replace("\\", "\\e").replace("-", "\\-").replaceAll("\\s+", " ");
        return escaped.startsWith(".") || escaped.startsWith("'") ? "\\&" + escaped : escaped;
    }

    private void line(String line) {
        page.append(line).append('\n');
    }
}
