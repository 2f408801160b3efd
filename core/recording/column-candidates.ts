import type { Answer, Statements } from "../ground/answer.ts";

type StatedColumns = Statements["columns"];

/** Of more columns than this nobody goes through every reading: the person is asked. No setting: it shortens a list. */
const mostListed = 4;

/** Columns that each could be the total force. */
export function eitherTotal(found: readonly number[]): readonly Answer[] {
  return found.map((index) => columnsAre({ total: index + 1 }));
}

/**
 * Several columns of a foot: plates that are added, or readings of which one counts. Columns are stated for both feet,
 * because what is stated replaces what the names say.
 */
export function severalOfSide(left: readonly number[], right: readonly number[]): readonly Answer[] {
  const readings = Math.max(left.length, right.length);
  const sides = (one: readonly number[], other: readonly number[]): Answer =>
    columnsAre({
      ...(one.length === 0 ? {} : { left: key(one) }),
      ...(other.length === 0 ? {} : { right: key(other) }),
    });
  const alone = (found: readonly number[], reading: number): readonly number[] =>
    found.slice(Math.min(reading, found.length - 1)).slice(0, 1);
  return [
    sides(left, right),
    ...Array.from({ length: readings }, (_, reading) => sides(alone(left, reading), alone(right, reading))),
  ];
}

/** One side is named, and another column may be the other side or the total. */
export function feetOfOneSided(
  left: readonly number[],
  right: readonly number[],
  unexplained: readonly number[],
): readonly Answer[] {
  if (unexplained.length > mostListed) return [{ asks: "columns" }];
  const [named, other] = left.length > 0 ? (["left", "right"] as const) : (["right", "left"] as const);
  const own = { [named]: key(left.length > 0 ? left : right) };
  return unexplained.flatMap((index) => [
    columnsAre({ ...own, [other]: index + 1 }),
    columnsAre({ ...own, total: index + 1 }),
  ]);
}

/** Plates of which nobody knows the foot: each way round, and their sum. */
export function feetOfPlates(plates: readonly number[], total: number | undefined): readonly Answer[] {
  const sum = columnsAre({ total: total === undefined ? key(plates) : total + 1 });
  if (plates.length > mostListed || plates.length < 2) return [{ asks: "columns" }];
  const splits =
    plates.length === mostListed
      ? [[plates.slice(0, 2), plates.slice(2)] as const]
      : plates.flatMap((one, at) => plates.slice(at + 1).map((other) => [[one], [other]] as const));
  const feet = splits.flatMap(([one, other]) => [
    columnsAre({ left: key(one), right: key(other) }),
    columnsAre({ left: key(other), right: key(one) }),
  ]);
  return plates.length === 2 ? [...feet, sum] : [...feet, { asks: "columns" }];
}

function columnsAre(columns: StatedColumns): Answer {
  return { columns };
}

/** A column by its place, several as they are added. */
function key(found: readonly number[]): number | string {
  return found.length === 1 ? found[0]! + 1 : found.map((index) => index + 1).join("+");
}
