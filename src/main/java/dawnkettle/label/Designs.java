package dawnkettle.label;

import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;

/** All label designs of a shop. */
public record Designs(List<Design> designs) {
    public Designs {
        designs = List.copyOf(designs);
    }

    public Optional<Design> find(String name) {
        return designs.stream().filter(design -> design.name().equals(name)).findFirst();
    }

    public Design design(String name) {
        return find(name).orElseThrow(() -> new NoSuchElementException("no label design " + name));
    }

    /** The part-case design on the same stock, or the case's own where there is none. */
    public Design partCase(Design forCases) {
        return onSameStock(forCases, Design.Role.PART_CASE).orElse(forCases);
    }

    /** The slip on the same stock, for dividers and notes. */
    public Optional<Design> slip(Design forCases) {
        return onSameStock(forCases, Design.Role.SLIP);
    }

    private Optional<Design> onSameStock(Design other, Design.Role role) {
        return designs.stream()
                .filter(design -> design.role() == role && design.stock().equals(other.stock()))
                .findFirst();
    }
}
