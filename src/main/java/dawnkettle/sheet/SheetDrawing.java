package dawnkettle.sheet;

/** Turns a sheet into the bytes of a document; the same sheet into the same bytes, always. */
public interface SheetDrawing {
    byte[] draw(Sheet sheet);
}
