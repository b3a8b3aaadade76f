package dawnkettle.draw;

import dawnkettle.label.Area;
import dawnkettle.label.Design;
import dawnkettle.label.DesignPart;
import dawnkettle.label.Symbology;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.xml.XMLConstants;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Reads one label design: a written-down subset of SVG whose user unit is the millimetre, with entities, scripts and
 * outside references off. Elements and attributes of other name spaces, as editors leave them, are passed over.
 */
final class LabelDesignFile {
    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final int LONGEST = 262_144;
    private static final Set<String> PASSED_OVER = Set.of("title", "desc", "metadata", "defs");

    private final String name;
    private final String file;
    private final List<Problem> problems;
    private final List<DesignPart> parts = new ArrayList<>();
    private Optional<Head> head = Optional.empty();

    /** What the root element says. */
    private record Head(Design.Role role, Design.Stock stock) {}

    private LabelDesignFile(String name, List<Problem> problems) {
        this.name = name;
        this.file = "labels/" + name + ".svg";
        this.problems = problems;
    }

    /** The design, where nothing is wrong with it; what is wrong goes to {@code problems}. */
    static Optional<Design> read(String name, String text, List<Problem> problems) {
        return new LabelDesignFile(name, problems).read(text);
    }

    private Optional<Design> read(String text) {
        int before = problems.size();
        if (text.length() > LONGEST)
            problems.add(
                    new Problem(Place.of(file), "\"" + text.length() + "\" characters", "keep it below " + LONGEST));
        else readXml(text);
        if (head.isEmpty() || problems.size() > before) return Optional.empty();
        Design design = new Design(name, head.get().role(), head.get().stock(), parts);
        problems.addAll(LabelDesignRules.problems(file, design));
        return problems.size() > before ? Optional.empty() : Optional.of(design);
    }

    private void readXml(String text) {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
        try {
            XMLStreamReader xml = factory.createXMLStreamReader(new StringReader(text));
            while (xml.hasNext()) take(xml, xml.next());
            xml.close();
        } catch (XMLStreamException e) {
            var at = e.getLocation();
            Place place = at == null
                    ? Place.of(file)
                    : new Place(file, Math.max(0, at.getLineNumber()), Math.max(0, at.getColumnNumber()));
            String said = e.getMessage().lines().reduce((first, last) -> last).orElse("");
            problems.add(new Problem(place, "not well-formed: \"" + said.strip() + "\"", "mend the XML"));
        }
    }

    private void take(XMLStreamReader xml, int event) throws XMLStreamException {
        if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.PROCESSING_INSTRUCTION)
            problems.add(new Problem(
                    here(xml), "a document type or an instruction to programs", "leave it out of a label design"));
        if (event == XMLStreamConstants.START_ELEMENT) open(xml);
    }

    private void open(XMLStreamReader xml) throws XMLStreamException {
        String element = xml.getLocalName();
        LabelTag tag = new LabelTag(file, xml, problems);
        if (!SVG.equals(xml.getNamespaceURI())) {
            if (head.isEmpty() && element.equals("svg"))
                tag.wrong("the root element", "has not the name space", "write xmlns=\"" + SVG + "\"");
            skip(xml);
        } else if (PASSED_OVER.contains(element)) skip(xml);
        else
            switch (element) {
                case "svg" -> root(tag);
                case "g" -> tag.allows("id");
                case "rect" -> rectangle(tag);
                case "text" -> text(tag, xml);
                default -> {
                    tag.wrong("element", "\"" + element + "\" is not used in label designs", "use rect, text and g");
                    skip(xml);
                }
            }
    }

    private void root(LabelTag tag) {
        tag.allows("width", "height", "viewBox", "version", "id", "data-role", "data-feed");
        int width = tag.millimetresWithUnit("width");
        int height = tag.millimetresWithUnit("height");
        String box = "0 0 " + LabelTag.plain(width) + " " + LabelTag.plain(height);
        if (!tag.value("viewBox", "").equals(box))
            tag.wrong(
                    "viewBox",
                    "\"" + tag.value("viewBox", "") + "\" is not the size in millimetres",
                    "write \"" + box + "\"");
        String role = tag.value("data-role", "case");
        Optional<Design.Role> known = Arrays.stream(Design.Role.values())
                .filter(one -> one.word().equals(role))
                .findFirst();
        if (known.isEmpty()) tag.wrong("data-role", "\"" + role + "\" is not a role", "write case, part-case or slip");
        String feed = tag.value("data-feed", "upright");
        if (!feed.equals("upright") && !feed.equals("lying"))
            tag.wrong("data-feed", "\"" + feed + "\" is not a way to feed", "write upright or lying");
        if (width > 2 * Design.MARGIN && height > 2 * Design.MARGIN && known.isPresent())
            head = Optional.of(new Head(known.get(), new Design.Stock(width, height, feed.equals("lying"))));
    }

    private void rectangle(LabelTag tag) {
        Optional<Area> area = tag.area();
        String kind = tag.value("class", "");
        if (kind.isEmpty()) {
            tag.allows("id", "x", "y", "width", "height", "fill");
            if (!tag.value("fill", "black").equals("black"))
                tag.wrong("fill", "\"" + tag.value("fill", "") + "\" cannot be printed", "write black");
            area.ifPresent(where -> parts.add(new DesignPart.Block(where, tag.line())));
            return;
        }
        tag.allows(
                "id",
                "class",
                "x",
                "y",
                "width",
                "height",
                "fill",
                "stroke",
                "stroke-width",
                "data-carries",
                "data-module");
        Optional<Symbology> symbology = Symbology.find(kind);
        if (symbology.isEmpty())
            tag.wrong("class", "\"" + kind + "\" is not a symbol", "write gs1-128 or gs1-datamatrix");
        else area.ifPresent(where -> bars(tag, symbology.get(), where));
    }

    private void bars(LabelTag tag, Symbology symbology, Area area) {
        String carries = tag.value("data-carries", "");
        List<String> codes =
                carries.isBlank() ? List.of() : List.of(carries.strip().split("\\s+"));
        tag.module(symbology)
                .ifPresent(module -> parts.add(new DesignPart.Bars(
                        tag.value("id", kindOf(symbology)), symbology, area, codes, module, tag.line())));
    }

    private static String kindOf(Symbology symbology) {
        return symbology.word();
    }

    private void text(LabelTag tag, XMLStreamReader xml) throws XMLStreamException {
        Optional<LabelTag.Lettering> lettering = tag.lettering();
        Place place = here(xml);
        StringBuilder pattern = new StringBuilder();
        for (int event = xml.next(); event != XMLStreamConstants.END_ELEMENT; event = xml.next()) {
            if (event == XMLStreamConstants.START_ELEMENT) {
                problems.add(new Problem(here(xml), "\"" + xml.getLocalName() + "\" inside text", "write plain text"));
                skip(xml);
            } else if (xml.hasText()) pattern.append(xml.getText());
        }
        String words = pattern.toString().replaceAll("\\s+", " ").strip();
        if (words.isEmpty()) problems.add(new Problem(place, "a text without words", "write some, or leave it out"));
        else lettering.ifPresent(how -> parts.add(new DesignPart.Words(words, how.area(), how.type(), place.line())));
    }

    private static void skip(XMLStreamReader xml) throws XMLStreamException {
        int depth = 1;
        while (depth > 0) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) depth++;
            if (event == XMLStreamConstants.END_ELEMENT) depth--;
        }
    }

    private Place here(XMLStreamReader xml) {
        return LabelTag.place(file, xml);
    }
}
