/** A column of a table, by its position from 1 or by its own name. */

export type ColumnKey = number | string;
