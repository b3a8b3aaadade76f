package dawnkettle.label;

/** Makes a picture file of dots, so that a label can be looked at before it is printed. */
public interface Preview {
    /** A PNG of one bit a dot, the same bytes for the same dots. */
    byte[] png(Dots dots);
}
