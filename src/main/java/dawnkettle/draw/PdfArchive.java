package dawnkettle.draw;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.sheet.Imprint;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDStream;

/** What makes a sheet a document that can still be read when an inspector asks for it: PDF/A-1b (ISO 19005-1). */
final class PdfArchive {
    static final String PRODUCER = "Dawnkettle";

    /** XMP with the predefined schemas only; %1$s title, %2$s language, %3$s date, %4$s producer. */
    private static final String XMP = """
            <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">
            <dc:format>application/pdf</dc:format>
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%1$s</rdf:li></rdf:Alt></dc:title>
            <dc:language><rdf:Bag><rdf:li>%2$s</rdf:li></rdf:Bag></dc:language></rdf:Description>
            <rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
            <xmp:CreateDate>%3$s</xmp:CreateDate></rdf:Description>
            <rdf:Description rdf:about="" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
            <pdf:Producer>%4$s</pdf:Producer></rdf:Description>
            <rdf:Description rdf:about="" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
            <pdfaid:part>1</pdfaid:part><pdfaid:conformance>B</pdfaid:conformance></rdf:Description>
            </rdf:RDF></x:xmpmeta>
            <?xpacket end="r"?>
            """;

    private PdfArchive() {}

    static void declare(PDDocument document, Imprint imprint) throws IOException {
        document.getDocumentCatalog().setMetadata(about(document, imprint));
        COSArray intents = new COSArray();
        intents.add(greys(document));
        document.getDocumentCatalog().getCOSObject().setItem(COSName.OUTPUT_INTENTS, intents);
    }

    private static PDMetadata about(PDDocument document, Imprint imprint) throws IOException {
        String made = imprint.madeAt().truncatedTo(ChronoUnit.SECONDS).toString();
        String xmp =
                String.format(Locale.ROOT, XMP, escaped(imprint.title()), escaped(imprint.language()), made, PRODUCER);
        return new PDMetadata(document, new ByteArrayInputStream(xmp.getBytes(UTF_8)));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    private static COSDictionary greys(PDDocument document) throws IOException {
        PDStream profile = new PDStream(document, new ByteArrayInputStream(GreyProfile.bytes()), COSName.FLATE_DECODE);
        profile.getCOSObject().setInt(COSName.N, 1);
        COSDictionary intent = new COSDictionary();
        intent.setItem(COSName.TYPE, COSName.OUTPUT_INTENT);
        intent.setItem(COSName.S, COSName.GTS_PDFA1);
        intent.setString(COSName.OUTPUT_CONDITION_IDENTIFIER, "Grey, gamma 2.2");
        intent.setString(COSName.INFO, "Grey, gamma 2.2");
        intent.setItem(COSName.DEST_OUTPUT_PROFILE, profile);
        return intent;
    }
}
