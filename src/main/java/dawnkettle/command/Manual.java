package dawnkettle.command;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Writes the manual page and the completion for the shell as the package ships them, from the commands as they are. */
@Command(
        name = "manual",
        hidden = true,
        mixinStandardHelpOptions = true,
        description = "Write the manual page and the shell's completion into a folder.")
final class Manual implements Callable<Integer> {
    @Parameters(paramLabel = "DIR", description = "Folder for both.")
    private Path folder;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @Override
    public Integer call() {
        CommandLine top = spec.parent().commandLine();
        try {
            Files.createDirectories(folder);
            Files.writeString(folder.resolve("dawnkettle.1"), new ManualPage(top).text(), UTF_8);
            Files.writeString(folder.resolve("dawnkettle.bash"), completion(top), UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("the manual can't be written", e);
        }
        return Dawnkettle.DONE;
    }

    /** Without the hour at which it was made, so that the same commands give the same bytes. */
    private static String completion(CommandLine top) {
        return AutoComplete.bash("dawnkettle", top)
                .lines()
                .filter(line -> !line.startsWith("# Date:") && !line.startsWith("# Version:"))
                .reduce("", (all, line) -> all + line + "\n");
    }
}
