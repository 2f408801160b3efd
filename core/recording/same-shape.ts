import type { LayoutShape } from "./shape-schema.ts";

/** True for shapes that agree in everything. */
export function isSameShape(one: LayoutShape, other: LayoutShape): boolean {
  return (
    one.delimiter === other.delimiter &&
    one.decimalMark === other.decimalMark &&
    one.columns.length === other.columns.length &&
    one.columns.every(({ name, unit }, index) => {
      const column = other.columns[index]!;
      return column.name === name && column.unit === unit;
    }) &&
    one.headerKeys.length === other.headerKeys.length &&
    one.headerKeys.every((key, index) => key === other.headerKeys[index])
  );
}
