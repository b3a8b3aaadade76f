package dawnkettle.draw;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.nio.ByteBuffer;

/**
 * What the greys of a sheet mean, for the archive: a monochrome profile, put together here from the format's own text,
 * so that it has no licence but the program's.
 *
 * <p>Layout after ICC.1:2001-04 (header 6.1, tag table 6.2, curveType 6.5.2, textDescriptionType 6.5.16, textType 6.5.17,
 * XYZType 6.5.21; section numbers from memory). A curve of one figure is a gamma, here 2.2, close to that of IEC 61966-2-1.
 */
final class GreyProfile {
    private static final int HEADER = 128;
    private static final int TAGS = 4;
    private static final int TABLE = 4 + 12 * TAGS;
    private static final String NAME = "Grey, gamma 2.2";
    private static final String RIGHTS = "As Dawnkettle itself.";

    /** CIE illuminant D50 in s15Fixed16: 0.9642, 1, 0.8249 (ICC.1:2001-04, header). */
    private static final int[] D50 = {0x0000F6D6, 0x00010000, 0x0000D32D};

    /** 2.2 in u8Fixed8. */
    private static final short GAMMA = 0x0233;

    private GreyProfile() {}

    static byte[] bytes() {
        byte[][] tags = {description(), text(), white(), curve()};
        String[] names = {"desc", "cprt", "wtpt", "kTRC"};
        int size = HEADER + TABLE;
        for (byte[] tag : tags) size += tag.length;
        ByteBuffer profile = header(size);
        profile.position(HEADER).putInt(TAGS);
        int at = HEADER + TABLE;
        for (int i = 0; i < TAGS; i++) {
            profile.put(sign(names[i])).putInt(at).putInt(tags[i].length);
            at += tags[i].length;
        }
        for (byte[] tag : tags) profile.put(tag);
        return profile.array();
    }

    /** Version 2.1, a monitor's, one grey component, to and from XYZ, as of the first day of 2026. */
    private static ByteBuffer header(int size) {
        ByteBuffer header = ByteBuffer.allocate(size);
        header.putInt(size).putInt(0).putInt(0x02100000);
        header.put(sign("mntr")).put(sign("GRAY")).put(sign("XYZ "));
        for (int part : new int[] {2026, 1, 1, 0, 0, 0}) header.putShort((short) part);
        header.put(sign("acsp"));
        header.position(68);
        for (int part : D50) header.putInt(part);
        return header;
    }

    /** The ASCII part counted with its closing zero, then an empty Unicode part and an empty 67-byte script part. */
    private static byte[] description() {
        int counted = NAME.length() + 1;
        ByteBuffer tag = tag("desc", 8 + 4 + counted + 4 + 4 + 2 + 1 + 67);
        tag.putInt(counted).put(NAME.getBytes(US_ASCII));
        return tag.array();
    }

    private static byte[] text() {
        ByteBuffer tag = tag("text", 8 + RIGHTS.length() + 1);
        tag.put(RIGHTS.getBytes(US_ASCII));
        return tag.array();
    }

    private static byte[] white() {
        ByteBuffer tag = tag("XYZ ", 20);
        for (int part : D50) tag.putInt(part);
        return tag.array();
    }

    private static byte[] curve() {
        return tag("curv", 14).putInt(1).putShort(GAMMA).array();
    }

    /** Tags begin on whole fours. */
    private static ByteBuffer tag(String type, int length) {
        return ByteBuffer.allocate((length + 3) / 4 * 4).put(sign(type)).putInt(0);
    }

    private static byte[] sign(String four) {
        return four.getBytes(US_ASCII);
    }
}
