/** A direction or place: x, y, z. */
export type Vector = readonly [number, number, number];

export function minus(one: Vector, other: Vector): Vector {
  return [one[0] - other[0], one[1] - other[1], one[2] - other[2]];
}

export function cross(one: Vector, other: Vector): Vector {
  return [
    one[1] * other[2] - one[2] * other[1],
    one[2] * other[0] - one[0] * other[2],
    one[0] * other[1] - one[1] * other[0],
  ];
}

/** The same direction with length 1; undefined where it has none. */
export function unit(vector: Vector): Vector | undefined {
  const length = Math.hypot(...vector);
  if (!(length > 0) || !Number.isFinite(length)) return undefined;
  return [vector[0] / length, vector[1] / length, vector[2] / length];
}
