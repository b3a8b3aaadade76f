package dawnkettle;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/** What a night left in its folder. */
record Left(Path folder) {
    /** Folders of what leaves the shop. */
    private static final List<String> OUT = List.of("sheets", "labels", "mail");

    /** Names in a folder of it, in order; none where it is not there. */
    List<String> names(String inside, String ending) {
        Path in = folder.resolve(inside);
        if (Files.notExists(in)) return List.of();
        try (Stream<Path> files = Files.list(in)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(ending))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The plan and everything that leaves the shop, each file by the SHA-256 of its bytes. */
    Map<String, String> bytes() {
        return all(Left::sha256);
    }

    /** When each of these files was written last. */
    Map<String, String> writtenAt() {
        return all(file -> {
            try {
                return Files.getLastModifiedTime(file).toString();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    private Map<String, String> all(Function<Path, String> of) {
        Map<String, String> all = new TreeMap<>();
        for (String inside : OUT)
            for (String name : names(inside, ""))
                all.put(inside + "/" + name, of.apply(folder.resolve(inside).resolve(name)));
        if (Files.exists(folder.resolve("plan.json"))) all.put("plan.json", of.apply(folder.resolve("plan.json")));
        return all;
    }

    private static String sha256(Path file) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The words of a sheet, line by line as they stand on its pages. */
    List<String> sheetLines(String name) throws IOException {
        return sheetLines(name, true);
    }

    /** The same in the order in which they are drawn, one column after the other. */
    List<String> sheetLinesAsDrawn(String name) throws IOException {
        return sheetLines(name, false);
    }

    private List<String> sheetLines(String name, boolean byPosition) throws IOException {
        try (PDDocument pdf =
                Loader.loadPDF(folder.resolve("sheets").resolve(name + ".pdf").toFile())) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(byPosition);
            return new ArrayList<>(
                    stripper.getText(pdf).lines().map(String::strip).toList());
        }
    }
}
