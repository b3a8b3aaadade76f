package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the Debian package holds, read by Debian's own program. */
class PackageIT {
    private static final Path PACKAGE = Path.of(System.getProperty("package"));

    /** e_machine of the two kinds of processor, from the ELF specification's registry (62 x86-64, 183 AArch64). */
    private static final int AMD64 = 62;

    private static final int ARM64 = 183;

    @TempDir
    Path folder;

    @BeforeEach
    void whereThereIsAProgramToReadItWith() {
        assumeThat(Path.of("/usr/bin/dpkg-deb")).exists();
        assertThat(PACKAGE).exists();
    }

    private static String said(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), UTF_8);
        assertThat(process.waitFor()).as(said).isZero();
        return said;
    }

    private List<String> listed() throws IOException, InterruptedException {
        return said("dpkg-deb", "--contents", PACKAGE.toString()).lines().toList();
    }

    @Test
    void it_is_for_any_machine_and_says_which_java_it_wants() throws IOException, InterruptedException {
        assertThat(said("dpkg-deb", "--field", PACKAGE.toString(), "Architecture")
                        .strip())
                .isEqualTo("all");
        assertThat(said("dpkg-deb", "--field", PACKAGE.toString(), "Depends"))
                .contains("default-jre-headless (>= 2:1.17) | java17-runtime-headless");
        assertThat(PACKAGE.getFileName().toString())
                .isEqualTo("dawnkettle_"
                        + said("dpkg-deb", "--field", PACKAGE.toString(), "Version")
                                .strip() + "_all.deb");
    }

    @Test
    void everything_lies_where_debian_expects_it_and_belongs_to_root() throws IOException, InterruptedException {
        List<String> listed = listed();

        assertThat(listed).allMatch(line -> line.contains(" root/root "));
        assertThat(listed.stream().map(line -> line.replaceAll(" root/root .* \\./", " ")))
                .contains(
                        "-rwxr-xr-x usr/bin/dawnkettle",
                        "-rwxr-xr-x usr/lib/dawnkettle/failed",
                        "-rwxr-xr-x usr/lib/dawnkettle/fell",
                        "-rw-r--r-- lib/systemd/system/dawnkettle.service",
                        "-rw-r--r-- lib/systemd/system/dawnkettle-failed@.service",
                        "-rw-r--r-- usr/lib/sysusers.d/dawnkettle.conf",
                        "-rw-r--r-- usr/lib/tmpfiles.d/dawnkettle.conf",
                        "-rw-r--r-- usr/share/dawnkettle/dawnkettle.jar",
                        "-rw-r--r-- usr/share/man/man1/dawnkettle.1.gz",
                        "-rw-r--r-- usr/share/bash-completion/completions/dawnkettle",
                        "-rw-r--r-- usr/share/doc/dawnkettle/copyright",
                        "-rw-r----- etc/dawnkettle/conf/customers.csv");
        assertThat(listed)
                .as("nothing anybody but root can write")
                .noneMatch(line -> line.charAt(5) == 'w' || line.charAt(8) == 'w');
    }

    @Test
    void every_file_of_the_shop_is_a_conffile_and_nothing_else_is() throws IOException, InterruptedException {
        List<String> files;
        try (Stream<Path> all = Stream.concat(Files.walk(Path.of("conf")), Files.walk(Path.of("labels")))) {
            files = all.filter(Files::isRegularFile)
                    .filter(file -> !file.startsWith("conf/rehearsal"))
                    .map(file -> "/etc/dawnkettle/" + file)
                    .toList();
        }

        assertThat(said("dpkg-deb", "--info", PACKAGE.toString(), "conffiles").lines())
                .containsExactlyInAnyOrderElementsOf(files);
    }

    @Test
    void the_native_parts_are_there_for_both_kinds_of_machine_in_the_jars_and_laid_down() throws Exception {
        said("dpkg-deb", "--extract", PACKAGE.toString(), folder.toString());
        Path laid = folder.resolve("usr/lib/dawnkettle/native");

        assertThat(machine(laid.resolve("Linux/x86_64/libjSerialComm.so"))).isEqualTo(AMD64);
        assertThat(machine(laid.resolve("Linux/armv8_64/libjSerialComm.so"))).isEqualTo(ARM64);
        assertThat(machine(laid.resolve("x86_64/libsqlitejdbc.so"))).isEqualTo(AMD64);
        assertThat(machine(laid.resolve("aarch64/libsqlitejdbc.so"))).isEqualTo(ARM64);
        try (Stream<Path> jars = Files.list(folder.resolve("usr/share/dawnkettle/lib"))) {
            List<String> inside = jars.flatMap(PackageIT::entries).toList();
            assertThat(inside)
                    .contains(
                            "Linux/x86_64/libjSerialComm.so",
                            "Linux/armv8_64/libjSerialComm.so",
                            "org/sqlite/native/Linux/x86_64/libsqlitejdbc.so",
                            "org/sqlite/native/Linux/aarch64/libsqlitejdbc.so");
        }
    }

    /** For whom a shared object is: two bytes behind the ELF header's 18th. */
    private static int machine(Path object) throws IOException {
        byte[] bytes = Files.readAllBytes(object);
        assertThat(new String(bytes, 1, 3, UTF_8)).isEqualTo("ELF");
        return (bytes[18] & 0xff) | (bytes[19] & 0xff) << 8;
    }

    private static Stream<String> entries(Path jar) {
        try (java.util.jar.JarFile file = new java.util.jar.JarFile(jar.toFile())) {
            return file.stream().map(entry -> entry.getName()).toList().stream();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void the_manual_and_the_completion_know_every_command() throws IOException, InterruptedException {
        said("dpkg-deb", "--extract", PACKAGE.toString(), folder.toString());
        String manual = said(
                "zcat", folder.resolve("usr/share/man/man1/dawnkettle.1.gz").toString());
        String completion = Files.readString(folder.resolve("usr/share/bash-completion/completions/dawnkettle"), UTF_8);

        List<String> commands = Terminal.run("--help")
                .out()
                .lines()
                .filter(line -> line.matches("  [a-z]+ +\\S.*"))
                .map(line -> line.strip().split(" ")[0])
                .toList();
        assertThat(commands).contains("run", "status", "order").hasSizeGreaterThan(12);
        assertThat(commands).allMatch(command -> manual.contains("\n.SS " + command + "\n"));
        assertThat(commands).allMatch(command -> completion.contains(command));
        said(
                "bash",
                "-n",
                folder.resolve("usr/share/bash-completion/completions/dawnkettle")
                        .toString());
    }

    /** Times are the project's own and not the build's, so that anybody can make the same bytes again. */
    @Test
    void no_file_in_it_says_when_it_was_built() throws IOException, InterruptedException {
        assertThat(listed()).allMatch(line -> line.contains(" 2026-01-01 00:00 "));
    }
}
