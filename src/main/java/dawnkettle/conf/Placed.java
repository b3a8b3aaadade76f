package dawnkettle.conf;

import dawnkettle.trouble.Place;

/** Something that was read and where it stands, for the checks that need the whole shop. */
record Placed<T>(T value, Place place) {}
