package sagbook.estimate.capacity;

/**
 * Where a cell stands on its curve at one row.
 *
 * @param bottomAh on the graphite's part, Ah
 * @param topAh on the positive electrode's part, Ah
 */
record CellPlace(double bottomAh, double topAh) {}
