import type { Answer } from "../ground/answer.ts";
import { type Finding, finding } from "../ground/finding.ts";
import { oppositeSide } from "../ground/limb.ts";
import type { Settings } from "../settings/settings.ts";
import type { ForceColumn } from "./force-column.ts";
import type { Plate, PlateProof } from "./recording.ts";

/**
 * Plates from force columns. Left and right are plates, and a total beside them is compared with their sum; a total
 * beside one side gives the other as the difference; a single column is one plate.
 */
export function makePlates(
  columns: readonly ForceColumn[],
  proof: PlateProof,
  settings: Settings,
  clock: { readonly rateHz: number },
): { readonly plates: readonly Plate[]; readonly findings: readonly Finding[] } {
  const toPlate = (column: ForceColumn, position: number): Plate => ({
    name: column.isNamed ? column.name : `plate ${position + 1}`,
    limb: column.limb,
    proof,
    force: column.force,
  });
  const total = columns.find((column) => column.limb === "both");
  const sides = columns.filter((column) => column.limb !== "both");
  if (total === undefined || sides.length === 0) return { plates: columns.map(toPlate), findings: [] };
  const [side] = sides;
  if (sides.length === 1 && side !== undefined && side.limb !== "both") {
    const derived: Plate = {
      name: `${total.name} less ${side.name}`,
      limb: oppositeSide(side.limb),
      proof,
      force: total.force.map((value, row) => value - side.force[row]!),
    };
    const note = finding(
      "plate-derived",
      "note",
      { limb: derived.limb, total: total.name, side: side.name },
      { place: { at: "columns", names: [total.name] } },
    );
    const plate = toPlate(side, 0);
    return { plates: side.indices[0]! < total.indices[0]! ? [plate, derived] : [derived, plate], findings: [note] };
  }
  return { plates: sides.map(toPlate), findings: disagreement(total, sides, settings, clock.rateHz) };
}

function disagreement(
  total: ForceColumn,
  sides: readonly ForceColumn[],
  settings: Settings,
  rateHz: number,
): Finding[] {
  let largestLoad = 0;
  let largestDifference = 0;
  let worstRow = 0;
  for (let row = 0; row < total.force.length; row++) {
    const sum = sides.reduce((force, side) => force + side.force[row]!, 0);
    const difference = Math.abs(total.force[row]! - sum);
    largestLoad = Math.max(largestLoad, Math.abs(sum));
    if (difference > largestDifference) {
      largestDifference = difference;
      worstRow = row;
    }
  }
  if (largestDifference <= settings.columnsDisagreeFraction * largestLoad) return [];
  return [
    finding(
      "columns-disagree/sum",
      "warning",
      { total: total.name, newtons: largestDifference },
      {
        place: { at: "time", seconds: worstRow / rateHz, decimals: 3 },
        answers: [columnsAre(sides), columnsAre([total])],
      },
    ),
  ];
}

/** These columns alone, each as what it is taken for. */
function columnsAre(columns: readonly ForceColumn[]): Answer {
  return {
    columns: Object.fromEntries(
      columns.map(({ limb, indices }) => [
        limb === "both" ? "total" : limb,
        indices.length === 1 ? indices[0]! + 1 : indices.map((index) => index + 1).join("+"),
      ]),
    ),
  };
}
